using System.Globalization;
using SecondShore.Engine.Basin.Shape;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench.Shapes;

/// <summary>Learns the bottoms of outlines from measured lakes, and scores each lake with numbers learned without it.</summary>
/// <remarks>
/// Writes <c>src/Engine/Basin/Shape/shapes.json</c>, or where SECONDSHORE_SHAPES_OUT says;
/// with SECONDSHORE_LEARN=present it only scores the numbers that are there. Natural basins are learned from measured lakes alone.
/// Of dammed valleys only one measured lake has both an outline and depths: they are learned from it and from made valleys, half and half,
/// and it is scored with what the made ones taught alone.
/// </remarks>
internal sealed class BasinShape : IFigure
{
    public string Name => "basin-shape";

    public string Claim => "learns shapes.json, the bottom of an outline; every lake is scored with numbers learned without it";

    public FigureMargin Margin => new(0.03, 0.01);

    public string LeftOut =>
        "each measured lake in turn, and each seed of the made ones, from what the numbers it is scored with were learned from";

    public IEnumerable<Measured> Measure()
    {
        IReadOnlyList<ShapeLake> lakes = ShapeSurveys.Read(Say);
        if (lakes.Count == 0) yield break;
        IReadOnlyList<(ShapeLake Lake, int Seed)> made = MadeShapes.All();
        IReadOnlyList<DeepestDepths> depths = DeepestDepths.All(lakes);
        if ((Environment.GetEnvironmentVariable("SECONDSHORE_LEARN") ?? "") == "present")
        {
            ShapePrint.Table("measured, with the numbers that are there", Scores(lakes, _ => ShapeNumbers.Learned));
            ShapePrint.Table("made, with the numbers that are there", Scores([.. made.Select(m => m.Lake)], _ => ShapeNumbers.Learned));
            yield break;
        }

        ShapeTeacher teacher = new(lakes, made, depths);
        ShapeNumbers all = teacher.Learn(null, null);
        foreach (BasinNumber n in BasinNumbers.All) Say(Invariant($"    {n.Name} {n.Of(all.Natural):0.000} {n.Of(all.Dammed):0.000}"));
        ShapeScore[] measured = Scores(lakes, l => teacher.Learn(l, null));
        ShapeScore[] ofMade = Scores([.. made.Select(m => m.Lake)], l => teacher.Learn(null, made.First(m => m.Lake == l).Seed));
        ShapeScore[] inSample = Scores(lakes, _ => all);
        ShapePrint.Table("measured, each left out", measured);
        ShapePrint.Table("made, each seed left out", ofMade);
        ShapePrint.Table("measured, in sample", inSample);
        string path = Environment.GetEnvironmentVariable("SECONDSHORE_SHAPES_OUT") ?? "src/Engine/Basin/Shape/shapes.json";
        ShapeFile.Write(path, all, lakes, [.. made.Select(m => m.Lake)], depths, measured, ofMade);
        Say($"{path} is written.");
        foreach (Measured m in ShapePrint.Figures("measured", measured, inSample)) yield return m;
        foreach (Measured m in ShapePrint.Figures("made", ofMade, null)) yield return m;
    }

    private static ShapeScore[] Scores(IReadOnlyList<ShapeLake> lakes, Func<ShapeLake, ShapeNumbers> numbers)
    {
        ShapeScore[] scores = new ShapeScore[lakes.Count];
        Parallel.For(0, lakes.Count, i => scores[i] = ShapeScore.Of(lakes[i], numbers(lakes[i])));
        return scores;
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static void Say(string text) => Console.Error.WriteLine(text);
}

/// <summary>Learns with some lakes left out.</summary>
internal sealed class ShapeTeacher(IReadOnlyList<ShapeLake> lakes, IReadOnlyList<(ShapeLake Lake, int Seed)> made,
    IReadOnlyList<DeepestDepths> depths)
{
    private static readonly BasinNumbers Bowl = new()
    {
        CrossPower = 0.8,
        WidthPower = 0.6,
        SheetPower = 0.7,
        SheetShare = 0.5,
        BroadShare = 0.9
    };
    private static readonly BasinNumbers Valley = new()
    {
        CrossPower = 0.8,
        WidthPower = 0.2,
        SheetShare = 0,
        FallPower = 0.8,
        BroadShare = 0.95
    };

    private readonly Dictionary<string, BasinNumbers> _known = [];

    /// <summary>Learns without a measured lake, or without a seed of the made ones.</summary>
    public ShapeNumbers Learn(ShapeLake? without, int? withoutSeed)
    {
        ShapeLake[] kept = [.. lakes.Where(l => l != without)];
        ShapeLake[] natural = [.. kept.Where(l => l.Kind != BasinKind.Dammed)];
        ShapeLake[] dammed = [.. kept.Where(l => l.Kind == BasinKind.Dammed)];
        ShapeLake[] valleys = [.. made.Where(m => m.Seed != withoutSeed && m.Lake.Kind == BasinKind.Dammed).Select(m => m.Lake)];
        BasinNumbers bowl = Once(without?.Kind == BasinKind.Natural ? without.Name : "",
            () => ShapeLearner.Learn([.. natural.Select(l => (l, 1.0))], Bowl));
        BasinNumbers valley = Once($"{withoutSeed} {(without?.Kind == BasinKind.Dammed ? without.Name : "")}", () => ShapeLearner.Learn(
            [.. dammed.Select(l => (l, 1.0 / dammed.Length)), .. valleys.Select(l => (l, 1.0 / valleys.Length))], Valley));
        (bowl, valley) = DeepestDepths.Learn(depths, without, bowl, valley);
        return Unknown(new ShapeNumbers(bowl, valley), kept);
    }

    // The smallest factor by which two errors hold as much as they should of the lakes learned from, told nothing.
    private static ShapeNumbers Unknown(ShapeNumbers numbers, ShapeLake[] kept)
    {
        for (double factor = 0.1; ; factor += 0.1)
        {
            ShapeNumbers tried = new(numbers.Natural with { UnknownFactor = factor }, numbers.Dammed with { UnknownFactor = factor });
            if (factor > 1.5 || kept.Average(l => ShapeScore.ShareHeld(l, l.Guess(tried, false))) >= ShapeErrors.WishedShare) return tried;
        }
    }

    private BasinNumbers Once(string key, Func<BasinNumbers> learn)
    {
        lock (_known)
        {
            if (_known.TryGetValue(key, out BasinNumbers? known)) return known;
        }

        BasinNumbers learned = learn();
        lock (_known) _known[key] = learned;
        return learned;
    }
}
