using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Puts a survey into one plane: where the plane lies, and the survey's points in it.</summary>
internal static class SurveyPlane
{
    /// <summary>A plane whose origin lies on the lake, or null when the survey holds no place at all.</summary>
    public static LocalProjection? Choose(Survey survey)
    {
        GeoPoint? middle = Middle(survey);
        return middle is GeoPoint m ? new LocalProjection(new GeoPoint(Math.Clamp(m.LatDeg, -89, 89), m.LonDeg)) : null;
    }

    /// <summary>All soundings of a survey in the plane; values that are not numbers are left out and counted.</summary>
    /// <param name="survey">Survey.</param>
    /// <param name="projection">Plane.</param>
    /// <param name="leftOut">Number left out.</param>
    /// <param name="set">Number of the file by point.</param>
    public static PointCloud Soundings(Survey survey, LocalProjection projection, out int leftOut, out int[] set)
    {
        PointCloud cloud = new();
        leftOut = 0;
        List<int> sets = [];
        int track = 0, number = 0;
        foreach (SoundingSet file in survey.Soundings)
        {
            cloud.Reserve(file.DepthM.Length);
            int nextBreak = 0;
            for (int i = 0; i < file.DepthM.Length; i++)
            {
                while (nextBreak < file.TrackBreaks.Count && file.TrackBreaks[nextBreak] <= i)
                {
                    if (i > 0) track++;
                    nextBreak++;
                }

                double lat = file.LatDeg[i], lon = file.LonDeg[i], depthM = file.DepthM[i];
                if (!(Math.Abs(lat) <= 90) || !(Math.Abs(lon) <= 540) || !double.IsFinite(depthM)) { leftOut++; continue; }
                PlanePoint p = projection.ToPlane(lat, lon);
                if (!double.IsFinite(p.XM) || !double.IsFinite(p.YM)) { leftOut++; continue; }
                cloud.Add(p.XM, p.YM, depthM, PointKind.Sounding, track);
                sets.Add(number);
            }

            track++;
            number++;
        }

        set = [.. sets];

        return cloud;
    }

    private static GeoPoint? Middle(Survey survey)
    {
        if (survey.Shoreline is { Polygons.Count: > 0 } shoreline)
        {
            List<GeoPoint> places = [];
            foreach (WaterPolygon polygon in shoreline.Polygons) places.AddRange(polygon.Outer);
            if (places.Count > 0) return MiddleOf(places.Count, i => places[i]);
        }

        foreach (SurveyRaster raster in survey.Rasters)
            if (RasterLayer.WetPixels(raster) is { } wet)
                return raster.Placement.PlaceOf(0.5 * (wet.FirstColumn + wet.LastColumn), 0.5 * (wet.FirstRow + wet.LastRow));

        List<GeoPoint> sampled = [];
        foreach (SoundingSet set in survey.Soundings)
        {
            int step = Math.Max(1, set.DepthM.Length / 5000);
            for (int i = 0; i < set.DepthM.Length; i += step)
                if (Math.Abs(set.LatDeg[i]) <= 90 && Math.Abs(set.LonDeg[i]) <= 540) sampled.Add(new GeoPoint(set.LatDeg[i], set.LonDeg[i]));
        }

        foreach (ContourLine line in survey.Contours) sampled.AddRange(line.Points);
        return sampled.Count == 0 ? null : MiddleOf(sampled.Count, i => sampled[i]);
    }

    // Medians, so that a stray fix far away does not pull the plane; longitudes relative to one place, for the date line.
    private static GeoPoint MiddleOf(int count, Func<int, GeoPoint> at)
    {
        double[] lats = new double[count], lons = new double[count];
        double aroundDeg = at(count / 2).LonDeg;
        for (int i = 0; i < count; i++)
        {
            lats[i] = at(i).LatDeg;
            lons[i] = GeoPoint.WrapLongitudeDeg(at(i).LonDeg - aroundDeg);
        }

        Array.Sort(lats);
        Array.Sort(lons);
        return new GeoPoint(lats[count / 2], aroundDeg + lons[count / 2]);
    }
}
