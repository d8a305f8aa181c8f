using System.Runtime.InteropServices;
using SecondShore.Answers;
using SecondShore.Answers.Files;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.App.Compute.Views;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Shore;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.App.Compute;

/// <summary>The second shore and its spots at the outlook's depth, or at a depth, level or day that is tried.</summary>
internal sealed partial class LakeDesk
{
    private static readonly double[] BeltShares = [0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9];
    private static readonly int MostSpots = new DayWish { Date = default }.MaxSpots;
    private FormMap? _forms;
    private ShoreResult? _ranked;
    private (double DropM, DepthGrid Grid)? _tried;

    private void ForgetShore()
    {
        (_forms, _tried) = (null, null);
        ForgetRanking();
    }

    private void ForgetRanking() => (_ranked, _day) = (null, null);

    // A quick answer draws the belt and the second shore only; the places are ranked by the full one.
    private ShoreView Shore(AskAbout about, bool quick)
    {
        PreparedLake lake = Opened();
        if (_grid is null || _outlook is null) return new ShoreView();
        bool tries = about.ThermoclineM is not null || about.PoolDropM is not null || about.Date is not null;
        Outlook outlook = Tried(_outlook, about);
        DepthGrid grid = Level(lake, about.PoolDropM);
        SampleDistribution? law = outlook.Lake.ThermoclineM;
        double[]? belt = law is null ? null : [.. BeltShares.Select(share => Math.Max(0.1, law.Quantile(share)))];
        SecondShoreLine? line = belt is null ? null : SecondShoreLine.Trace(grid, belt[3]);
        PutLines("second-shore", line?.Lines ?? []);
        ShoreResult? ranked = quick ? null : Rank(lake, outlook, about, tries);
        IReadOnlyList<SpotView>? spots = ranked is null ? null : SpotViews.Of(ranked, about.Units);
        return new ShoreView
        {
            ThermoclineM = belt is null ? null : new Spread(belt[0], belt[3], belt[6]),
            IsLayered = belt is not null,
            WhatIf = tries,
            LengthM = line?.LengthM ?? 0,
            Spots = spots,
            Date = DateOnly.FromDateTime(outlook.At.DateTime),
            BelowFullPoolM = about.PoolDropM ?? (lake.Folder.Levels.Count > 0 ? PoolDrop.AtM(lake.Folder.Levels, outlook.At) : null),
            Chart = new ShoreChart(belt, spots is null ? null : SpotViews.Marks(spots), ranked is null ? null : SpotViews.Passes(ranked)),
        };
    }

    private ShoreResult Rank(PreparedLake lake, Outlook outlook, AskAbout about, bool tries)
    {
        if (!tries && _ranked is not null) return _ranked;
        _forms ??= ShoreAnswer.Forms(lake, Share(Steps.Forms, 0, 0.8));
        tray.Progress(0.8, Steps.Places);
        if (about.PoolDropM is { } dropM) lake = lake.With(lake.Folder with { Levels = [new Engine.Season.PoolLevel(outlook.At, dropM)] });
        ShoreResult result = ShoreAnswer.Compute(lake, _forms, outlook, maxSpots: MostSpots);
        if (!tries) return _ranked = result;
        return _ranked is { } known ? KeptLetters.On(result, known.Spots) : result;
    }

    // The very files that the command line writes.
    private string ShorePapers(AskAbout about)
    {
        Hand(ShoreFiles.Of(_ranked ?? throw new CouldNotComputeException(DeskFindings.NoOutlook.Of()), about.Units));
        return "{}";
    }

    // The grid of a tried level goes to the chart once, not with every depth tried on it.
    private DepthGrid Level(PreparedLake lake, double? dropM)
    {
        if (dropM is not { } drop)
        {
            if (_tried is not null) tray.Grid(_grid!);
            _tried = null;
            return _grid!;
        }

        if (_tried is { } kept && Math.Abs(kept.DropM - drop) < 1e-6) return kept.Grid;
        DepthGrid grid = lake.RequireGrid().Lowered(drop);
        _tried = (drop, grid);
        tray.Grid(grid);
        return grid;
    }

    // A tried depth keeps the outlook's width of doubt: only its middle moves. A tried day takes that day of the season's course.
    private static Outlook Tried(Outlook outlook, AskAbout about)
    {
        if (about.Date is { } date) outlook = DayOutlook.OnDay(outlook, date);
        if (about.ThermoclineM is not { } triedM || outlook.Lake.ThermoclineM is not { } law) return outlook;
        double shiftM = triedM - law.Quantile(0.5);
        double[] moved = [.. law.Values.ToArray().Select(m => Math.Max(0.1, m + shiftM))];
        return outlook with { Lake = outlook.Lake with { ThermoclineM = SampleDistribution.Of(moved, [.. law.Weights]) } };
    }

    private void PutLines(string name, IReadOnlyList<DepthContour> lines)
    {
        int count = lines.Sum(l => l.Points.Length + (l.Closed ? 1 : 0)), at = 0;
        float[] points = new float[2 * count];
        int[] starts = new int[lines.Count + 1];
        for (int i = 0; i < lines.Count; i++)
        {
            DepthContour line = lines[i];
            foreach (PlanePoint point in line.Points) Add(point);
            if (line.Closed) Add(line.Points[0]);
            starts[i + 1] = at;
        }

        tray.Put(name + ".points", MemoryMarshal.AsBytes(points.AsSpan()));
        tray.Put(name + ".starts", MemoryMarshal.AsBytes(starts.AsSpan()));

        void Add(PlanePoint point)
        {
            points[2 * at] = (float)point.XM;
            points[(2 * at) + 1] = (float)point.YM;
            at++;
        }
    }
}
