using SecondShore.Demo.Terrain;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Season;

namespace SecondShore.Demo.Ketterfold;

/// <summary>
/// The true temperatures of the invented water: the engine's own lake column run through the season's weather with numbers of
/// the lake's own. The tool that reads the folder is not told them and starts from its priors, as on any lake.
/// </summary>
internal sealed class KetterfoldColumn
{
    // The lake's own numbers: a little greener and less stirred than a lake of its size is thought to be.
    private static readonly ColumnParameters Hidden = new()
    {
        LightExtinctionPerM = 0.47,
        WindFactor = 1.0,
        AirAdjustmentShare = 0.24,
        StirringFactor = 0.9,
        DeepMixingFactor = 1.5,
        ConvectionFactor = 0.15,
        StirringReachFactor = 0.17,
        ShortwaveFactor = 0.97,
        AirTempBiasK = 0.3,
    };

    private readonly WeatherSeries _weather;
    private readonly double[] _depthM;
    private readonly float[][] _tempC;
    private readonly double[] _thermoclineM;

    private KetterfoldColumn(WeatherSeries weather, double[] depthM, float[][] tempC, double[] thermoclineM) =>
        (_weather, _depthM, _tempC, _thermoclineM) = (weather, depthM, tempC, thermoclineM);

    /// <summary>Runs the season.</summary>
    /// <param name="lake">The bottom.</param>
    /// <param name="weather">The season's weather from 1 March on.</param>
    /// <param name="levels">The pool's level through it.</param>
    /// <param name="outletDepthM">Where the dam draws, m below full pool.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    public static KetterfoldColumn Run(GeneratedLake lake, WeatherSeries weather, IReadOnlyList<PoolLevel> levels, double outletDepthM,
        IProgress<double>? progress, CancellationToken cancel)
    {
        Hypsography basin = Hypsography.FromCells(lake.DepthM, lake.Frame.CellAreaM2)
            ?? throw new InvalidOperationException("The made lake holds no water.");
        LakeSite site = new() { Name = "Ketterfold Reservoir", Position = KetterfoldRecipe.Origin, TimeZoneId = "America/Chicago", ElevationM = KetterfoldRecipe.ElevationM, OutletDepthM = outletDepthM };
        ColumnForcing forcing = new(weather, site.Position, KetterfoldRecipe.ElevationM);
        LakeBoundary boundary = LakeBoundary.Build(site, weather, levels, [], []);
        LakeColumn column = new(new ColumnGrid(basin, 0.5, 0.5), Hidden, 6.0, boundary.DropM(0));
        double[] depthM = [.. Enumerable.Range(0, (int)(basin.MaxDepthM / 0.5)).Select(i => 0.5 * i)];
        float[][] tempC = new float[weather.Count][];
        double[] thermoclineM = new double[weather.Count];
        for (int step = 0; step < weather.Count; step++)
        {
            if (step % 24 == 0)
            {
                cancel.ThrowIfCancellationRequested();
                boundary.Apply(column, step / 24);
                progress?.Report((double)step / weather.Count);
            }

            column.Step(forcing, step);
            tempC[step] = new float[depthM.Length];
            for (int i = 0; i < depthM.Length; i++) tempC[step][i] = (float)column.TempAtC(depthM[i]);
            thermoclineM[step] = Stratification.Of(depthM, DayMean(tempC, step)).ThermoclineM;
        }

        return new KetterfoldColumn(weather, depthM, tempC, thermoclineM);
    }

    // The warm skin of an afternoon is no thermocline: a day's mean has none.
    private static double[] DayMean(float[][] tempC, int step)
    {
        int from = Math.Max(0, step - 23);
        double[] mean = new double[tempC[step].Length];
        for (int k = from; k <= step; k++)
            for (int i = 0; i < mean.Length; i++) mean[i] += tempC[k][i] / (step - from + 1);
        return mean;
    }

    /// <summary>Temperature at a depth below the day's surface, degC.</summary>
    public double TempC(DateTimeOffset at, double depthM)
    {
        float[] profile = _tempC[_weather.StepAt(at)];
        double place = Math.Clamp(depthM / (_depthM[1] - _depthM[0]), 0, profile.Length - 1);
        int i = Math.Min((int)place, profile.Length - 2);
        return profile[i] + ((place - i) * (profile[i + 1] - profile[i]));
    }

    /// <summary>Depth of the thermocline, m; NaN while none stands.</summary>
    public double ThermoclineM(DateTimeOffset at) => _thermoclineM[_weather.StepAt(at)];
}
