using System.Runtime.InteropServices;
using SecondShore.Answers;
using SecondShore.Answers.Files;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Wind;
using SecondShore.App.Compute.Views;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;

namespace SecondShore.App.Compute;

/// <summary>What the wind does to the water, worked out hour by hour with its progress told.</summary>
internal sealed partial class LakeDesk
{
    private WindResult? _wind;

    private WindView Wind(AskAbout about)
    {
        WindAsk ask = about.Wind ?? new WindAsk();
        PreparedLake lake = Opened();
        lake.RequireGrid();
        Outlook outlook = _outlook ?? throw new CouldNotComputeException(DeskFindings.NoOutlook.Of());
        UnitSystem units = about.Units;
        // The same hours said again, in other units, need no new work.
        WindResult result = _wind is { } kept && ReferenceEquals(kept.Outlook, outlook) && kept.Question.Hours >= ask.Hours ? kept : Move(lake, outlook, ask);
        _wind = result;
        WindView view = WindViews.Of(lake, result, ask, units);
        PutFields(result);
        tray.Progress(1, Steps.Water);
        return view;
    }

    private WindResult Blown() => _wind is { } kept && ReferenceEquals(kept.Outlook, _outlook) ? kept : throw new CouldNotComputeException(DeskFindings.NoWind.Of());

    // The very series that the command line prints of the same place.
    private PointSeries Point(AskAbout about)
    {
        PointAsk ask = about.Point ?? throw new CouldNotComputeException(DeskFindings.NoWind.Of());
        return PointSeries.Of(Opened(), Blown(), [Opened().RequireGrid().Projection.ToGeo(new PlanePoint(ask.XM, ask.YM))])[0];
    }

    // The files that the command line writes of the same hours.
    private string WindPapers(AskAbout about)
    {
        WindResult blown = Blown();
        PreparedLake lake = Opened();
        Hand(WindFiles.Of(blown, WindDocuments.Of(lake.Site.Name, blown, lake.RequireGrid().Projection, about.Units), lake.GridAt(blown.Question.At)));
        return "{}";
    }

    private string PointPapers(AskAbout about)
    {
        Hand(PointFiles.Of([Point(about)]));
        return "{}";
    }

    private WindResult Move(PreparedLake lake, Outlook outlook, WindAsk ask)
    {
        DateTimeOffset at = outlook.At.AddMinutes(-outlook.At.Minute).AddSeconds(-outlook.At.Second);
        WindRun run = WindAnswer.Prepare(lake, outlook, new WindQuestion { At = at, Hours = ask.Hours }, out WindQuestion asked, out List<Finding> assumed);
        double told = 0;
        while (run.Step())
        {
            if (run.ShareDone - told < 0.01) continue;
            told = run.ShareDone;
            tray.Progress(0.05 + (0.8 * told), Steps.Water);
        }

        return new WindResult(run.Finish(), outlook, asked, assumed);
    }

    // The chart's belt stands at rest as in the first hour: what the season moves since is laid over what the wind does.
    private static float[] OffRestOfFirstM(WindResult result, int hour)
    {
        float[] offsetM = result.Field.OffsetsM(hour);
        if (result.AtRestM is not { } first || result.AtRestAt(result.Field.Hours[hour]) is not { } now) return offsetM;
        float movedM = (float)(now.Quantile(0.5) - first.Quantile(0.5));
        for (int w = 0; w < offsetM.Length; w++) offsetM[w] += movedM;
        return offsetM;
    }

    // For every hour a value for each water cell, one after the other.
    private void PutFields(WindResult result)
    {
        WindField field = result.Field;
        int cells = field.Motion.Cells.Length, hours = field.Hours.Count;
        float[] offsets = new float[cells * hours], waves = new float[cells * hours], east = new float[cells * hours], north = new float[cells * hours];
        for (int hour = 0; hour < hours; hour++)
        {
            if (field.IsLayered) OffRestOfFirstM(result, hour).CopyTo(offsets, cells * hour);
            IReadOnlyList<float> heightsM = result.Hours[hour].WaveHeightsM;
            for (int w = 0; w < cells; w++) waves[(cells * hour) + w] = heightsM[w];
            if (field.IsLayered)
            {
                (float[] e, float[] n) = field.LowerRocking(hour);
                e.CopyTo(east, cells * hour);
                n.CopyTo(north, cells * hour);
            }

            tray.Progress(0.85 + (0.15 * hour / hours), Steps.Water);
        }

        tray.Put("wind.cells", MemoryMarshal.AsBytes(field.Motion.Cells.AsSpan()));
        tray.Put("wind.offset", MemoryMarshal.AsBytes(offsets.AsSpan()));
        tray.Put("wind.wave", MemoryMarshal.AsBytes(waves.AsSpan()));
        tray.Put("wind.east", MemoryMarshal.AsBytes(east.AsSpan()));
        tray.Put("wind.north", MemoryMarshal.AsBytes(north.AsSpan()));
    }
}
