using SecondShore.Answers.Lake;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Motion.Layers;
using SecondShore.Engine.Season;
using SecondShore.Engine.Water;

namespace SecondShore.Answers.Wind;

/// <summary>
/// How much of each haze depth is the wind's tilt at that place and hour, so that the outlook is not fooled by it: the two layers of
/// that day, driven by the wind of the days before, arm by arm where winds by place are filed.
/// </summary>
public static class HazeTilt
{
    private static readonly double WorthSayingM = 0.15;
    private static readonly double LeastDifferenceC = 1.5;
    private static readonly double SpinUpDays = 3;

    // A tilt is as long as the lake: some eight hundred cells tell it to within a decimetre, and a finer grid hardly better (motion.md).
    private static readonly double CellsWanted = 800, FinestM = 25, CoarsestM = 150;

    /// <summary>The readings, haze depths with their tilt.</summary>
    /// <param name="lake">The lake.</param>
    /// <param name="request">What the outlook is made from; its readings are the ones looked at.</param>
    /// <param name="assumed">Receives each tilt worth saying.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<Reading> Of(PreparedLake lake, OutlookRequest request, ICollection<Finding> assumed, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(assumed);
        if (lake.FullPool is null || request.Weather is not { } weather || !request.Readings.Any(r => IsLevelled(r, request, weather))) return request.Readings;
        IReadOnlyList<OutlookDay> days = Days(lake, request, cancel);
        DepthGrid coarse = Gathered(lake.FullPool, lake.Hypsography.SurfaceAreaM2);
        // Each arm answers to its own wind, where winds by place are filed.
        WindForces forces = new(weather, new WindFieldOptions { Stations = WindStations.Of(lake.Folder, coarse.Projection, []) });
        List<Reading> levelled = [];
        foreach (Reading reading in request.Readings)
        {
            DepthGrid grid = coarse.Lowered(PoolDrop.AtM(lake.Folder.Levels, reading.At));
            double tiltM = IsLevelled(reading, request, weather) ? TiltM(grid, reading, forces, days, request.At.Offset, cancel) : 0;
            levelled.Add(tiltM == 0 ? reading : reading with { TiltM = tiltM });
            if (Math.Abs(tiltM) < WorthSayingM) continue;
            FindingKind held = tiltM > 0 ? AnswerFindings.HeldDeeper : AnswerFindings.HeldShallower;
            assumed.Add(held.Of(Told.Source(reading.Source), Told.Difference(Math.Abs(tiltM)), Told.Difference(reading.Value), Told.Difference(reading.Value - tiltM)));
        }

        return levelled;
    }

    private static bool IsLevelled(Reading reading, OutlookRequest request, WeatherSeries weather) =>
        reading is { Kind: ReadingKind.HazeDepth, Place: not null, Value: > 0.5 and < 100 } && reading.At <= request.At
        && reading.At >= weather.StartUtc.AddHours(12) && reading.At <= weather.EndUtc;

    // The season without readings, the lake as one: only how warm the two layers were that day, in the median, is wanted of it.
    private static IReadOnlyList<OutlookDay> Days(PreparedLake lake, OutlookRequest request, CancellationToken cancel) => OutlookModel.Compute(
        request with { Arms = [new ArmShape(lake.Site.Name, lake.Hypsography)], ArmOf = null, Readings = [], Profiles = [], Members = 9, Until = request.At.AddDays(1) }, null, cancel).Lake.Days;

    // The fetch over such blocks costs nothing either.
    private static DepthGrid Gathered(DepthGrid fine, double areaM2)
    {
        double cellM = Math.Clamp(Math.Sqrt(areaM2 / CellsWanted), FinestM, CoarsestM);
        CoarseDepths blocks = CoarseDepths.Of(fine, CoarseDepths.FactorFor(fine, cellM, 10_000));
        float[] depthM = new float[blocks.DepthM.Length];
        for (int i = 0; i < depthM.Length; i++) depthM[i] = blocks.WaterShare[i] >= 0.5f ? blocks.DepthM[i] : float.NaN;
        return new DepthGrid(fine.Projection, blocks.Frame, depthM);
    }

    private static double TiltM(DepthGrid grid, Reading reading, WindForces forces, IReadOnlyList<OutlookDay> days, TimeSpan offset,
        CancellationToken cancel)
    {
        DateOnly date = DateOnly.FromDateTime(reading.At.ToOffset(offset).DateTime);
        OutlookDay? day = null;
        foreach (OutlookDay other in days)
            if (other.Date == date) day = other;
        if (day is null || day.SurfaceTempC.P50 - day.BottomTempC.P50 < LeastDifferenceC) return 0;
        TwoLayers layers = new(reading.Value, FreshWater.DensityKgPerM3(day.SurfaceTempC.P50), FreshWater.DensityKgPerM3(day.BottomTempC.P50), 1);
        if (layers.LowerDensityKgPerM3 <= layers.UpperDensityKgPerM3) return 0;
        return OffsetM(grid, layers, forces, grid.Projection.ToPlane(reading.Place!.Value), reading.At, cancel);
    }

    /// <summary>How much deeper than at rest the wind of the days before holds the thermocline of two layers, m.</summary>
    internal static double OffsetM(DepthGrid grid, TwoLayers layers, WindForces forces, PlanePoint place, DateTimeOffset at,
        CancellationToken cancel)
    {
        InterfaceOptions cells = new() { CellM = grid.Frame.CellM };
        WindFieldOptions options = forces.Options with { Members = 1, SpinUpDays = SpinUpDays, Interface = cells };
        WindField field = WindField.Compute(grid, [layers], forces.Weather, at, 0, options, null, cancel);
        return field.IsLayered ? field.ThermoclineOffsetM(place, at) : 0;
    }
}
