using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>What one run of a season says at every measured profile, and day by day.</summary>
internal sealed class SeasonTrace
{
    /// <summary>Modelled temperatures, degC, by profile and depth.</summary>
    public required double[][] TempC { get; init; }

    /// <summary>Daily mean temperature near the surface, degC, by day from <see cref="SeasonCase.FirstDay"/>.</summary>
    public required double[] TopC { get; init; }

    /// <summary>Daily mean temperature at the bottom depth, degC.</summary>
    public required double[] BottomC { get; init; }

    /// <summary>First day of August to December (February to June in the south) after which every day is mixed; null when the run ends layered.</summary>
    public DateOnly? Overturn { get; private set; }

    /// <summary>Runs a season.</summary>
    public static SeasonTrace Run(SeasonCase season, ColumnParameters parameters)
    {
        LakeColumn column = new(season.Grid, parameters, 8, season.Boundary.DropM(season.StartStep / 24));
        column.SetProfile(season.Start.DepthM, season.Start.TempC);
        // A top near freezing tells of ice; how much, the winter's weather tells.
        if (season.Start.TempC[0] < 2.0) column.SetIce(LakeColumn.IceBeforeM(season.Forcing, season.StartStep));
        SeasonTrace trace = new()
        {
            TempC = new double[season.Observed.Length][],
            TopC = Missing(370),
            BottomC = Missing(370),
        };
        int next = 0, samples = 0, dayOfSum = -1;
        double top = 0, bottom = 0;
        int offset = (int)(season.Forcing.Weather.StartUtc - season.Instant(1, 1)).TotalHours;
        season.Boundary.Apply(column, season.StartStep / 24);
        for (int step = season.StartStep; step < season.EndStep; step++)
        {
            if (step % 24 == 0) season.Boundary.Apply(column, step / 24);
            column.Step(season.Forcing, step);
            while (next < season.Observed.Length && season.StepAt(season.Observed[next].At) <= step) trace.TempC[next] = Sample(column, season.Observed[next++]);
            if (step % 6 != 0) continue;
            int day = (step + offset) / 24;
            if (day != dayOfSum && samples > 0) trace.Keep(dayOfSum, top / samples, bottom / samples);
            if (day != dayOfSum) (top, bottom, samples, dayOfSum) = (0, 0, 0, day);
            top += column.TempAtC(1.0);
            bottom += column.TempAtC(Math.Min(season.BottomM, column.DepthM));
            samples++;
        }

        if (samples > 0) trace.Keep(dayOfSum, top / samples, bottom / samples);
        while (next < season.Observed.Length) trace.TempC[next] = Sample(column, season.Observed[next++]);
        trace.Overturn = trace.FindOverturn(season);
        return trace;
    }

    private void Keep(int day, double top, double bottom)
    {
        if (day < 0 || day >= TopC.Length) return;
        TopC[day] = top;
        BottomC[day] = bottom;
    }

    private DateOnly? FindOverturn(SeasonCase season)
    {
        DateOnly newYear = season.FirstDay;
        int first = season.Day(8, 1).DayNumber - newYear.DayNumber, last = TopC.Length - 1;
        while (last > first && double.IsNaN(TopC[last])) last--;
        int day = last;
        while (day >= first && !double.IsNaN(TopC[day]) && ProfileRule.IsMixed(TopC[day], BottomC[day])) day--;
        return day == last ? null : newYear.AddDays(day + 1);
    }

    private static double[] Sample(LakeColumn column, ObservedProfile observed)
    {
        double[] temps = new double[observed.DepthM.Length];
        for (int i = 0; i < temps.Length; i++) temps[i] = column.TempAtC(observed.DepthM[i]);
        return temps;
    }

    private static double[] Missing(int count)
    {
        double[] values = new double[count];
        Array.Fill(values, double.NaN);
        return values;
    }
}
