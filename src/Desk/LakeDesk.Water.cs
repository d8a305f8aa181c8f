using System.Runtime.InteropServices;
using SecondShore.Answers.Files;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Learn;
using SecondShore.Answers.Questions;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Graph;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.Engine.Basin.Shore;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Desk;

/// <summary>The outlook, and the second shore and its spots at the outlook's depth or at a depth, level or day that is tried.</summary>
public sealed partial class LakeDesk
{
    private static readonly double[] BeltShares = [0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9];

    internal OutlookView Outlook()
    {
        Outlook outlook = _graph.Outlook(Share(Steps.Season, 0, 1));
        return OutlookViews.Of(_graph.Lake(), outlook, EnsembleOptions.UsualMembers, _graph.Records, _units);
    }

    // A slice draws the belt and the second shore only; the places stay as they were ranked.
    internal ShoreView Shore(Tried tried, bool ranks)
    {
        PreparedLake lake = _graph.Lake();
        if (_graph.Grid(tried.PoolDropM ?? _graph.DropM() ?? 0) is not { } grid)
        {
            _tray.Draw(new BeltDrawing(null, null, null, WhatIf: false));
            return new ShoreView();
        }

        Outlook outlook = tried.Outlook(_graph.Outlook());
        Show(grid);
        SampleDistribution? law = outlook.Lake.ThermoclineM;
        double[]? belt = law is null ? null : [.. BeltShares.Select(share => Math.Max(0.1, law.Quantile(share)))];
        SecondShoreLine? line = belt is null ? null : SecondShoreLine.Trace(grid, belt[3]);
        PutLines("second-shore", line?.Lines ?? []);
        ShoreResult? ranked = ranks ? Ranked(tried) : null;
        IReadOnlyList<SpotView>? spots = ranked is null ? null : SpotViews.Of(ranked, _units);
        bool tries = tried != Tried.Nothing;
        _tray.Draw(new BeltDrawing(belt, spots is null ? null : SpotViews.Marks(spots), ranked is null ? null : SpotViews.Passes(ranked), tries));
        return new ShoreView
        {
            ThermoclineM = belt is null ? null : new Spread(belt[0], belt[3], belt[6]),
            IsLayered = belt is not null,
            WhatIf = tries,
            LengthM = line?.LengthM ?? 0,
            Spots = spots,
            Date = DateOnly.FromDateTime(outlook.At.DateTime),
            BelowFullPoolM = tried.PoolDropM ?? (lake.Folder.Levels.Count > 0 ? PoolDrop.AtM(lake.Folder.Levels, outlook.At) : null),
        };
    }

    private ShoreResult Ranked(Tried tried)
    {
        Part forms = Share(Steps.Forms, 0, 0.8);
        ShoreResult known = _graph.Ranked(Tried.Nothing, forms, Ranking);
        return tried == Tried.Nothing ? known : KeptLetters.On(_graph.Ranked(tried, forms, Ranking), known.Spots);

        void Ranking() => _tray.Progress(0.8, Steps.Places);
    }

    // The very files that the command line writes.
    internal HandedOut PapersOf(ShorePapers _) => Hand(ShoreFiles.Of(_graph.Ranked(Tried.Nothing), _units));

    // The very document that the command line prints of the same files; the log may be longer than when the lake was opened.
    internal LearnDocument Learn(LearnFrom question) =>
        LearnDocument.Of(LearnAnswer.Of(OwnRecords.Into(_graph.Filed(), question.Records), _graph.Outlook(), Wish(question.Wish), _units), []);

    private static LearnWish Wish(LearnAsk ask)
    {
        LearnWish usual = new();
        return usual with
        {
            Eats = ask.Eats is { Length: > 0 } food ? [food] : usual.Eats,
            LowLight = ask.LowLight,
            HoursAheadH = ask.HoursAheadH ?? usual.HoursAheadH,
            TravelH = ask.TravelMin / 60,
        };
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

        _tray.Put(name + ".points", MemoryMarshal.AsBytes(points.AsSpan()));
        _tray.Put(name + ".starts", MemoryMarshal.AsBytes(starts.AsSpan()));

        void Add(PlanePoint point)
        {
            points[2 * at] = (float)point.XM;
            points[(2 * at) + 1] = (float)point.YM;
            at++;
        }
    }
}
