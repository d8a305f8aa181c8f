using SecondShore.Answers.Lake;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Day;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Questions;

/// <summary>Where the day starts and ends.</summary>
internal static class RampChoice
{
    private const double FarthestFromWaterM = 600;

    /// <summary>The named ramp, else the first that reaches the water, else the open water nearest the middle of the lake.</summary>
    /// <exception cref="CouldNotComputeException">The ramp asked for is not known, or no boat floats anywhere.</exception>
    public static (string Name, PlanePoint Place) Of(PreparedLake lake, string? asked, NavigableWater water, double dropM, List<Finding> assumed)
    {
        IReadOnlyList<RampMark> ramps = lake.Folder.Ramps;
        if (asked is not null)
        {
            ramps = [.. ramps.Where(r => string.Equals(r.Name, asked, StringComparison.OrdinalIgnoreCase))];
            if (ramps.Count == 0)
                throw new CouldNotComputeException(lake.Folder.Ramps.Count == 0 ? AnswerFindings.NoRamps.Of(asked) : AnswerFindings.NoSuchRamp.Of(asked, string.Join(", ", lake.Folder.Ramps.Select(r => r.Name))));
        }

        foreach (RampMark ramp in ramps)
        {
            if (ramp.ToeBelowFullPoolM is { } toe && toe <= dropM)
            {
                assumed.Add(AnswerFindings.RampDry.Of(ramp.Name));
                continue;
            }

            if (water.TryNearestOpen(water.Grid.Projection.ToPlane(ramp.Place), FarthestFromWaterM, out PlanePoint open)) return (ramp.Name, open);
            assumed.Add(AnswerFindings.RampShallow.Of(ramp.Name, Told.Way(FarthestFromWaterM)));
        }

        assumed.Add(AnswerFindings.NoRampUsable.Of());
        return ("Start", Middle(water));
    }

    private static PlanePoint Middle(NavigableWater water)
    {
        GridFrame frame = water.Frame;
        double x = 0, y = 0;
        int count = 0;
        for (int iy = 0; iy < frame.Ny; iy++)
        {
            for (int ix = 0; ix < frame.Nx; ix++)
            {
                if (!water.IsOpen(ix, iy)) continue;
                PlanePoint p = frame.Centre(ix, iy);
                x += p.XM;
                y += p.YM;
                count++;
            }
        }

        if (count == 0) throw new CouldNotComputeException(AnswerFindings.NowhereDeepEnough.Of());
        water.TryNearestOpen(new PlanePoint(x / count, y / count), double.MaxValue, out PlanePoint open);
        return open;
    }
}
