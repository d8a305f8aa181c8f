using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using SecondShore.Records;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>A lake of a million notes: a page anywhere in it, and eight trips at once while others call. SECONDSHORE_RECORDS shortens it.</summary>
internal sealed class HostTrips(HostDatabase database) : IFigure
{
    private const string Lake = "ketterfold-0002", Other = "ketterfold-0003";
    private const int Trips = 8;

    public string Name => "host-trips" + database.Suffix;

    public string Claim => "One million records: a page in 10 ms; eight trips at once leave others their answers, and the host below 400 MB.";

    public FigureMargin Margin => FigureMargin.OfValue(0.3);

    public IEnumerable<Measured> Measure() => MeasureAsync().GetAwaiter().GetResult();

    private async Task<IReadOnlyList<Measured>> MeasureAsync()
    {
        int records = int.TryParse(Environment.GetEnvironmentVariable("SECONDSHORE_RECORDS"), CultureInfo.InvariantCulture, out int set) ? set : 1_000_000;
        string folder = Directory.CreateTempSubdirectory("second-shore-trips-").FullName, data = Path.Combine(folder, "data");
        using Process host = HostProcess.Start(database, data);
        try
        {
            using HttpClient http = new() { BaseAddress = await HostProcess.AddressAsync(host), Timeout = TimeSpan.FromMinutes(10) };
            http.DefaultRequestHeaders.Add("Authorization", HostProcess.Bearer(data));
            foreach (string lake in (string[])[Lake, Other])
                (await http.PutAsJsonAsync($"/api/lakes/{lake}", new NewHostLake(lake), RecordsJson.Default.NewHostLake)).EnsureSuccessStatusCode();
            using (ByteArrayContent trip = new(Zip())) (await http.PostAsync($"/api/lakes/{Lake}/trip", trip)).EnsureSuccessStatusCode();
            // A lake holds a million records, and those of the trip's files are among them.
            int notes = records - RecordRules.MaxRecordsPerMessage;
            for (int at = 0; at < notes; at += RecordRules.MaxRecordsPerMessage) await PushAsync(http, Lake, at);
            await PushAsync(http, Other, records);
            (string epoch, long last) = await EndAsync(http, Lake);
            double[] pages = await PagesAsync(http, epoch, last);
            (double[] others, int refused, long bytes) = await TripsAsync(http);
            string load = File.ReadAllText("/proc/loadavg").Split(' ')[0];
            string of = string.Create(CultureInfo.InvariantCulture, $"of {notes:N0} notes of 240 letters, {database.Title}; load {load}");
            return
            [
                new Measured($"{Name}-page", pages[pages.Length / 2], "ms", $"median, {of}; 10 is the target"),
                new Measured($"{Name}-others-p99", others[others.Length * 99 / 100], "ms", "others' calls while eight trips go; 200 is the target"),
                new Measured($"{Name}-told-to-wait", refused, "answers", "trips told when to come back, until all eight had come"),
                new Measured($"{Name}-bytes", bytes / 1e6 / Trips, "MB", "one trip", FigureMargin.Exact),
                new Measured($"{Name}-memory", HostProcess.MostMemoryMb(host), "MB", "most resident memory of the host; 400 is the target"),
            ];
        }
        finally
        {
            host.Kill();
            await host.WaitForExitAsync();
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task PushAsync(HttpClient http, string lake, int from)
    {
        DateTimeOffset start = new(2026, 9, 1, 0, 0, 0, TimeSpan.Zero);
        LakeRecord[] some = [.. Enumerable.Range(from, RecordRules.MaxRecordsPerMessage).Select(i => LakeRecord.Make("note", start.AddSeconds(i), null, false,
            $$"""{"mark":"{{i}}","note":"{{new string((char)('a' + (i % 26)), 240)}}"}"""))];
        (await http.PostAsJsonAsync($"/api/lakes/{lake}/records", new PushRequest(some), RecordsJson.Default.PushRequest)).EnsureSuccessStatusCode();
    }

    private static async Task<(string Epoch, long Cursor)> EndAsync(HttpClient http, string lake)
    {
        (string epoch, long cursor) = ("", 0);
        while (true)
        {
            using JsonDocument page = JsonDocument.Parse(await http.GetStringAsync($"/api/lakes/{lake}/records?epoch={epoch}&after={cursor}"));
            epoch = page.RootElement.GetProperty("epoch").GetString()!;
            if (page.RootElement.GetProperty("records").GetArrayLength() == 0) return (epoch, cursor);
            cursor = page.RootElement.GetProperty("cursor").GetInt64();
        }
    }

    private static async Task<double[]> PagesAsync(HttpClient http, string epoch, long last)
    {
        Random random = new(5);
        List<double> ms = [];
        for (int i = 0; i < 200; i++)
        {
            Stopwatch watch = Stopwatch.StartNew();
            await http.GetByteArrayAsync($"/api/lakes/{Lake}/records?epoch={epoch}&after={random.NextInt64(last)}");
            ms.Add(watch.Elapsed.TotalMilliseconds);
        }

        return [.. ms.Order()];
    }

    private static async Task<(double[] OthersMs, int Refused, long Bytes)> TripsAsync(HttpClient http)
    {
        int refused = 0;
        Task<long>[] trips = [.. Enumerable.Range(0, Trips).Select(_ => OneAsync())];
        Task all = Task.WhenAll(trips);
        List<double> ms = [];
        while (!all.IsCompleted || ms.Count < 20)
        {
            Stopwatch watch = Stopwatch.StartNew();
            await http.GetByteArrayAsync($"/api/lakes/{Other}/records?after=0");
            ms.Add(watch.Elapsed.TotalMilliseconds);
            await Task.Delay(5);
        }

        await all;
        return ([.. ms.Order()], refused, trips.Sum(t => t.Result));

        async Task<long> OneAsync()
        {
            while (true)
            {
                using HttpResponseMessage answer = await http.GetAsync($"/api/lakes/{Lake}/trip", HttpCompletionOption.ResponseHeadersRead);
                if (answer.StatusCode is HttpStatusCode.TooManyRequests or HttpStatusCode.ServiceUnavailable)
                {
                    Interlocked.Increment(ref refused);
                    await Task.Delay(answer.Headers.RetryAfter?.Delta ?? TimeSpan.FromSeconds(1));
                    continue;
                }

                answer.EnsureSuccessStatusCode();
                await using Stream body = await answer.Content.ReadAsStreamAsync();
                byte[] buffer = new byte[1 << 16];
                long bytes = 0;
                for (int read; (read = await body.ReadAsync(buffer)) > 0;) bytes += read;
                return bytes;
            }
        }
    }

    // A survey of 30 MB that does not pack.
    private static byte[] Zip()
    {
        using MemoryStream stream = new();
        using (ZipArchive zip = new(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            using (Stream lake = zip.CreateEntry("lake.json").Open()) lake.Write(Encoding.UTF8.GetBytes("{\"name\":\"Ketterfold\"}"));
            byte[] survey = new byte[30_000_000];
            new Random(3).NextBytes(survey);
            using Stream to = zip.CreateEntry("survey.bin", CompressionLevel.NoCompression).Open();
            to.Write(survey);
        }

        return stream.ToArray();
    }
}
