using SecondShore.Atlas;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>One coordinate system that numbers of a plane can be in.</summary>
/// <param name="Entry">The system.</param>
/// <param name="Swapped">Whether the first number is the northing.</param>
/// <param name="Place">Where the lake would lie.</param>
/// <param name="Country">In which country; empty when not known.</param>
/// <param name="Weight">Log-odds against the others.</param>
internal sealed record CrsCandidate(EpsgEntry Entry, bool Swapped, GeoPoint Place, string Country, double Weight);

/// <summary>Which coordinate systems the numbers of a plane can be in, by area of use, land, unit and how usual each is.</summary>
internal static class CrsCandidates
{
    private const double SamePlaceDeg = 0.004;

    /// <summary>Candidates, likeliest first; each place once.</summary>
    /// <param name="x">Middle of the first number.</param>
    /// <param name="y">Middle of the second.</param>
    /// <param name="mayBeSwapped">Whether the first may be the northing.</param>
    /// <param name="hintLonDeg">A longitude the lake should be near, from a time zone; null for none.</param>
    public static List<CrsCandidate> For(double x, double y, bool mayBeSwapped, double? hintLonDeg)
    {
        List<CrsCandidate> all = [];
        Collect(all, x, y, false, hintLonDeg);
        if (mayBeSwapped) Collect(all, y, x, true, hintLonDeg);
        List<CrsCandidate> kept = [];
        Dictionary<string, int> seen = new(StringComparer.Ordinal);
        foreach (CrsCandidate c in all.OrderByDescending(c => c.Weight).ThenBy(c => c.Entry.Code))
        {
            if (kept.Exists(k => Math.Abs(k.Place.LatDeg - c.Place.LatDeg) < SamePlaceDeg && Math.Abs(k.Place.LonDeg - c.Place.LonDeg) < SamePlaceDeg)) continue;
            // The tenth zone of a large country should not hide the first of a small one.
            int before = seen.GetValueOrDefault(c.Country);
            seen[c.Country] = before + 1;
            kept.Add(c with { Weight = c.Weight - (0.25 * before) });
        }

        return [.. kept.OrderByDescending(c => c.Weight)];
    }

    private static void Collect(List<CrsCandidate> all, double east, double north, bool swapped, double? hintLonDeg)
    {
        // The same plane on several datums lies at the same place to some hundred metres: it is worked out once.
        Dictionary<string, (double Lat, double Lon)> planes = new(StringComparer.Ordinal);
        foreach (EpsgEntry entry in EpsgBook.Around(east, north))
        {
            string plane = $"{entry.Method} {string.Join(' ', entry.Parameters)} {entry.UnitM:R} {entry.MeridianDeg:R}";
            if (!planes.TryGetValue(plane, out (double Lat, double Lon) at))
            {
                at = CoordinateSystems.FromEpsg(entry.Code, out _) is CoordinateSystem crs && crs.TryToGeo(east, north, out double latDeg, out double lonDeg)
                    ? (latDeg, lonDeg) : (double.NaN, double.NaN);
                planes[plane] = at;
            }

            (double lat, double lon) = at;
            if (double.IsNaN(lat) || !entry.Covers(lat, lon, 0.1)) continue;
            string country = Places.Country(lat, lon) ?? "";
            if (country.Length == 0) continue;
            double weight = UsualCountries.Weight(country) + Modern(entry) + (swapped ? -0.3 : 0);
            if (hintLonDeg is double hint && Math.Abs(GeoPoint.WrapLongitudeDeg(lon - hint)) < 20) weight += 2.5;
            all.Add(new CrsCandidate(entry, swapped, new GeoPoint(lat, lon), country, weight));
        }
    }

    // Systems on today's datums, then those of wide use among them.
    private static double Modern(EpsgEntry entry)
    {
        double weight = entry.Shift.Length > 0 && entry.Shift.All(s => Math.Abs(s) < 0.5) || entry.Datum.StartsWith("World Geodetic System 1984", StringComparison.Ordinal) ? 0 : -2.5;
        if (entry.Name.StartsWith("WGS 84 / UTM", StringComparison.Ordinal)) weight += 0.6;
        if (entry.Name.StartsWith("DHDN /", StringComparison.Ordinal)) weight += 0.8;
        if (entry.Name.StartsWith("NAD83 /", StringComparison.Ordinal) || entry.Name.StartsWith("ETRS89 /", StringComparison.Ordinal)) weight += 0.8;
        if (entry.Name.Contains("/ UTM zone", StringComparison.Ordinal)) weight += 0.6;
        if (entry.Name.Contains("Pseudo-Mercator", StringComparison.Ordinal)) weight -= 1;
        // The same plane with its axes named the other way round goes by its plain name.
        if (entry.Name.Contains("N-E)", StringComparison.Ordinal) || entry.Name.Contains("E-N)", StringComparison.Ordinal)) weight -= 0.1;
        if (entry.Name.Contains("(deg)", StringComparison.Ordinal) || entry.Name.Contains("PDC", StringComparison.Ordinal) || entry.Name.Contains("Antarctic", StringComparison.Ordinal)) weight -= 2;
        return weight;
    }
}
