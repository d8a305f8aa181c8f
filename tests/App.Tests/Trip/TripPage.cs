using System.Text;
using System.Text.Json;
using Microsoft.JSInterop;
using SecondShore.Answers;
using SecondShore.App.Shell;
using SecondShore.App.Store;
using SecondShore.App.Trip;
using SecondShore.Desk;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.Engine.Basin;

namespace SecondShore.App.Tests.Trip;

/// <summary>The page without a browser: its database in memory, the engine's desk beside it, a clock that is set.</summary>
internal sealed class TripPage : IJSRuntime, IJSObjectReference, ITray
{
    public static readonly DateTimeOffset Dawn = new(2026, 8, 22, 11, 0, 0, TimeSpan.Zero);
    private readonly Dictionary<string, string> _settings = new(StringComparer.Ordinal);
    private readonly Dictionary<string, byte[]> _files, _put = new(StringComparer.Ordinal);
    private readonly List<RecordRow> _records = [];
    private readonly LakeDesk _desk;

    public TripPage(Dictionary<string, byte[]>? files = null)
    {
        _files = files ?? Bowl();
        _desk = new LakeDesk(this);
        Browser browser = new(this);
        Session = new Session(browser) { Clock = Clock };
        Trip = new TripLog(Session, browser);
    }

    public Session Session { get; private set; }

    public TripLog Trip { get; private set; }

    public StandingClock Clock { get; } = new() { Now = Dawn };

    public IReadOnlyList<RecordRow> Records => _records;

    /// <summary>Depth that the chart shows everywhere, m.</summary>
    public double ChartM { get; set; } = 8;

    /// <summary>The lake opened, and its day planned.</summary>
    public async Task<DayView> PlannedAsync()
    {
        await Session.OpenAsync(new LakeRow("x", "Test Bowl", ""));
        await Session.PlanAsync(new DayAsk(new DateOnly(2026, 8, 22), null, new TimeOnly(11, 0), new TimeOnly(19, 0)));
        Assert.Null(Session.Trouble);
        return Session.Day ?? throw new InvalidOperationException("No day was planned.");
    }

    /// <summary>The same device after its tab was killed: everything in memory is gone.</summary>
    public async Task KilledAsync()
    {
        Trip.Dispose();
        Browser browser = new(this);
        Session = new Session(browser) { Clock = Clock };
        Trip = new TripLog(Session, browser);
        await Session.OpenAsync(new LakeRow("x", "Test Bowl", ""));
    }

    /// <summary>The trip file that the page hands out.</summary>
    public byte[] TripFile()
    {
        _put.Clear();
        Told(new ExportTrip(RecordSet.Standing(_records)));
        return _put["file:trip.zip"];
    }

    /// <summary>A file that the engine handed out.</summary>
    public string Handed(string name) => Encoding.UTF8.GetString(_put["file:" + name]);

    /// <summary>The phone finds the boat at a place in the lake's plane.</summary>
    public Task FixAsync(double xM, double yM, double speedMps, double accuracyM = 5)
    {
        var place = Session.Plane!.ToGeo(new(xM, yM));
        return Session.OnFix(place.LatDeg, place.LonDeg, accuracyM, speedMps, null, Clock.Now.ToUnixTimeMilliseconds());
    }

    /// <summary>What the engine was asked, in order.</summary>
    public List<Question> Questions { get; } = [];

    /// <summary>The engine answers when this is done; null answers at once.</summary>
    public Task? Busy { get; set; }

    /// <summary>Another tab of the same device, with the same lake open.</summary>
    public async Task<(Session Session, TripLog Trip)> OtherTabAsync()
    {
        Browser browser = new(this);
        Session other = new(browser) { Clock = Clock };
        TripLog trip = new(other, browser);
        await other.OpenAsync(new LakeRow("x", "Test Bowl", ""));
        return (other, trip);
    }

    /// <summary>The device's database writes when this is done; null writes at once.</summary>
    public Task? Disk { get; set; }

    public async ValueTask<T> InvokeAsync<T>(string identifier, object?[]? args)
    {
        if (identifier is "addRecordsJson" or "saveSetting" && Disk is { } disk) await disk;
        if (identifier == "ask" && Busy is { } busy) await busy;
        return (T)(Answer(identifier, args ?? []) ?? default(T)!)!;
    }

    public ValueTask<T> InvokeAsync<T>(string identifier, CancellationToken cancellationToken, object?[]? args) => InvokeAsync<T>(identifier, args);

    public ValueTask DisposeAsync() => default;

    public void Progress(double share, string what)
    {
    }

    public void Put(string name, ReadOnlySpan<byte> bytes) => _put[name] = bytes.ToArray();

    public void Grid(DepthGrid grid)
    {
    }

    public void Draw(Drawing drawing)
    {
    }

    private object? Answer(string function, object?[] args)
    {
        switch (function)
        {
            case "import": return this;
            case "setting": return _settings.GetValueOrDefault((string)args[0]!);
            case "saveSetting": _settings[(string)args[0]!] = (string)args[1]!; return null;
            case "recordsJson": return JsonSerializer.Serialize(_records, DeskJson.Default.IReadOnlyListRecordRow);
            case "depthHere": return ChartM;
            case "recall": return function == "recall" && (string)args[1]! == "day" ? _settings.GetValueOrDefault("answer:day") : null;
            case "addRecordsJson":
                foreach (RecordRow row in JsonSerializer.Deserialize((string)args[0]!, DeskJson.Default.IReadOnlyListRecordRow)!)
                    if (_records.All(r => r.Id != row.Id)) _records.Add(row);
                return null;
            case "setReader": _desk.Reader = Reader.OfJson((string)args[0]!); return null;
            case "ask" or "changeFiles":
                string json = Asked((string)args[1]!);
                if (function == "ask" && (string?)args[5] == Keep.Day) _settings["answer:day"] = json;
                foreach ((string name, byte[] bytes) in _put.Where(p => function == "changeFiles" && p.Key.StartsWith(ITray.FilePrefix, StringComparison.Ordinal))) _files[name[5..]] = bytes;
                return json;
            default: return null;
        }
    }

    /// <summary>What the engine answers.</summary>
    public T Told<T>(Question<T> question)
        where T : class => question.ReadAnswer(Asked(question.ToJson()));

    // As the worker does: files first, and a failure handed over as its sentence.
    private string Asked(string json)
    {
        Question question = Question.OfJson(json);
        Questions.Add(question);
        try
        {
            if (question is OpenLake) _desk.Lay("x", _files);
            return _desk.AskJson(question, _files);
        }
        catch (SaidException e)
        {
            throw new JSException(e.Message);
        }
    }

    public static Dictionary<string, byte[]> Bowl()
    {
        StringBuilder xyz = new("lat,lon,depth_m\n");
        for (int i = -20; i <= 20; i++)
        {
            for (int j = -20; j <= 20; j++)
            {
                double r = Math.Sqrt((i * i) + (j * j)) / 20;
                xyz.Append(FormattableString.Invariant($"{45 + (i * 0.0006):0.00000},{-90 + (j * 0.0008):0.00000},{Math.Max(0, 20 * (1 - (r * r))):0.00}\n"));
            }
        }

        return new()
        {
            ["survey.csv"] = Encoding.UTF8.GetBytes(xyz.ToString()),
            ["lake.json"] = Encoding.UTF8.GetBytes("""{"name":"Test Bowl","latitude_deg":45,"longitude_deg":-90,"time_zone":"UTC","secchi_m":3"""
                + ""","measured_until":"2026-08-21T12:00:00Z"}"""),
            ["readings.csv"] = Encoding.UTF8.GetBytes("time,haze_depth_m\n2026-08-20T12:00Z,8\n"),
            ["tackle.json"] = Encoding.UTF8.GetBytes("""
                {"notes":"mine","jigs":[{"name":"drag","weight_oz":0.75,"colour":"brown","my_key":1},
                 {"name":"light","weight_g":14,"colour":"green"}],
                  "trailers":[{"name":"slim craw"},{"name":"twin tail"}]}
                """),
        };
    }

    internal sealed class StandingClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; }

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
