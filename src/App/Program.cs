using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using SecondShore.App.Shell;
using SecondShore.App.Sync;

WebAssemblyHostBuilder builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<Root>("#app");
builder.Services.AddSingleton<Browser>();
builder.Services.AddSingleton<Session>();
builder.Services.AddSingleton<HostSync>();
await builder.Build().RunAsync();
