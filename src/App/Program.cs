using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using SecondShore.App.Shell;
using SecondShore.App.Sync;
using SecondShore.App.Trip;

WebAssemblyHostBuilder builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<Root>("#app");
builder.Services.AddSingleton<Browser>();
builder.Services.AddSingleton<Session>();
builder.Services.AddSingleton<TripLog>();
builder.Services.AddSingleton<Lessons>();
builder.Services.AddSingleton<HostSync>();
await builder.Build().RunAsync();
