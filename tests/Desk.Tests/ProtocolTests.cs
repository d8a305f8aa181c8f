using SecondShore.Desk.Entries;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;

namespace SecondShore.Desk.Tests;

/// <summary>What crosses between the page and the desk.</summary>
public class ProtocolTests
{
    [Fact]
    public void The_types_of_the_browsers_side_are_those_of_the_records()
    {
        string written = TypeScriptTypes.Write();
        if (Environment.GetEnvironmentVariable("SECONDSHORE_DRAW") == "1") File.WriteAllText(TypeScriptTypes.FilePath, written);
        Assert.True(File.Exists(TypeScriptTypes.FilePath) && File.ReadAllText(TypeScriptTypes.FilePath).ReplaceLineEndings("\n") == written,
            "src/App/map/src/worker/desk.ts is not what the records in src/Desk say. Write it anew: SECONDSHORE_DRAW=1 dotnet test tests/Desk.Tests");
    }

    [Fact]
    public void Every_question_crosses_under_its_own_name_and_comes_out_the_same()
    {
        DateTimeOffset at = new(2026, 10, 4, 6, 0, 0, TimeSpan.FromHours(-5));
        RecordRow row = new Entry { Value = 8 }.ToRow("x", RecordKinds.Haze, at);
        HereAsk here = new(at, 45, -90, new Dictionary<string, double> { ["a"] = 1 });
        DayAsk day = new(new DateOnly(2026, 10, 4), "Ramp", new TimeOnly(6, 0), Must: ["a"], Here: here, Taken: ["Sheltered"], RampOpen: true);
        Question[] all =
        [
            new OpenLake([row], at), new FindOutlook(), new SliceShore(7, 1, new DateOnly(2026, 10, 4)), new RankPlaces(7),
            new ShorePapers(), new BlowWind(new WindAsk(120)),
            new LookAtPoint(new WindAsk(), new PointAsk(1, 2)), new WindPapers(new WindAsk()), new PointPapers(new WindAsk(), new PointAsk(1, 2)),
            new PlanDay(day), new PlanOthers(day),
            new HoldPlan(new HoldAsk(new DateOnly(2026, 10, 4), 8, [new HoldStop("A", 1, 2, [1, 2, 3, 4])])),
            new DayPapers(day), new RigFor(new RigAsk(8, 0.27, 5.4, "a", new RigMore { Head = "ball" }), day),
            new LearnFrom(new LearnAsk("crayfish", true, 3), [row]), new ChangeJig("", "drag", 21, "brown"), new ChangeTrailer("", "craw", "green"),
            new TimeDrop("drag", 9, 12, "now"),
            new InspectFiles(new NewLakeFacts("x", 45, -90, "UTC", null, null) { Answers = [new SurveyAnswer("a.csv", "{}")] }),
            new AdoptFiles(new NewLakeFacts("x", 45, -90, "UTC", "Feet", "Depth")),
            new UnpackTrip(), new ExportTrip([row]), new TakeWeather(), new FetchWeather(new WeatherAsk(15, "https://weather.example/")),
        ];
        Assert.Equal(TypeScriptTypes.Derived(typeof(Question)).Select(d => d.Type), all.Select(q => q.GetType()));
        foreach ((Question question, (_, string name)) in all.Zip(TypeScriptTypes.Derived(typeof(Question))))
        {
            Assert.Equal(name, question.Kind);
            Assert.StartsWith($"{{\"question\":\"{name}\"", question.ToJson(), StringComparison.Ordinal);
            Question back = Question.OfJson(question.ToJson());
            Assert.IsType(question.GetType(), back);
            Assert.Equal(question.ToJson(), back.ToJson());
        }

        Type[] written = [.. typeof(Question).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Question)) && !t.IsAbstract)];
        Assert.Equal(written.Select(t => t.Name).Order(), all.Select(q => q.GetType().Name).Order());
    }

    [Fact]
    public void A_reader_is_said_once_and_all_answers_are_in_its_words()
    {
        Assert.Equal(new Reader(true, "de"), Reader.OfJson(new Reader(true, "de").ToJson()));
        LakeDesk desk = new(new KeptTray());
        desk.Lay("x", Bowl.Files());
        desk.Ask(new OpenLake([], Bowl.Noon));
        Assert.Contains("Tie on 1/2 oz", desk.Ask(new RigFor(new RigAsk(8, 0.27, 5.4))).Words[0], StringComparison.Ordinal);
        desk.Reader = new Reader(Metric: true, "de");
        Assert.Contains("14 g anbinden", desk.Ask(new RigFor(new RigAsk(8, 0.27, 5.4))).Words[0], StringComparison.Ordinal);
        LakeDesk empty = new(new KeptTray()) { Reader = new Reader(Language: "de") };
        SaidException said = Assert.Throws<SaidException>(() => empty.Ask(new FindOutlook()));
        Assert.Equal("Kein See ist offen.", said.Sentence);
    }

    [Fact]
    public void No_question_is_a_bag_of_options_for_all()
    {
        foreach (Type question in TypeScriptTypes.Derived(typeof(Question)).Select(d => d.Type))
            Assert.InRange(question.GetConstructors().Max(c => c.GetParameters().Length), 0, 4);
    }
}
