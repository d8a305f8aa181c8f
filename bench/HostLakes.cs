using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using SecondShore.Records;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>A host of ten thousand lakes: one more, their list, and a page of any of them. SECONDSHORE_LOAD_LAKES shortens it.</summary>
internal sealed class HostLakes(HostDatabase database) : IFigure
{
    public string Name => "host-lakes" + database.Suffix;

    public string Claim => "Ten thousand lakes: one more and a page of any of them in 10 ms, their list in a second.";

    public FigureMargin Margin => FigureMargin.OfValue(0.5);

    public IEnumerable<Measured> Measure() => MeasureAsync().GetAwaiter().GetResult();

    private async Task<IReadOnlyList<Measured>> MeasureAsync()
    {
        string? wanted = Environment.GetEnvironmentVariable("SECONDSHORE_LOAD_LAKES");
        int lakes = int.TryParse(wanted, CultureInfo.InvariantCulture, out int set) ? set : 10_000;
        string folder = Directory.CreateTempSubdirectory("second-shore-lakes-").FullName, data = Path.Combine(folder, "data");
        using Process host = HostProcess.Start(database, data, "--lakes", (lakes + 100).ToString(CultureInfo.InvariantCulture));
        try
        {
            using HttpClient http = new() { BaseAddress = await HostProcess.AddressAsync(host), Timeout = TimeSpan.FromMinutes(2) };
            http.DefaultRequestHeaders.Add("Authorization", HostProcess.Bearer(data));
            double[] made = await TimesAsync(lakes, i => AddAsync(http, i));
            double[] lists = await TimesAsync(20, async _ => await http.GetByteArrayAsync("/api/lakes"));
            int listed = (await http.GetFromJsonAsync("/api/lakes", RecordsJson.Default.IReadOnlyListHostLake))!.Count;
            Random random = new(5);
            double[] pages = await TimesAsync(500, async _ => await http.GetByteArrayAsync($"/api/lakes/{Id(random.Next(lakes))}/records?after=0"));
            string load = File.ReadAllText("/proc/loadavg").Split(' ')[0];
            string of = string.Create(CultureInfo.InvariantCulture, $"{lakes:N0} lakes, {database.Title}; load {load}");
            return
            [
                new Measured($"{Name}-add", Median(made[^Math.Min(1000, made.Length)..]), "ms", $"median of the last thousand, with a record each; {of}; 10 is the target"),
                new Measured($"{Name}-list", Median(lists), "ms", "median; 1,000 is the target"),
                new Measured($"{Name}-listed", listed, "lakes", $"of {lakes}", FigureMargin.Exact),
                new Measured($"{Name}-page", Median(pages), "ms", "median; 10 is the target"),
                new Measured($"{Name}-memory", HostProcess.MostMemoryMb(host), "MB", "most resident memory of the host"),
            ];
        }
        finally
        {
            host.Kill();
            await host.WaitForExitAsync();
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string Id(int lake) => string.Create(CultureInfo.InvariantCulture, $"ketterfold-{lake:000000}");

    private static async Task AddAsync(HttpClient http, int lake)
    {
        NewHostLake named = new($"Ketterfold {lake}");
        (await http.PutAsJsonAsync($"/api/lakes/{Id(lake)}", named, RecordsJson.Default.NewHostLake)).EnsureSuccessStatusCode();
        LakeRecord note = LakeRecord.Make("note", new DateTimeOffset(2026, 9, 1, 0, 0, 0, TimeSpan.Zero), null, false, """{"note":"one"}""");
        PushRequest push = new([note]);
        (await http.PostAsJsonAsync($"/api/lakes/{Id(lake)}/records", push, RecordsJson.Default.PushRequest)).EnsureSuccessStatusCode();
    }

    private static async Task<double[]> TimesAsync(int count, Func<int, Task> work)
    {
        double[] ms = new double[count];
        for (int i = 0; i < count; i++)
        {
            Stopwatch watch = Stopwatch.StartNew();
            await work(i);
            ms[i] = watch.Elapsed.TotalMilliseconds;
        }

        return ms;
    }

    private static double Median(double[] ms) => ms.Order().ElementAt(ms.Length / 2);
}
