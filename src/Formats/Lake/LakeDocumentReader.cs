using SecondShore.Engine.Season;
using System.Text.Json;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Surveys;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>Reads lake.json.</summary>
internal static class LakeDocumentReader
{
    private const int MostKnots = 400;

    public static LakeDocument? Read(string file, byte[] bytes, ProblemLog log)
    {
        using JsonDocument? json = JsonFields.Parse(file, bytes, log);
        if (json is null) return null;
        JsonFields root = new(file, "", json.RootElement, log);
        string name = root.Text("name"), zone = root.Text("time_zone");
        return new LakeDocument
        {
            Name = name.Length > 0 ? name : null,
            Position = root.Place(),
            ElevationM = root.Number(Quantity.Length, -450, 6500, "elevation", "full_pool_elevation"),
            TimeZoneId = zone.Length > 0 ? zone : null,
            StandardOffsetH = root.Number(Quantity.Minutes, -12 * 60, 14 * 60, "local_standard_utc_offset") / 60,
            SurfaceAreaM2 = root.Number(Quantity.Area, 1, 1e12, "surface_area"),
            MaxDepthM = root.Number(Quantity.Length, 0.05, 2000, "max_depth"),
            MeanDepthM = root.Number(Quantity.Length, 0.01, 1500, "mean_depth"),
            SecchiM = root.Number(Quantity.Length, 0.01, 60, "secchi", "secchi_depth"),
            LightExtinctionPerM = root.Number(Quantity.PerLength, 0.01, 50, "light_extinction"),
            OutletDepthM = root.Number(Quantity.Length, 0, 500, "outlet_depth"),
            IsReservoir = root.Flag("reservoir"),
            Dam = root.Inner("dam")?.Place(),
            Clarity = Clarity(root),
            WindHeightM = root.Number(Quantity.Length, 0.2, 200, "wind_measurement_height"),
            MeasuredUntil = MeasuredUntil(root),
            Units = Units(root),
            IsInvented = root.Flag("invented") ?? false,
            Ramps = Ramps(root),
            NoWakeAreas = NoWakeAreas(root),
            Marks = Marks(root),
            WindStations = WindStations(root),
            Moorings = Moorings(root),
            Fitted = Fitted(root),
            SurveyOptions = SurveyOptionsOf(root),
            SurveyBelowFullPoolM = root.Inner("survey")?.Number(Quantity.Length, -100, 300, "below_full_pool"),
        };
    }

    private static DateTimeOffset? MeasuredUntil(JsonFields root)
    {
        string text = root.Text("measured_until");
        if (text.Length == 0) return null;
        LakeClock clock = new(TimeZoneInfo.Utc, TimeSpan.Zero);
        if (clock.TryRead(text, out DateTimeOffset instant, out _, out FindingForm fault)) return instant.ToUniversalTime();
        root.Warn($"measured_until '{TextDecoding.Excerpt(text)}' {fault}; write it as 2026-10-04T17:00:00Z. It is not used.");
        return null;
    }

    private static DisplayUnits? Units(JsonFields root)
    {
        string text = root.Text("units");
        switch (text.ToLowerInvariant())
        {
            case "": return null;
            case "metric" or "si": return DisplayUnits.Metric;
            case "us" or "imperial" or "customary": return DisplayUnits.UsCustomary;
            default:
                root.Warn($"units is '{TextDecoding.Excerpt(text)}' where 'us' or 'metric' is expected; metric is shown.");
                return null;
        }
    }

    private static WaterClarity? Clarity(JsonFields root)
    {
        string text = root.Text("clarity");
        if (text.Length == 0) return null;
        if (WaterClarities.Of(text) is { } clarity) return clarity;
        root.Warn($"clarity is '{TextDecoding.Excerpt(text)}' where clear, stained or muddy is expected; it is not used.");
        return null;
    }

    private static List<RampMark> Ramps(JsonFields root)
    {
        List<RampMark> ramps = [];
        foreach (JsonFields item in root.Objects("ramps"))
        {
            if (item.Place() is GeoPoint place)
                ramps.Add(new RampMark(Named(item, "Ramp", ramps.Count), place, item.Number(Quantity.Length, -20, 200, "toe_below_full_pool"), item.Text("note")));
            else item.Warn("a ramp needs latitude_deg and longitude_deg; it is not used.");
        }

        return ramps;
    }

    private static List<NoWakeArea> NoWakeAreas(JsonFields root)
    {
        List<NoWakeArea> areas = [];
        foreach (JsonFields item in root.Objects("no_wake_areas"))
        {
            List<GeoPoint> outline = [];
            foreach (JsonFields corner in item.Objects("outline"))
                if (corner.Place() is GeoPoint point) outline.Add(point);
            if (outline.Count > 3 && outline[0] == outline[^1]) outline.RemoveAt(outline.Count - 1);
            if (outline.Count >= 3) areas.Add(new NoWakeArea(Named(item, "No-wake area", areas.Count), outline));
            else item.Warn("a no-wake area needs an outline of three corners or more, each with latitude_deg and longitude_deg; it is not used.");
        }

        return areas;
    }

    private static List<PlaceMark> Marks(JsonFields root)
    {
        List<PlaceMark> marks = [];
        foreach (JsonFields item in root.Objects("marks"))
        {
            PlaceMarkKind? kind = item.Text("kind") switch
            {
                "spot" or "" => PlaceMarkKind.Spot,
                "arm" => PlaceMarkKind.Arm,
                "must_visit" => PlaceMarkKind.MustVisit,
                "never_visit" => PlaceMarkKind.NeverVisit,
                _ => null,
            };
            if (kind is null) item.Warn($"kind is '{TextDecoding.Excerpt(item.Text("kind"))}' where spot, arm, must_visit or never_visit is expected; the mark is not used.");
            else if (item.Place() is GeoPoint place)
                marks.Add(new PlaceMark(kind.Value, Named(item, "Mark", marks.Count), place, item.Number(Quantity.Length, 0, 20000, "radius") ?? 0, item.Text("note")));
            else item.Warn("a mark needs latitude_deg and longitude_deg; it is not used.");
        }

        return marks;
    }

    private static List<WindStation> WindStations(JsonFields root)
    {
        List<WindStation> stations = [];
        foreach ((string name, JsonFields item) in root.Named("wind_stations"))
        {
            string? over = item.Text("over");
            bool? onLand = over switch { "land" => true, "water" => false, _ => null };
            if (onLand is null && over is { Length: > 0 })
                item.Warn($"over is '{TextDecoding.Excerpt(over)}' where land or water is expected; it is not used.");
            if (item.Place() is GeoPoint place) stations.Add(new WindStation(name, place, item.Number(Quantity.Length, 0.2, 200, "height"), onLand));
            else item.Warn("a wind station needs latitude_deg and longitude_deg; it is not used.");
        }

        return stations;
    }

    private static List<Mooring> Moorings(JsonFields root)
    {
        List<Mooring> moorings = [];
        foreach ((string name, JsonFields item) in root.Named("moorings"))
        {
            if (item.Place() is GeoPoint place) moorings.Add(new Mooring(name, place));
            else item.Warn("a mooring needs latitude_deg and longitude_deg; it is not used.");
        }

        return moorings;
    }

    private static FittedLake Fitted(JsonFields root)
    {
        List<FittedParameter> fitted = [];
        if (root.Inner("fitted") is not JsonFields group) return FittedLake.None;
        foreach (JsonFields item in group.Objects("parameters"))
        {
            double? p10 = item.Number(Quantity.Number, -1e12, 1e12, "p10"), p50 = item.Number(Quantity.Number, -1e12, 1e12, "p50"), p90 = item.Number(Quantity.Number, -1e12, 1e12, "p90");
            string name = item.Text("name");
            if (name.Length > 0 && p50 is double median && (p10 ?? median) <= median && median <= (p90 ?? median))
                fitted.Add(new FittedParameter(name, p10 ?? median, median, p90 ?? median));
            else item.Warn("a fitted parameter needs a name and p10, p50, p90 in rising order; it is not used.");
        }

        return new FittedLake(fitted, group.Inner("bias") is { } bias ? Bias(bias) : null);
    }

    // Small numbers by rule: a correction of more than some kelvin is no correction.
    private static SeasonBias? Bias(JsonFields group)
    {
        double[]? depths = group.Numbers("depths_m", 0, 2000, MostKnots), days = group.Numbers("days_of_year", 1, 366, MostKnots), kelvin = group.Numbers("kelvin", -10, 10, MostKnots * MostKnots);
        if (depths is { Length: >= 2 } && days is { Length: >= 2 } && kelvin?.Length == depths.Length * days.Length && Rising(depths) && Rising(days))
            return new SeasonBias(depths, days, kelvin);
        group.Warn("it needs depths_m and days_of_year, each of 2 to 400 rising numbers, and kelvin with one number of -10 to 10 for each day of each depth; it is not used. Fit again to write it anew.");
        return null;
    }

    private static bool Rising(double[] values)
    {
        for (int i = 1; i < values.Length; i++) if (!(values[i] > values[i - 1])) return false;
        return true;
    }

    private static Dictionary<string, SurveyOptions> SurveyOptionsOf(JsonFields root)
    {
        Dictionary<string, SurveyOptions> options = new(StringComparer.OrdinalIgnoreCase);
        if (root.Inner("survey") is not JsonFields survey) return options;
        options[""] = OptionsOf(survey);
        foreach (JsonFields item in survey.Objects("files"))
        {
            string file = item.Text("file");
            if (file.Length > 0) options[file] = OptionsOf(item);
            else item.Warn("an entry of survey.files needs the file's name under 'file'; it is not used.");
        }

        return options;
    }

    private static SurveyOptions OptionsOf(JsonFields item) => new()
    {
        Unit = Choice(item, "unit", "m, ft, fathoms, dm, cm or mm", static text => text switch
        {
            "m" or "metres" or "meters" => DepthUnit.Metres,
            "ft" or "feet" => DepthUnit.Feet,
            "fathoms" => DepthUnit.Fathoms,
            "dm" => DepthUnit.Decimetres,
            "cm" => DepthUnit.Centimetres,
            "mm" => DepthUnit.Millimetres,
            _ => (DepthUnit?)null,
        }),
        Sense = Choice(item, "sense", "depth, negative_depth or elevation", static text => text switch
        {
            "depth" => DepthSense.Depth,
            "negative_depth" => DepthSense.NegativeDepth,
            "elevation" => DepthSense.Elevation,
            _ => (DepthSense?)null,
        }),
        Crs = TextOrNull(item, "crs"),
        XColumn = TextOrNull(item, "x_column"),
        YColumn = TextOrNull(item, "y_column"),
        DepthColumn = TextOrNull(item, "depth_column"),
        Separator = Choice(item, "separator", "comma, semicolon, tab or blank", static text => text switch
        {
            "comma" or "," => ',',
            "semicolon" or ";" => ';',
            "tab" or "\t" => '\t',
            "blank" or " " => ' ',
            _ => (char?)null,
        }),
        DecimalComma = item.Flag("decimal_comma"),
        BelowFullPoolM = item.Number(Quantity.Length, -100, 300, "below_full_pool"),
        SurfaceElevationM = item.Number(Quantity.Length, -450, 6500, "surface_elevation"),
        TransducerDepthM = item.Number(Quantity.Length, -5, 20, "transducer_depth"),
        Angles = Choice(item, "angles", "plain or degree_minutes", static text => text switch
        {
            "plain" => AngleForm.Plain,
            "degree_minutes" => AngleForm.DegreeMinutes,
            _ => (AngleForm?)null,
        }),
        Swapped = item.Flag("swapped"),
        WestPositive = item.Flag("west_positive"),
        UseRest = item.Flag("use_rest"),
        Area = item.Numbers("area", -180, 180, 4) is { Length: 4 } area ? area : null,
        Why = TextOrNull(item, "why"),
        Use = item.Flag("use") ?? true,
    };

    private static T? Choice<T>(JsonFields item, string name, FindingForm allowed, Func<string, T?> parse)
        where T : struct
    {
        string text = item.Text(name);
        if (text.Length == 0) return null;
        T? value = parse(text.ToLowerInvariant());
        if (value is null) item.Warn($"{name} is '{TextDecoding.Excerpt(text)}' where {allowed} is expected; it is not used.");
        return value;
    }

    private static string? TextOrNull(JsonFields item, string name)
    {
        string text = item.Text(name);
        return text.Length == 0 ? null : text;
    }

    private static string Named(JsonFields item, string kind, int before)
    {
        string name = item.Text("name");
        return name.Length > 0 ? name : $"{kind} {before + 1}";
    }
}
