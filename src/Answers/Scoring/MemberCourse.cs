using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>Members of a season read as the scores need them.</summary>
internal sealed class MemberCourse(SeasonMembers members, SeasonCase season)
{
    /// <summary>Weighted median temperature at a profile's depths, degC.</summary>
    public double[] MedianAt(ObservedProfile seen)
    {
        int day = Day(seen.At);
        double[] temps = new double[seen.DepthM.Length], samples = new double[members.Count];
        for (int i = 0; i < temps.Length; i++)
        {
            for (int m = 0; m < samples.Length; m++) samples[m] = TempAt(members.ProfileC(m, day), seen.DepthM[i]);
            temps[i] = SampleDistribution.Of(samples, Weights()).Quantile(0.5);
        }

        return temps;
    }

    /// <summary>
    /// Thermocline depths, m, of the members that have one, read at a profile's depths: median, samples, weights (sum 1) and the share that has one.
    /// Where a few depths far apart show none, the member's own course of depths tells. Where fewer than a tenth have one, all members are charged the cast's depth.
    /// </summary>
    public (double Median, double[] Samples, double[] Weights, double Stands) ThermoclineM(ObservedProfile seen)
    {
        int day = Day(seen.At);
        List<double> samples = [], weights = [];
        double[] temps = new double[seen.DepthM.Length];
        for (int m = 0; m < members.Count; m++)
        {
            for (int i = 0; i < temps.Length; i++) temps[i] = TempAt(members.ProfileC(m, day), seen.DepthM[i]);
            Stratification layers = Stratification.Of(seen.DepthM, temps);
            if (!layers.HasThermocline) layers = Own(m, day, seen.DepthM[^1]);
            if (!layers.HasThermocline || !(members.Weights[m] > 0)) continue;
            samples.Add(layers.ThermoclineM);
            weights.Add(members.Weights[m]);
        }

        double sum = weights.Sum();
        if (sum < 0.1) return (seen.DepthM[^1], [seen.DepthM[^1]], [1.0], 0);
        return (SampleDistribution.Of([.. samples], [.. weights]).Quantile(0.5), [.. samples], [.. weights.Select(w => w / sum)], sum);
    }

    // Layers of a member at its own depths, as deep as the cast went.
    private Stratification Own(int member, int day, double toM)
    {
        int count = members.ProfileDepthsM.TakeWhile(z => z <= toM).Count();
        double[] depths = [.. members.ProfileDepthsM.Take(count)], temps = new double[count];
        for (int i = 0; i < count; i++) temps[i] = members.ProfileC(member, day)[i];
        return Array.Exists(temps, double.IsNaN) ? Stratification.None : Stratification.Of(depths, temps);
    }

    /// <summary>Day of overturn of each member by the strict rule, counted from the season's first day; the end of the year where it is not seen.</summary>
    public double[] OverturnDays()
    {
        DateOnly newYear = season.FirstDay;
        int offset = DateOnly.FromDateTime(members.StartUtc.UtcDateTime).DayNumber - newYear.DayNumber;
        int first = season.Day(8, 1).DayNumber - newYear.DayNumber - offset;
        double[] days = new double[members.Count];
        for (int m = 0; m < days.Length; m++)
        {
            ReadOnlySpan<double> top = members.TopC(m), bottom = members.BottomC(m);
            int last = top.Length - 1;
            while (last > 0 && double.IsNaN(top[last])) last--;
            int to = Math.Min(last + 1, 365 - offset), found = OverturnRule.Strict(top[..to], bottom[..to], Math.Max(first, 0));
            days[m] = found < 0 ? 364 : found + offset;
        }

        return days;
    }

    /// <summary>Weighted median date of overturn.</summary>
    public DateOnly MedianOverturn() => season.FirstDay.AddDays((int)Math.Round(SampleDistribution.Of(OverturnDays(), Weights()).Quantile(0.5)));

    public double[] Weights() => [.. members.Weights];

    private int Day(DateTimeOffset at) => (int)Math.Clamp(Math.Floor((at - members.StartUtc).TotalDays), 0, members.TopC(0).Length - 1);

    private double TempAt(ReadOnlySpan<float> profile, double depthM)
    {
        IReadOnlyList<double> depths = members.ProfileDepthsM;
        double step = depths[1] - depths[0], place = Math.Clamp(depthM / step, 0, depths.Count - 1.000001);
        int i = (int)place;
        return profile[i] + ((place - i) * (profile[i + 1] - profile[i]));
    }
}
