namespace SecondShore.Engine.Season;

/// <summary>
/// What a reading taken now would narrow: members that would be believed after it, by how what it reads goes with what is asked over
/// the members (linear regression), then by what a run takes over of it as state. The error that all members share stays.
/// </summary>
internal static class WorthAssembly
{
    private const double UnderStepM = 1.5, LeastStanding = 0.5, LeastSpread = 1e-6;

    /// <summary>Worth of each reading for each thing it may narrow.</summary>
    public static IReadOnlyList<ReadingWorth> Of(SeasonModel model, int arm, double[] weight, MemberTrace[] traces, double[] turnoverDays)
    {
        double[] step = [.. traces.Select(t => t.Now[arm].Layers.ThermoclineM)], floor = [.. traces.Select(t => t.Now[arm].FloorM)];
        double[] depths = model.ProfileDepthsM;
        int last = depths.Length - 1;
        double[] deep = [.. traces.Select(t => t.Now[arm].TempC[last])];
        List<ReadingWorth> worth = [];
        if (Mean(step, weight) is { } stepM)
        {
            double hazeSd = ObservationSet.HazeSdM(stepM), stepSd = ModelError.ThermoclineSdM(stepM, 0);
            Add(ReadingKind.HazeDepth, double.NaN, step, hazeSd, WorthOf.Thermocline, step, stepSd, 1 - SeasonModel.StepShare);
            Add(ReadingKind.HazeDepth, double.NaN, step, hazeSd, WorthOf.Turnover, turnoverDays, ModelError.OverturnSdDays, 1);
            int under = Array.FindIndex(depths, z => z >= stepM + UnderStepM);
            if (under > 0 && Mean(floor, weight) is not null)
            {
                double[] oxygen = [.. traces.Select(t => t.Now[arm].OxygenMgPerL[under])];
                double shared = Mean([.. traces.Select(t => t.Now[arm].FloorSdM)], weight) ?? 0;
                Add(ReadingKind.Oxygen, depths[under], oxygen, ObservationSet.OxygenSd, WorthOf.OxygenFloor, floor, shared, 1);
            }
        }

        Add(ReadingKind.Temperature, depths[last], deep, ObservationSet.TemperatureSd,
            WorthOf.Turnover, turnoverDays, ModelError.OverturnSdDays, 1);
        return worth;

        void Add(ReadingKind kind, double depthM, double[] read, double readSd, WorthOf what, double[] asked, double sharedSd, double stays)
        {
            if (Foretell(read, asked, weight, readSd) is not { } f) return;
            double before = double.Hypot(f.Before, sharedSd), after = double.Hypot(stays * f.After, sharedSd);
            worth.Add(new ReadingWorth(kind, depthM, what, before, Math.Min(before, after)));
        }
    }

    // Standard deviation of what is asked before, and after a reading whose error is known; null where too few members have both.
    private static (double Before, double After)? Foretell(double[] read, double[] asked, double[] weight, double readSd)
    {
        double sum = 0, x = 0, y = 0, xx = 0, yy = 0, xy = 0;
        for (int i = 0; i < read.Length; i++)
        {
            if (!double.IsFinite(read[i]) || !double.IsFinite(asked[i])) continue;
            sum += weight[i];
            x += weight[i] * read[i];
            y += weight[i] * asked[i];
            xx += weight[i] * read[i] * read[i];
            yy += weight[i] * asked[i] * asked[i];
            xy += weight[i] * read[i] * asked[i];
        }

        if (sum < LeastStanding) return null;
        (x, y) = (x / sum, y / sum);
        double vx = Math.Max(0, (xx / sum) - (x * x)), vy = Math.Max(0, (yy / sum) - (y * y)), c = (xy / sum) - (x * y);
        if (vy < LeastSpread) return null;
        return (Math.Sqrt(vy), Math.Sqrt(Math.Max(0, vy - (c * c / (vx + (readSd * readSd))))));
    }

    private static double? Mean(double[] values, double[] weight)
    {
        double sum = 0, mean = 0;
        for (int i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i])) continue;
            sum += weight[i];
            mean += weight[i] * values[i];
        }

        return sum >= LeastStanding ? mean / sum : null;
    }
}
