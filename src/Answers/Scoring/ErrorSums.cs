using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>Sums of errors of one lake, from which its figures come.</summary>
internal sealed class ErrorSums
{
    public double SquareSum, SurfaceSquareSum, ThermoclineSum, OverturnSum, BiasSum, SurfaceBiasSum, ThermoclineBias, OverturnBias;
    public int Count, SurfaceCount, ThermoclineCount, OverturnCount;

    public double? TemperatureRmse => Count > 0 ? Math.Sqrt(SquareSum / Count) : null;

    public double? SurfaceRmse => SurfaceCount > 0 ? Math.Sqrt(SurfaceSquareSum / SurfaceCount) : null;

    public double? ThermoclineMae => ThermoclineCount > 0 ? ThermoclineSum / ThermoclineCount : null;

    public double? OverturnMae => OverturnCount > 0 ? OverturnSum / OverturnCount : null;

    /// <summary>Adds a run of a season, profiles from an instant on.</summary>
    public void Add(SeasonCase season, SeasonTrace trace, DateTimeOffset from)
    {
        for (int p = 0; p < season.Observed.Length; p++)
        {
            ObservedProfile seen = season.Observed[p];
            if (seen.At < from) continue;
            AddProfile(seen, trace.TempC[p]);
        }

        AddOverturn(season, trace.Overturn);
    }

    public void AddProfile(ObservedProfile seen, double[] modelC, double? thermoclineM = null)
    {
        for (int i = 0; i < modelC.Length; i++)
        {
            double error = modelC[i] - seen.TempC[i];
            SquareSum += error * error;
            BiasSum += error;
            Count++;
            if (seen.DepthM[i] > 1.1) continue;
            SurfaceSquareSum += error * error;
            SurfaceBiasSum += error;
            SurfaceCount++;
        }

        if (double.IsNaN(seen.ThermoclineM)) return;
        double depth = thermoclineM ?? ModelThermocline(seen, modelC);
        ThermoclineSum += Math.Abs(depth - seen.ThermoclineM);
        ThermoclineBias += depth - seen.ThermoclineM;
        ThermoclineCount++;
    }

    /// <summary>The model's thermocline read at the measured depths; a mixed model is charged the depth of the cast.</summary>
    public static double ModelThermocline(ObservedProfile seen, double[] modelC)
    {
        Stratification layers = Stratification.Of(seen.DepthM, modelC);
        return layers.HasThermocline ? layers.ThermoclineM : seen.DepthM[^1];
    }

    public void AddOverturn(SeasonCase season, DateOnly? model)
    {
        if (season.Overturn is not { FirstMixed: { } mixed } measured) return;
        double error = OverturnError(measured.LastStratified, mixed, model ?? season.Day(12, 31));
        OverturnSum += Math.Abs(error);
        OverturnBias += error;
        OverturnCount++;
    }

    /// <summary>Days from the measured interval, 0 inside it, below 0 when early.</summary>
    public static double OverturnError(DateOnly last, DateOnly first, DateOnly model) =>
        model < last ? model.DayNumber - last.DayNumber : model > first ? model.DayNumber - first.DayNumber : 0;
}
