using SecondShore.Formats.Surveys.Hypotheses;

namespace SecondShore.Formats.Surveys.Xyz;

/// <summary>The waters that the rows of a table name, where they are several and lie apart.</summary>
internal sealed class WaterNames
{
    private const int Most = 60;
    private const int MostChoices = 12;
    private const int FewestRows = 12;

    private readonly string _file;
    private readonly List<Named> _waters;

    private WaterNames(string file, int column, List<Named> waters) => (_file, Column, _waters) = (file, column, waters);

    private sealed record Named(string Name)
    {
        public int Rows { get; set; }

        public double West { get; set; } = double.PositiveInfinity;

        public double East { get; set; } = double.NegativeInfinity;

        public double South { get; set; } = double.PositiveInfinity;

        public double North { get; set; } = double.NegativeInfinity;

        public bool Apart(Named other) => other.West > East || other.East < West || other.South > North || other.North < South;
    }

    /// <summary>The column of names, from 0.</summary>
    public int Column { get; }

    /// <summary>The names; null where there are none, one only, or parts of one water.</summary>
    public static WaterNames? Of(string file, XyzLayout layout)
    {
        if (layout.HeaderRow < 0) return null;
        for (int c = 0; c < Math.Min(layout.Table.Cells(layout.HeaderRow), 60); c++)
        {
            if (c == layout.XColumn || c == layout.YColumn || c == layout.DepthColumn || !NamesWater(layout.Table[layout.HeaderRow, c].ToString())) continue;
            if (Collect(layout, c) is { Count: > 1 } waters) return new WaterNames(file, c, waters);
        }

        return null;
    }

    private static bool NamesWater(string header) => HeaderWords.Split(header).Exists(w => w is "lake" or "lakename" or "waterbody" or "water" or "see" or "seename" or "gewaesser"
        or "lac" or "lago" or "jezioro" or "sjoe" or "pond" or "reservoir" or "jaervi");

    private static List<Named>? Collect(XyzLayout layout, int column)
    {
        Dictionary<string, Named> found = new(StringComparer.OrdinalIgnoreCase);
        for (int row = layout.FirstRow; row < layout.Table.Count; row++)
        {
            ReadOnlySpan<char> name = layout.Table[row, column].Trim();
            if (name.IsEmpty || XyzLayout.TryValue(name, layout.DecimalComma, out _)) return null;
            if (!XyzLayout.TryValue(layout.Table[row, layout.XColumn], layout.DecimalComma, out double x)
                || !XyzLayout.TryValue(layout.Table[row, layout.YColumn], layout.DecimalComma, out double y) || (x == 0 && y == 0)) continue;
            string key = name.ToString();
            if (!found.TryGetValue(key, out Named? water))
            {
                if (found.Count == Most) return null;
                found[key] = water = new Named(key);
            }

            water.Rows++;
            (water.West, water.East) = (Math.Min(water.West, x), Math.Max(water.East, x));
            (water.South, water.North) = (Math.Min(water.South, y), Math.Max(water.North, y));
        }

        List<Named> waters = [.. found.Values.Where(w => w.Rows >= FewestRows).OrderByDescending(w => w.Rows)];
        return waters.Count > 1 && waters.Skip(1).Any(w => w.Apart(waters[0])) ? waters : null;
    }

    /// <summary>Asks which is meant.</summary>
    public SurveyQuestion Ask() => new(_file, SurveyQuestionKind.Rows, $"The rows name {_waters.Count} waters that lie apart. Which is the lake?",
    [
        .. _waters.Take(MostChoices).Select(w => new SurveyChoice(new SurveyOptions { Water = w.Name }, $"only {Name(w)}, {w.Rows} rows")),
        new SurveyChoice(new SurveyOptions { Water = "*" }, $"all {_waters.Count} as one"),
    ], "water");

    private static Finding Name(Named water) => Finding.Of($"{Text.TextDecoding.Excerpt(water.Name)}");
}
