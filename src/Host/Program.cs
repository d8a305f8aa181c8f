using SecondShore.Host;

WebApplication app = HostApp.Build(args);
await app.StartAsync();
foreach (string address in app.Urls) Console.WriteLine($"Second Shore is at {address}");
await app.WaitForShutdownAsync();
