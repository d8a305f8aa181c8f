using SecondShore.Formats.Surveys.Hypotheses;

namespace SecondShore.Formats.Surveys;

/// <summary>Chooses which named column or attribute of a survey is its depth, and what the name tells of unit and sense.</summary>
internal sealed record DepthAttribute(string Name, DepthUnit? Unit, DepthSense? Sense)
{
    /// <summary>Whether the name tells a measure that is not known here.</summary>
    public bool OddUnit { get; init; }

    /// <summary>The depth among names, by their words; of one depth told in two units the metres. Null when none fits.</summary>
    public static DepthAttribute? Choose(IReadOnlyList<string> names, SurveyOptions options)
    {
        if (options.DepthColumn is string set)
        {
            string? named = names.FirstOrDefault(n => string.Equals(n, set, StringComparison.OrdinalIgnoreCase));
            return named is null ? null : Of(named) ?? new DepthAttribute(named, null, null);
        }

        return names.Select(n => (Attribute: Of(n), HeaderWords.Of(n).Weight)).Where(a => a.Attribute is not null)
            .OrderBy(a => a.Attribute!.Sense switch { DepthSense.Depth => 0, DepthSense.Elevation => 1, _ => 2 })
            .ThenBy(a => FarEnd(a.Attribute!))
            .ThenByDescending(a => a.Weight)
            .ThenBy(a => a.Attribute!.Unit switch { DepthUnit.Metres => 0, not null => 1, null => 2 })
            .FirstOrDefault().Attribute;
    }

    // Of a band's two ends the one nearer to the surface: the least depth, the greatest height. A value that is neither stands between.
    private static int FarEnd(DepthAttribute attribute)
    {
        List<string> words = HeaderWords.Split(attribute.Name);
        bool low = words.Exists(w => w is "min" or "minimum" or "mindepth" or "from" or "von" or "ab" or "low" or "least" or "lo" or "start" or "mintiefe");
        bool high = words.Exists(w => w is "max" or "maximum" or "maxdepth" or "to" or "bis" or "high" or "greatest" or "hi" or "end" or "maxtiefe");
        if (low == high) return 1;
        return (attribute.Sense == DepthSense.Elevation) == high ? 0 : 2;
    }

    /// <summary>What a name tells; null when it names no depth, no height and no bare third number.</summary>
    public static DepthAttribute? Of(string name)
    {
        HeaderWords words = HeaderWords.Of(name);
        return words.Role switch
        {
            ColumnRole.Depth => new DepthAttribute(name, words.Unit, DepthSense.Depth) { OddUnit = words.OddUnit },
            ColumnRole.Height => new DepthAttribute(name, words.Unit, words.IsLetter ? null : DepthSense.Elevation) { OddUnit = words.OddUnit },
            ColumnRole.Bare => new DepthAttribute(name, words.Unit, null) { OddUnit = words.OddUnit },
            _ => null,
        };
    }

    /// <summary>Hands what the name tells to a raw survey that is not told otherwise.</summary>
    public void Tell(RawSurvey raw)
    {
        if (Unit is not null) (raw.Unit, raw.UnitKnown) = (Unit, Knowledge.Stated);
        if (Sense is not null) (raw.Sense, raw.SenseKnown) = (Sense, Knowledge.Stated);
        raw.OddUnit |= OddUnit;
    }
}
