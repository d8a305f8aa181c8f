namespace SecondShore.Host;

/// <summary>The web server: serves the app's files with compression and strict headers, and says that it is well.</summary>
public static class HostApp
{
    /// <summary>The address used when none is given: this machine only.</summary>
    public static readonly string DefaultAddress = "http://127.0.0.1:5080";

    /// <summary>Builds the server, not yet listening. Arguments are the framework's own, such as <c>--urls</c>.</summary>
    public static WebApplication Build(string[] args)
    {
        WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = args,
            // Named here, so that the list of static files is found whoever starts the server.
            ApplicationName = typeof(HostApp).Assembly.GetName().Name,
            ContentRootPath = ContentRoot(),
        });
        if (string.IsNullOrEmpty(builder.Configuration["urls"])) builder.WebHost.UseUrls(DefaultAddress);
        builder.WebHost.ConfigureKestrel(options => options.AddServerHeader = false);
        // A build's output has the app's files where they were made; a published one has them in wwwroot.
        if (File.Exists(Path.Combine(AppContext.BaseDirectory, "SecondShore.Host.staticwebassets.runtime.json")))
            builder.WebHost.UseStaticWebAssets();
        builder.Logging.AddFilter("Microsoft.AspNetCore", LogLevel.Warning);
        builder.Services.AddHealthChecks();

        WebApplication app = builder.Build();
        app.UseMiddleware<SecurityHeaders>();
        app.MapHealthChecks("/health");
        app.MapStaticAssets();
        app.MapFallbackToFile("index.html");
        return app;
    }

    private static string ContentRoot() =>
        Directory.Exists(Path.Combine(AppContext.BaseDirectory, "wwwroot")) ? AppContext.BaseDirectory : Directory.GetCurrentDirectory();
}
