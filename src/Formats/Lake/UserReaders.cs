using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>Reads what the user wrote down: readings, cover and the log.</summary>
internal static class UserReaders
{
    public static List<Reading> Readings(string file, byte[] bytes, ReadContext context)
    {
        List<Reading> readings = [];
        TimedRows? rows = TimedRows.Open(file, bytes, context);
        if (rows is null) return readings;
        CsvSheet sheet = rows.Sheet;
        CsvColumn? haze = sheet.Find(Quantity.Length, 0.3, 200, "haze_depth", "haze", "thermocline_depth");
        CsvColumn? surface = sheet.Find(Quantity.Temperature, -1, 45, "surface_temp", "water_temp");
        CsvColumn? secchi = sheet.Find(Quantity.Length, 0.02, 60, "secchi", "secchi_depth");
        CsvColumn? depth = sheet.Find(Quantity.Length, 0, 1700, "depth");
        CsvColumn? temp = sheet.Find(Quantity.Temperature, -2, 45, "temp");
        CsvColumn? oxygen = sheet.Find(Quantity.Concentration, 0, 40, "oxygen", "dissolved_oxygen");
        if (haze is null && surface is null && secchi is null && temp is null && oxygen is null)
        {
            context.Log.Error(file, "the file has no column with a reading; expected haze_depth_m, surface_temp_c, secchi_m, or depth_m with temp_c or oxygen_mg_l (feet and Fahrenheit are read too).");
            return readings;
        }

        foreach ((int row, DateTimeOffset at) in rows.Rows())
        {
            string source = FormattableString.Invariant($"{file} line {sheet.Line(row)}");
            GeoPoint? place = rows.Place(row);
            double? depthM = sheet.Optional(row, depth);
            int before = readings.Count;
            Add(ReadingKind.HazeDepth, haze, null);
            Add(ReadingKind.SurfaceTemperature, surface, null);
            Add(ReadingKind.Secchi, secchi, null);
            if (depthM is not null)
            {
                Add(ReadingKind.Temperature, temp, depthM);
                Add(ReadingKind.Oxygen, oxygen, depthM);
            }
            else if (sheet.Optional(row, temp) is double surfaceC)
            {
                readings.Add(new Reading(at, place, ReadingKind.SurfaceTemperature, surfaceC, null, source));
            }

            if (readings.Count == before) context.Log.Row(file, sheet.Line(row), "no reading", "the row holds no value that can be used.");

            void Add(ReadingKind kind, CsvColumn? column, double? at2)
            {
                if (sheet.Optional(row, column) is double value) readings.Add(new Reading(at, place, kind, value, at2, source));
            }
        }

        return readings;
    }

    public static List<CoverMark> Cover(string file, byte[] bytes, ReadContext context)
    {
        List<CoverMark> marks = [];
        CsvSheet? sheet = CsvSheet.Open(file, bytes, context.Log);
        if (sheet is null) return marks;
        CsvColumn? lat = sheet.Find(Quantity.Angle, -90, 90, "latitude", "lat"), lon = sheet.Find(Quantity.Angle, -360, 360, "longitude", "lon", "lng");
        CsvColumn? radius = sheet.Find(Quantity.Length, 0, 5000, "radius"), height = sheet.Find(Quantity.Length, 0, 100, "height");
        int kind = sheet.Find("kind", "type", "cover"), note = sheet.Find("note", "notes", "name");
        if (lat is null || lon is null)
        {
            context.Log.Error(file, "the file needs the columns latitude_deg, longitude_deg and kind (brush, stumps, timber, rock, weed, works).");
            return marks;
        }

        for (int row = 0; row < sheet.Count; row++)
        {
            double latDeg = sheet.Number(row, lat), lonDeg = sheet.Number(row, lon);
            if (double.IsNaN(latDeg) || double.IsNaN(lonDeg))
            {
                context.Log.Row(file, sheet.Line(row), "no place", "the row has no usable latitude and longitude; it is not used.");
                continue;
            }

            string word = sheet.TextOf(row, kind);
            if (!TryCover(word, out CoverKind cover) && word.Length > 0)
                context.Log.Row(file, sheet.Line(row), "kind of cover", $"kind is '{TextDecoding.Excerpt(word)}' where brush, stumps, timber, rock, weed or works is expected; kept as other.", ProblemSeverity.Note);
            marks.Add(new CoverMark(new GeoPoint(latDeg, lonDeg), cover, sheet.Optional(row, radius) ?? 0, sheet.Optional(row, height), sheet.TextOf(row, note)));
        }

        return marks;
    }

    /// <summary>The kind of cover a word names.</summary>
    public static bool TryCover(string word, out CoverKind kind)
    {
        CoverKind? found = word.Trim().ToLowerInvariant() switch
        {
            "brush" or "brush pile" or "brushpile" => CoverKind.Brush,
            "stump" or "stumps" => CoverKind.Stumps,
            "timber" or "standing timber" or "standing_timber" or "trees" => CoverKind.StandingTimber,
            "rock" or "rocks" or "boulder" or "boulders" => CoverKind.Rock,
            "weed" or "weeds" or "weed edge" => CoverKind.Weed,
            "works" or "road" or "wall" or "bridge" or "foundation" => CoverKind.Works,
            "other" => CoverKind.Other,
            _ => null,
        };
        kind = found ?? CoverKind.Other;
        return found is not null;
    }

    /// <summary>The word written for a kind of cover.</summary>
    public static string WordOf(CoverKind kind) => kind switch
    {
        CoverKind.Brush => "brush",
        CoverKind.Stumps => "stumps",
        CoverKind.StandingTimber => "timber",
        CoverKind.Rock => "rock",
        CoverKind.Weed => "weed",
        CoverKind.Works => "works",
        _ => "other",
    };
}
