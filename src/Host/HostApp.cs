using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.ResponseCompression;
using SecondShore.Host.Api;
using SecondShore.Host.Security;
using SecondShore.Host.Watch;

namespace SecondShore.Host;

/// <summary>The web server: serves the app's files, keeps and syncs records, and lets in whom it knows.</summary>
public static class HostApp
{
    /// <summary>The address used when none is given: this machine only.</summary>
    public static string DefaultAddress => HostSettings.DefaultAddress;

    /// <summary>Builds the server, not yet listening. Arguments are the framework's own, such as <c>--urls</c>, and those of <c>docs/how-to/host.md</c>.</summary>
    public static WebApplication Build(string[] args)
    {
        Dictionary<string, string?> variables = HostOptions.Variables(Environment.GetEnvironmentVariables());
        Dictionary<string, string?> options = HostOptions.Parse(args);
        WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = [.. options.Select(o => $"--{o.Key}={o.Value}")],
            // Named here, so that the list of static files is found whoever starts the server.
            ApplicationName = typeof(HostApp).Assembly.GetName().Name,
            ContentRootPath = ContentRoot(),
        });
        builder.Configuration.AddInMemoryCollection(variables).AddInMemoryCollection(options);
        HostSettings settings = HostSettings.From(builder.Configuration);
        if (string.IsNullOrEmpty(builder.Configuration["urls"]) && builder.Configuration["http_ports"] is null) builder.WebHost.UseUrls(HostSettings.DefaultAddress);
        ConfigureServer(builder, settings);
        // A build's output has the app's files where they were made; a published one has them in wwwroot.
        if (File.Exists(Path.Combine(AppContext.BaseDirectory, "SecondShore.Host.staticwebassets.runtime.json")))
            builder.WebHost.UseStaticWebAssets();
        AddServices(builder, settings);

        WebApplication app = builder.Build();
        UsePipeline(app, settings);
        return app;
    }

    private static void ConfigureServer(WebApplicationBuilder builder, HostSettings settings) => builder.WebHost.ConfigureKestrel(options =>
    {
        options.AddServerHeader = false;
        ServerLimits.Apply(options);
        ConnectionLimit connections = new(settings);
        options.ConfigureEndpointDefaults(endpoint => endpoint.Use(connections.Around));
        if (settings.Certificate is { } file) options.ConfigureHttpsDefaults(https => (https.ServerCertificate, https.ServerCertificateChain) = Certificate(file, settings.CertificateKey));
    });

    private static void AddServices(WebApplicationBuilder builder, HostSettings settings)
    {
        IServiceCollection services = builder.Services;
        services.AddSingleton(settings);
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton(settings.Quota);
        services.AddHostStore(settings);
        services.AddSingleton<Meters>();
        services.AddSingleton<StartKey>();
        services.AddSingleton<PairingWaits>();
        services.AddSingleton<Turns>();
        services.AddTransient<Quiet>();
        services.AddDevices();
        if (settings.Apps.Count > 0) services.AddCors(options => NamedApps.Apply(options, settings));
        services.AddSingleton<TripIntake>();
        services.AddHostRateLimits(settings);
        services.AddRequestTimeouts(options => options.DefaultPolicy = new() { Timeout = TimeSpan.FromSeconds(30), TimeoutStatusCode = StatusCodes.Status503ServiceUnavailable });
        // Else the framework answers with nothing at all where a number or a body cannot be read.
        services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        services.ConfigureHttpJsonOptions(options => ApiJson.Apply(options.SerializerOptions));
        services.AddResponseCompression(options => options.MimeTypes = [.. ResponseCompressionDefaults.MimeTypes]);
        services.AddHealthChecks().AddCheck<StoreHealth>("store", tags: ["ready"]);
        services.AddHostWeather(settings);
        if (settings.Proxies.Count > 0) services.Configure<ForwardedHeadersOptions>(options => TrustedProxies.Apply(options, settings));
        builder.AddWatch(settings);
    }

    private static void UsePipeline(WebApplication app, HostSettings settings)
    {
        if (settings.Proxies.Count > 0) app.UseForwardedHeaders();
        app.UseMiddleware<RequestLog>();
        app.UseMiddleware<SecurityHeaders>();
        app.UseMiddleware<Faults>();
        app.UseMiddleware<OwnOrigin>();
        app.UseRouting();
        if (settings.Apps.Count > 0) app.UseCors();
        app.UseAuthentication();
        app.UseRateLimiter();
        app.UseRequestTimeouts();
        app.UseAuthorization();
        app.MapHealthChecks("/health", new() { Predicate = check => !check.Tags.Contains("ready") });
        app.MapHealthChecks("/health/ready", new() { Predicate = check => check.Tags.Contains("ready") });
        RouteGroupBuilder api = app.MapGroup("/api").RequireRateLimiting(RateLimits.Device);
        api.MapHostStanding();
        api.MapOpen();
        api.MapPairing();
        api.MapDevices();
        api.MapLakes();
        Turns turns = app.Services.GetRequiredService<Turns>();
        api.MapRecords(turns);
        api.MapFiles();
        api.MapTrips(turns);
        api.MapWeather(turns);
        api.MapFallback(() => Replies.No(StatusCodes.Status404NotFound, "There is no such address here; docs/how-to/host.md lists them."));
        app.MapStaticAssets();
        app.MapFallbackToFile("index.html");
    }

    // The certificate, and whatever else its file holds: a device knows the root, and has to be sent what stands between.
    private static (X509Certificate2 Own, X509Certificate2Collection Chain) Certificate(string file, string? key)
    {
        try
        {
            X509Certificate2Collection chain = [];
            chain.ImportFromPemFile(file);
            using X509Certificate2 pem = X509Certificate2.CreateFromPemFile(file, key);
            return (X509CertificateLoader.LoadPkcs12(pem.Export(X509ContentType.Pkcs12), null), chain);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or System.Security.Cryptography.CryptographicException)
        {
            throw new SettingsException($"The certificate {file} cannot be used: it is missing, may not be read, or has no key with it. Give a PEM file, and its key with --certificate-key.");
        }
    }

    private static string ContentRoot() =>
        Directory.Exists(Path.Combine(AppContext.BaseDirectory, "wwwroot")) ? AppContext.BaseDirectory : Directory.GetCurrentDirectory();
}
