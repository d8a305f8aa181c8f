using System.Text.Json.Serialization;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Lake;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;

namespace SecondShore.Answers.Wind;

/// <summary>Hour by hour at a place: what <c>wind --point</c> gives.</summary>
public sealed record PointSeries
{
    /// <summary>Latitude, degrees.</summary>
    public required double Lat { get; init; }

    /// <summary>Longitude, degrees.</summary>
    public required double Lon { get; init; }

    /// <summary>Depth of the water, m.</summary>
    public required double DepthM { get; init; }

    /// <summary>The arm it lies in; empty where the lake is one.</summary>
    public required string Arm { get; init; }

    /// <summary>Thermocline depth at rest in the first hour, m; null without one.</summary>
    public required SpreadDocument? AtRestM { get; init; }

    /// <summary>Density of the lower layer less that of the upper in the first hour, kg/m3; null without layers.</summary>
    public required double? LayerStrengthKgPerM3 { get; init; }

    /// <summary>Each hour.</summary>
    public required IReadOnlyList<PointHour> Hours { get; init; }

    /// <summary>The series of places.</summary>
    /// <param name="lake">The lake.</param>
    /// <param name="result">Its water in motion.</param>
    /// <param name="places">The places, on the water.</param>
    /// <exception cref="CouldNotComputeException">A place is on land or off the lake.</exception>
    public static IReadOnlyList<PointSeries> Of(PreparedLake lake, WindResult result, IReadOnlyList<GeoPoint> places)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(places);
        LocalProjection plane = lake.RequireGrid().Projection;
        return [.. places.Select(place => One(lake, result, place, plane.ToPlane(place)))];
    }

    private static PointSeries One(PreparedLake lake, WindResult result, GeoPoint geo, PlanePoint place)
    {
        WindField field = result.Field;
        if (field.ColumnAt(place, field.Hours[0]) is not { } column) throw new CouldNotComputeException(AnswerFindings.PointOffWater.Of(geo.LatDeg, geo.LonDeg));
        double[] depthsM = DepthsM(column.DepthM);
        return new PointSeries
        {
            Lat = Math.Round(geo.LatDeg, 6),
            Lon = Math.Round(geo.LonDeg, 6),
            DepthM = Math.Round(column.DepthM, 2),
            Arm = lake.Arms is { Arms.Count: > 1 } arms ? arms.ArmAt(place)?.Name ?? "" : "",
            AtRestM = SpreadDocument.From(result.AtRestM),
            LayerStrengthKgPerM3 = field.DensityStepKgPerM3(field.Hours[0]) is { } step ? Math.Round(step, 3) : null,
            Hours = [.. field.Hours.Select(at => Hour(result, place, at, depthsM))],
        };
    }

    private static PointHour Hour(WindResult result, PlanePoint place, DateTimeOffset at, double[] depthsM)
    {
        WindField field = result.Field;
        WaveState waves = field.WavesAt(place, at);
        ColumnCurrent column = field.ColumnAt(place, at)!;
        return new PointHour
        {
            Time = at,
            AtRestM = SpreadDocument.From(result.AtRestAt(at)),
            LayerStrengthKgPerM3 = field.DensityStepKgPerM3(at) is { } step ? Math.Round(step, 3) : null,
            ThermoclineM = result.AtRestAt(at) is { } rest ? SpreadDocument.From(field.ThermoclineM(rest, place, at)) : null,
            DisplacementM = SpreadDocument.From(field.OffsetM(place, at)),
            WindMps = Math.Round(waves.WindMps, 2),
            WindFromDeg = Math.Round(field.Wind.FromDeg(field.Wind.StepAt(at)), 0),
            WaveHeightM = Math.Round(waves.HeightM, 3),
            WavePeriodS = Math.Round(waves.PeriodS, 2),
            Comfort = WindDocuments.Key(result.Question.Boat.ComfortOf(waves, result.SurfaceC)),
            Currents = [.. depthsM.Select(z => column.At(z) is var c ? new PointCurrent(z, Math.Round(c.SpeedMps, 3), Math.Round(c.ToDeg, 0)) : default!)],
        };
    }

    // The surface, then about eight depths to half a metre above the bottom, on whole metres.
    private static double[] DepthsM(double depthM)
    {
        double everyM = Math.Max(1, Math.Ceiling(depthM / 8));
        List<double> depths = [0];
        for (double z = everyM; z <= depthM - 0.5; z += everyM) depths.Add(z);
        return [.. depths];
    }
}

/// <summary>One hour at a place.</summary>
public sealed record PointHour
{
    /// <summary>The hour, local.</summary>
    public required DateTimeOffset Time { get; init; }

    /// <summary>Thermocline depth at rest, m: it follows the season hour by hour; null without one.</summary>
    public required SpreadDocument? AtRestM { get; init; }

    /// <summary>Density of the lower layer less that of the upper, kg/m3; null without layers.</summary>
    public required double? LayerStrengthKgPerM3 { get; init; }

    /// <summary>Thermocline depth, m; null without layers. Deeper than the water where there is none at the place.</summary>
    public required SpreadDocument? ThermoclineM { get; init; }

    /// <summary>How much deeper than at rest the wind holds it, m; null without layers.</summary>
    public required SpreadDocument? DisplacementM { get; init; }

    /// <summary>Mean wind, m/s.</summary>
    public required double WindMps { get; init; }

    /// <summary>Where it comes from, degrees from north.</summary>
    public required double WindFromDeg { get; init; }

    /// <summary>Significant wave height, m.</summary>
    public required double WaveHeightM { get; init; }

    /// <summary>Peak period, s.</summary>
    public required double WavePeriodS { get; init; }

    /// <summary>Comfort class.</summary>
    public required string Comfort { get; init; }

    /// <summary>Currents from the surface down.</summary>
    public required IReadOnlyList<PointCurrent> Currents { get; init; }

    /// <summary>The current nearest the thermocline; without layers, or where it lies below the bottom, the lowest that is told.</summary>
    [JsonIgnore]
    public PointCurrent Deep => ThermoclineM is { } at ? Currents.MinBy(c => Math.Abs(c.DepthM - at.P50))! : Currents[^1];
}

/// <summary>The current at a depth.</summary>
/// <param name="DepthM">Depth, m.</param>
/// <param name="Mps">Speed, m/s.</param>
/// <param name="ToDeg">Where it goes, degrees from north.</param>
public sealed record PointCurrent(double DepthM, double Mps, double ToDeg);

/// <summary>The document that <c>wind --point --json</c> prints.</summary>
public sealed record PointsDocument
{
    /// <summary>The lake's name.</summary>
    public required string Lake { get; init; }

    /// <summary>First hour, local to the lake.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Period of the slowest rocking, h; null without layers.</summary>
    public required double? PeriodH { get; init; }

    /// <summary>Each place.</summary>
    public required IReadOnlyList<PointSeries> Points { get; init; }

    /// <summary>Cautions that bear on these hours.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }

    /// <summary>The document.</summary>
    public static PointsDocument Of(string lakeName, WindResult result, IReadOnlyList<PointSeries> points, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(result);
        return new PointsDocument
        {
            Lake = lakeName,
            At = result.Question.At,
            PeriodH = result.Field.PeriodS is { } s ? Math.Round(s / PhysicalConstants.HourS, 2) : null,
            Points = points,
            Cautions = WindWords.Cautions(result, units),
            Assumed = result.Assumed.Say(units),
        };
    }
}
