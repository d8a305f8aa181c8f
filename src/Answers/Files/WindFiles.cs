using System.Globalization;
using System.Text;
using SecondShore.Answers.Wind;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Shore;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Formats.Files;
using SecondShore.Formats.Writers;

namespace SecondShore.Answers.Files;

/// <summary>What the wind does, as files other programs read.</summary>
public static class WindFiles
{
    /// <summary><c>wind.geojson</c>: the second shore of each hour. <c>wind.csv</c>: every place and hour.</summary>
    /// <param name="result">The answer.</param>
    /// <param name="document">Its document.</param>
    /// <param name="grid">Depths at the level of the day.</param>
    public static ILakeFiles Of(WindResult result, WindDocument document, DepthGrid grid)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(grid);
        string geojson = GeoJsonWriter.Write(Lines(result, grid), new MapProperty("caution", ShoreFiles.Caution), new MapProperty("lake", document.Lake));
        return new MemoryFiles("wind",
        [
            new("wind.geojson", Encoding.UTF8.GetBytes(geojson)),
            new("wind.csv", Encoding.UTF8.GetBytes(Table(document))),
        ]);
    }

    private static IEnumerable<MapFeature> Lines(WindResult result, DepthGrid grid)
    {
        for (int hour = 0; hour < result.Hours.Count; hour++)
        {
            if (result.AtRestAt(result.Hours[hour].At) is not { } atRest) yield break;
            Spread rest = atRest.Spread;
            float[] depthM = result.Field.OffsetsM(grid, hour);
            for (int i = 0; i < depthM.Length; i++) depthM[i] += (float)rest.P50;
            SecondShoreLine line = SecondShoreLine.Trace(grid, depthM);
            HourSummary summary = result.Hours[hour];
            yield return new MapFeature(new MapShape.Lines([.. line.Lines.Select(l => Geo(l, grid.Projection))]),
            [
                new("kind", "second shore"), new("time", summary.At.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture)),
                new("thermocline_at_rest_m", rest.P50), new("shallowest_m", summary.Shallowest?.DepthM.P50 ?? rest.P50), new("deepest_m", summary.Deepest?.DepthM.P50 ?? rest.P50),
                new("length_m", line.LengthM), new("wind_m_s", summary.WindMps), new("wind_from_deg", summary.WindFromDeg),
            ]);
        }
    }

    private static string Table(WindDocument document)
    {
        StringBuilder text = new();
        text.Append("time,latitude_deg,longitude_deg,depth_m,thermocline_p10_m,thermocline_p50_m,thermocline_p90_m,wave_height_m,wave_period_s,comfort,current_m_s,current_to_deg,drift_m_s,drift_to_deg\n");
        foreach (WindDocument.HourRow hour in document.Hours)
        {
            for (int i = 0; i < document.Places.Count; i++)
            {
                WindDocument.PlaceRow place = document.Places[i];
                text.Append(CultureInfo.InvariantCulture, $"{hour.Time:yyyy-MM-ddTHH:mm:sszzz},{place.Lat},{place.Lon},{place.DepthM},")
                    .Append(CultureInfo.InvariantCulture, $"{hour.ThermoclineP10M?[i]},{hour.ThermoclineP50M?[i]},{hour.ThermoclineP90M?[i]},")
                    .Append(CultureInfo.InvariantCulture, $"{hour.WaveHeightM[i]},{hour.WavePeriodS[i]},{hour.Comfort[i]},{hour.CurrentMps[i]},{hour.CurrentToDeg[i]},{hour.DriftMps[i]},{hour.DriftToDeg[i]}\n");
            }
        }

        return text.ToString();
    }

    private static GeoPoint[] Geo(DepthContour line, LocalProjection projection)
    {
        List<GeoPoint> points = [.. line.Points.ToArray().Select(projection.ToGeo)];
        if (line.Closed) points.Add(points[0]);
        return [.. points];
    }
}
