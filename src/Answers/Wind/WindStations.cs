using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Wind;

/// <summary>The winds of <c>wind/NAME.csv</c>, ready for the water, and what had to be assumed of them.</summary>
public static class WindStations
{
    // A record with more calms than this is one of whole steps or of a stiff cup.
    private const double ManyCalmsShare = 0.05;

    /// <summary>The lake's stations.</summary>
    /// <param name="folder">The lake's files.</param>
    /// <param name="plane">The lake's plane.</param>
    /// <param name="assumed">Receives what had to be assumed.</param>
    public static IReadOnlyList<StationWind> Of(LakeFolder folder, LocalProjection plane, ICollection<Finding> assumed)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(plane);
        ArgumentNullException.ThrowIfNull(assumed);
        List<StationWind> stations = [];
        foreach (PlacedWeather wind in folder.Winds)
        {
            if (wind.Table.WindMps is not { } measured) continue;
            double[] fromDeg = wind.Table.WindFromDeg ?? [.. Enumerable.Repeat(double.NaN, measured.Length)];
            // A place by a lake is on land unless it says otherwise: taken so, its wind is not made too weak over the water.
            double factor = StationExposure.Factor(wind.Station.HeightM, wind.Station.OnLand ?? true);
            StationWind station = new(wind.Station.Name, plane.ToPlane(wind.Station.Place), wind.Table.TimesUtc, Array.ConvertAll(measured, m => factor * m), fromDeg);
            stations.Add(station);
            if (station.CalmShare > ManyCalmsShare) assumed.Add(AnswerFindings.ManyCalms.Of(station.Name, Math.Round(100 * station.CalmShare)));
        }

        if (stations.Count == 0) return stations;
        assumed.Add(AnswerFindings.WindByPlace.Of(stations.Count, Told.Row(stations.Select(s => s.Name))));
        if (folder.Winds.Any(w => w.Station.HeightM is null)) assumed.Add(AnswerFindings.StationHeight.Of(Told.Length(StationExposure.UsualHeightM)));
        return stations;
    }
}
