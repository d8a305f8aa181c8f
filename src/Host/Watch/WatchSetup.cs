using OpenTelemetry;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace SecondShore.Host.Watch;

/// <summary>Logs, metrics and traces. They leave the machine only when OTEL_EXPORTER_OTLP_ENDPOINT names a collector.</summary>
internal static class WatchSetup
{
    public static void AddWatch(this WebApplicationBuilder builder, HostSettings settings)
    {
        builder.Logging.ClearProviders();
        if (settings.JsonLogs) builder.Logging.AddJsonConsole(options => (options.UseUtcTimestamp, options.TimestampFormat) = (true, "yyyy-MM-ddTHH:mm:ss.fffZ"));
        else builder.Logging.AddSimpleConsole(options => (options.SingleLine, options.TimestampFormat) = (true, "HH:mm:ss "));
        builder.Logging.AddFilter("Microsoft", LogLevel.Warning).AddFilter("System.Net.Http", LogLevel.Warning).AddFilter("Polly", LogLevel.Warning);
        // A line for every call, and two for every stranger's, only where they are asked for: anybody could make them without end.
        if (!builder.Configuration.GetSection("Logging:LogLevel").Exists())
            builder.Logging.AddFilter("SecondShore.Host.Watch.RequestLog", LogLevel.Warning).AddFilter("SecondShore.Host.Security", LogLevel.Warning);

        OpenTelemetryBuilder telemetry = builder.Services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService("second-shore-host", serviceVersion: ProgramVersion.Text))
            .WithMetrics(metrics => metrics.AddMeter(Meters.Name).AddAspNetCoreInstrumentation().AddRuntimeInstrumentation())
            .WithTracing(traces => traces.AddAspNetCoreInstrumentation(options => options.RecordException = false));
        if (!string.IsNullOrEmpty(builder.Configuration["OTEL_EXPORTER_OTLP_ENDPOINT"])) telemetry.UseOtlpExporter();
    }
}
