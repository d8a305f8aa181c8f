using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using SecondShore.App.Shell;

WebAssemblyHostBuilder builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<Root>("#app");
builder.Services.AddSingleton<Browser>();
builder.Services.AddSingleton<Session>();
await builder.Build().RunAsync();
