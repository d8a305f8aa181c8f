using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys;

/// <summary>Chooses which named column or attribute of a survey is its depth, and what the name tells of unit and sense.</summary>
internal sealed record DepthAttribute(string Name, DepthUnit? Unit, DepthSense? Sense)
{
    private static readonly string[] DepthStems = ["depth", "bottom_depth", "water_depth", "dep", "sounding", "contour_depth", "depth_below_surface", "dbs"];
    private static readonly string[] ElevationStems = ["elevation", "elev", "altitude", "height", "contour", "ele"];

    /// <summary>The depth among names; a name with its unit wins over one without, metres over feet. Null when none fits.</summary>
    public static DepthAttribute? Choose(IReadOnlyList<string> names, SurveyOptions options)
    {
        if (options.DepthColumn is string set)
        {
            string? named = names.FirstOrDefault(n => string.Equals(n, set, StringComparison.OrdinalIgnoreCase));
            return named is null ? null : Of(named) ?? new DepthAttribute(named, null, null);
        }

        return names.Select(Of).OfType<DepthAttribute>()
            .OrderBy(a => a.Sense == DepthSense.Depth ? 0 : 1)
            .ThenBy(a => a.Unit switch { DepthUnit.Metres => 0, not null => 1, null => 2 })
            .FirstOrDefault();
    }

    /// <summary>What a name tells; null when it names no depth or elevation.</summary>
    public static DepthAttribute? Of(string name)
    {
        string plain = UnitSuffix.Normalise(name);
        foreach (string stem in DepthStems)
            if (Match(plain, stem, out DepthUnit? unit)) return new DepthAttribute(name, unit, DepthSense.Depth);
        foreach (string stem in ElevationStems)
            if (Match(plain, stem, out DepthUnit? unit)) return new DepthAttribute(name, unit, DepthSense.Elevation);
        return null;
    }

    /// <summary>Hands what the name tells to a raw survey that is not told otherwise.</summary>
    public void Tell(RawSurvey raw)
    {
        if (Unit is not null) (raw.Unit, raw.UnitKnown) = (Unit, Knowledge.Stated);
        if (Sense is not null) (raw.Sense, raw.SenseKnown) = (Sense, Knowledge.Stated);
    }

    private static bool Match(string plain, string stem, out DepthUnit? unit)
    {
        unit = null;
        if (plain == stem) return true;
        if (!plain.StartsWith(stem, StringComparison.Ordinal)) return false;
        unit = plain[stem.Length..].TrimStart('_') switch
        {
            "m" or "metres" or "meters" or "metre" or "meter" => DepthUnit.Metres,
            "ft" or "feet" or "foot" => DepthUnit.Feet,
            "fathoms" or "fathom" or "fm" => DepthUnit.Fathoms,
            _ => null,
        };
        return unit is not null;
    }
}
