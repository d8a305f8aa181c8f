using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace SecondShore.TestKit;

/// <summary>
/// A weather service of the tests' own on this machine, that speaks the documented form of the open one: hourly arrays with
/// units, an error object with a reason, limits. Faults are queued one for each request to come.
/// </summary>
public sealed class WeatherStandIn : IDisposable
{
    private readonly HttpListener _listener = new();
    private readonly Task _serving;

    /// <summary>Starts it on a free port.</summary>
    /// <param name="today">The day it takes for the present.</param>
    public WeatherStandIn(DateOnly today)
    {
        Today = today;
        int port = FreePort();
        Address = new Uri($"http://127.0.0.1:{port}/");
        _listener.Prefixes.Add(Address.AbsoluteUri);
        _listener.Start();
        _serving = Task.Run(ServeAsync);
    }

    /// <summary>Its address.</summary>
    public Uri Address { get; }

    /// <summary>Where it forecasts.</summary>
    public Uri Forecast => new(Address, "v1/forecast");

    /// <summary>Where it has past years.</summary>
    public Uri Archive => new(Address, "v1/archive");

    /// <summary>The day it takes for the present.</summary>
    public DateOnly Today { get; }

    /// <summary>Queries in order.</summary>
    public ConcurrentQueue<string> Asked { get; } = new();

    /// <summary>What happens to the next requests: changes the body, or answers by itself and returns null.</summary>
    public ConcurrentQueue<Func<HttpListenerContext, string, Task<string?>>> Faults { get; } = new();

    /// <summary>Air temperature that it gives for an hour, degC, a tenth each.</summary>
    public static double AirTempC(DateTimeOffset at) => Math.Round(12 + (10 * Math.Sin((at.DayOfYear - 110) / 58.1)) + (4 * Math.Sin((at.Hour - 9) / 3.82)), 1);

    /// <summary>A fault that answers with a status and a reason.</summary>
    public static Func<HttpListenerContext, string, Task<string?>> Error(int status, string reason, string? retryAfter = null) => async (context, _) =>
    {
        context.Response.StatusCode = status;
        if (retryAfter is not null) context.Response.Headers["Retry-After"] = retryAfter;
        await SendAsync(context, $$"""{"error":true,"reason":"{{reason}}"}""");
        return null;
    };

    /// <summary>A fault that changes the body.</summary>
    public static Func<HttpListenerContext, string, Task<string?>> Changed(Func<string, string> change) => (_, body) => Task.FromResult<string?>(change(body));

    /// <summary>A fault that sends a byte now and then and never ends.</summary>
    public static Func<HttpListenerContext, string, Task<string?>> Drip(CancellationToken end) => async (context, body) =>
    {
        try
        {
            byte[] bytes = Encoding.UTF8.GetBytes(body);
            for (int i = 0; i < bytes.Length && !end.IsCancellationRequested; i++)
            {
                await context.Response.OutputStream.WriteAsync(bytes.AsMemory(i, 1), end);
                await context.Response.OutputStream.FlushAsync(end);
                await Task.Delay(20, end);
            }
        }
        catch (Exception e) when (e is HttpListenerException or OperationCanceledException or ObjectDisposedException)
        {
            // The client has had enough.
        }

        context.Response.Abort();
        return null;
    };

    /// <inheritdoc/>
    public void Dispose()
    {
        _listener.Close();
        _serving.Wait(TimeSpan.FromSeconds(5));
    }

    private async Task ServeAsync()
    {
        while (_listener.IsListening)
        {
            HttpListenerContext context;
            try
            {
                context = await _listener.GetContextAsync();
            }
            catch (Exception e) when (e is HttpListenerException or ObjectDisposedException)
            {
                return;
            }

            _ = AnswerAsync(context);
        }
    }

    private async Task AnswerAsync(HttpListenerContext context)
    {
        try
        {
            Asked.Enqueue(context.Request.Url!.PathAndQuery);
            // Open to pages of any site, as the open service is.
            context.Response.Headers["Access-Control-Allow-Origin"] = "*";
            string? body = Body(context.Request);
            if (Faults.TryDequeue(out Func<HttpListenerContext, string, Task<string?>>? fault)) body = await fault(context, body);
            if (body is not null) await SendAsync(context, body);
        }
        catch (Exception e) when (e is HttpListenerException or IOException or ObjectDisposedException)
        {
            // The client went away.
        }
    }

    private static async Task SendAsync(HttpListenerContext context, string body)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(body);
        context.Response.ContentType = "application/json; charset=utf-8";
        context.Response.ContentLength64 = bytes.Length;
        await context.Response.OutputStream.WriteAsync(bytes);
        context.Response.Close();
    }

    private string Body(HttpListenerRequest request)
    {
        bool archive = request.Url!.AbsolutePath.EndsWith("archive", StringComparison.Ordinal);
        DateOnly first = archive ? Day(request, "start_date") : Today.AddDays(-Number(request, "past_days"));
        DateOnly last = archive ? Day(request, "end_date") : Today.AddDays(Number(request, "forecast_days") - 1);
        DateTimeOffset start = new(first, TimeOnly.MinValue, TimeSpan.Zero);
        int hours = (last.DayNumber - first.DayNumber + 1) * 24;
        StringBuilder text = new($$$"""{"latitude":45.0,"longitude":-84.0,"generationtime_ms":0.2,"utc_offset_seconds":0,"timezone":"GMT","elevation":210.0"""
            + ""","hourly_units":{"time":"unixtime","temperature_2m":"°C","relative_humidity_2m":"%",""" + "\"wind_speed_10m\":\"m/s\","
            + "\"wind_direction_10m\":\"°\",\"wind_gusts_10m\":\"m/s\",\"shortwave_radiation\":\"W/m²\",\"cloud_cover\":\"%\","
            + """ "precipitation":"mm"},"hourly":{""");
        Array("time", h => start.AddHours(h).ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture), first: true);
        Array("temperature_2m", h => Text(AirTempC(start.AddHours(h))));
        Array("relative_humidity_2m", h => Text(60 + (h % 24)));
        Array("wind_speed_10m", h => Text(2 + (h % 12 / 4.0)));
        Array("wind_direction_10m", h => Text(350 + (h % 20) > 360 ? 350 + (h % 20) - 360 : 350 + (h % 20)));
        Array("wind_gusts_10m", h => Text(4 + (h % 12 / 2.0)));
        // The mean of the hour before: the sun of 12 to 13 stands at 13.
        Array("shortwave_radiation", h => Text(h % 24 is > 6 and < 19 ? 100 * (h % 24 - 6) : 0));
        Array("cloud_cover", h => Text(h % 101));
        Array("precipitation", h => Text(h % 50 == 0 ? 1.5 : 0));
        return text.Append("}}").ToString();

        void Array(string name, Func<int, string> value, bool first = false) =>
            text.Append(first ? "" : ",").Append('"').Append(name).Append("\":[").AppendJoin(',', Enumerable.Range(0, hours).Select(value)).Append(']');
    }

    private static string Text(double value) => value.ToString("0.0##", CultureInfo.InvariantCulture);

    private static DateOnly Day(HttpListenerRequest request, string key) => DateOnly.ParseExact(request.QueryString[key]!, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static int Number(HttpListenerRequest request, string key) => int.Parse(request.QueryString[key]!, CultureInfo.InvariantCulture);

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
