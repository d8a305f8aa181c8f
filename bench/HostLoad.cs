using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using SecondShore.Records;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>
/// Mixed sync at 500 requests a second for a minute, made by wrk (Debian's package), while a hundred clients drip. The host is the
/// Release build on this machine; wrk shares its processors. SECONDSHORE_LOAD_SECONDS shortens it.
/// </summary>
internal sealed class HostLoad : IFigure
{
    private const string Lake = "ketterfold-0001";

    private static readonly OutsideProgram Wrk = new("wrk", "wrk");

    private static readonly string Script =
        """
        local counter = 0
        function setup(thread) thread:set("id", counter); counter = counter + 1 end
        function init(args)
          math.randomseed(id + 7)
          bodies = {}; at = 0; cursor = 0; epoch = ""
          local n = 0
          for line in io.lines(args[1]) do n = n + 1; if n % 2 == id then bodies[#bodies + 1] = line end end
          path = "/api/lakes/ketterfold-0001/records"
          own = { ["Authorization"] = "BEARER" }
        end
        function delay() return math.random(60, 140) end
        function request()
          local r = math.random()
          if r < 0.4 then
            at = at % #bodies + 1
            return wrk.format("POST", path, { ["Content-Type"] = "application/json", ["Authorization"] = "BEARER" }, bodies[at])
          end
          if r < 0.9 then return wrk.format("GET", path .. "?epoch=" .. epoch .. "&after=" .. cursor, own) end
          return wrk.format("GET", "/api/lakes", own)
        end
        function response(status, headers, body)
          local e, c = body:match('"epoch":"(%x+)","cursor":(%d+)')
          if e then epoch = e; cursor = math.max(cursor, tonumber(c)) end
        end
        function done(summary, latency, requests)
          local e = summary.errors
          io.write(string.format("RESULT %d %d %.3f %.3f %.3f %.3f\n", summary.requests,
            e.connect + e.read + e.write + e.status + e.timeout,
            summary.duration / 1e6, latency:percentile(50) / 1000, latency:percentile(99) / 1000, latency.max / 1000))
        end
        """;

    public string Name => "host-load";

    public string Claim => "Mixed sync at about 500 requests a second for 60 s: 99th percentile, errors, memory";

    public FigureMargin Margin => FigureMargin.OfValue(0.25);

    public IEnumerable<Measured> Measure() => MeasureAsync().GetAwaiter().GetResult();

    private static async Task<IReadOnlyList<Measured>> MeasureAsync()
    {
        Wrk.Require();
        string seconds = Environment.GetEnvironmentVariable("SECONDSHORE_LOAD_SECONDS") ?? "60";
        string folder = Directory.CreateTempSubdirectory("second-shore-load-").FullName;
        using Process host = HostProcess.Start(Path.Combine(folder, "data"));
        try
        {
            Uri address = await HostProcess.AddressAsync(host);
            string bearer = HostProcess.Bearer(Path.Combine(folder, "data"));
            using HttpClient http = new() { BaseAddress = address };
            http.DefaultRequestHeaders.Add("Authorization", bearer);
            (await http.PutAsJsonAsync($"/api/lakes/{Lake}", new NewHostLake(Lake), RecordsJson.Default.NewHostLake)).EnsureSuccessStatusCode();
            string bodies = Path.Combine(folder, "bodies"), script = Path.Combine(folder, "mixed.lua");
            await File.WriteAllLinesAsync(bodies, Enumerable.Range(0, 20_000).Select(Body));
            await File.WriteAllTextAsync(script, Script.Replace("BEARER", bearer, StringComparison.Ordinal));
            using CancellationTokenSource end = new();
            Task[] slow = [.. Enumerable.Range(0, 100).Select(_ => DripAsync(address, end.Token))];
            string result = await OutputAsync(Wrk, "-t2", "-c56", $"-d{seconds}s", "--timeout", "10s", "-s", script, address.ToString(), "--", bodies);
            await end.CancelAsync();
            await Task.WhenAll(slow);
            double[] v = [.. result.Split('\n').First(l => l.StartsWith("RESULT", StringComparison.Ordinal))[7..].Split(' ').Select(t => double.Parse(t, CultureInfo.InvariantCulture))];
            string load = File.ReadAllText("/proc/loadavg").Split(' ')[0];
            return
            [
                new Measured("host-load-rate", v[0] / v[2], "requests/s", $"500 wanted; wrk, 56 connections, {seconds} s, load {load}, 100 dripping clients beside"),
                new Measured("host-load-p50", v[3], "ms", "median"),
                new Measured("host-load-p99", v[4], "ms", "100 ms wanted"),
                new Measured("host-load-max", v[5], "ms", "slowest"),
                new Measured("host-load-errors", v[1], "errors", "none wanted; status, connection and time-out together", FigureMargin.Exact),
                new Measured("host-load-memory", HostProcess.MostMemoryMb(host), "MB", "most resident memory of the host"),
            ];
        }
        finally
        {
            host.Kill();
            await host.WaitForExitAsync();
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string Body(int i)
    {
        DateTimeOffset at = new DateTimeOffset(2026, 9, 1, 0, 0, 0, TimeSpan.Zero).AddSeconds(i);
        LakeRecord[] pair = [.. Enumerable.Range(0, 2).Select(k => LakeRecord.Make("haze", at, null, false, $$"""{"mark":"{{i}}-{{k}}","value":9.5,"latDeg":44.251,"lonDeg":-83.777}"""))];
        return JsonSerializer.Serialize(new PushRequest(pair), RecordsJson.Default.PushRequest);
    }

    private static async Task DripAsync(Uri address, CancellationToken end)
    {
        byte[] start = Encoding.ASCII.GetBytes($"POST /api/lakes/{Lake}/records HTTP/1.1\r\nHost: {address.Authority}\r\nContent-Length: 100000\r\n\r\n{{");
        while (!end.IsCancellationRequested)
        {
            try
            {
                using TcpClient tcp = new();
                await tcp.ConnectAsync(address.Host, address.Port, end);
                NetworkStream stream = tcp.GetStream();
                await stream.WriteAsync(start, end);
                byte[] buffer = new byte[1024];
                while (await stream.ReadAsync(buffer, end) > 0)
                {
                    // Until the host has had enough.
                }
            }
            catch (Exception e) when (e is IOException or SocketException or OperationCanceledException)
            {
                // Cut off; again.
            }
        }
    }

    private static async Task<string> OutputAsync(OutsideProgram program, params string[] arguments)
    {
        using Process process = program.Start(withInput: false, arguments);
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Console.Error.WriteLine(output + await errors);
        return output;
    }
}
