using System.Globalization;
using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Surveys.Hypotheses;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Xyz;

/// <summary>Decides which column of a text file is east, north and depth: by the user, by its header, by its numbers; or asks.</summary>
internal sealed class XyzColumns
{
    /// <summary>Log-odds by which one reading must lead to be taken without asking: 20 to 1.</summary>
    public const double Clear = 3;

    private const int MostAsked = 6;
    private readonly string _file;
    private readonly string[] _names;
    private readonly List<ColumnNumbers> _columns = [];
    private readonly List<HeaderWords> _words = [];
    private readonly SurveyOptions _options;
    private readonly bool _named;

    private readonly bool _saysDepth;

    public XyzColumns(string file, string preamble, CsvTable table, bool comma, int header, int first, SurveyOptions options)
    {
        (_file, _options, _named) = (file, options, header >= 0);
        _saysDepth = HeaderWords.Split(file + " " + preamble).Any(w => WordList.RoleOf(w).Role == ColumnRole.Depth);
        int[] rows = ColumnNumbers.SampleRows(table, first);
        int count = rows.Length == 0 ? 0 : Math.Min(rows.Take(40).Max(table.Cells), 100);
        _names = new string[count];
        for (int c = 0; c < count; c++)
        {
            _names[c] = header >= 0 && c < table.Cells(header) ? table[header, c].ToString().Trim() : "";
            _columns.Add(ColumnNumbers.Of(table, rows, c, comma));
            _words.Add(HeaderWords.Of(_names[c]));
        }
    }

    /// <summary>Columns chosen; with what is wanting or must be asked.</summary>
    public XyzRoles Roles()
    {
        int x = Chosen(_options.XColumn, out string fault), y = Chosen(_options.YColumn, out string faultY), z = Chosen(_options.DepthColumn, out string faultZ);
        if (fault.Length + faultY.Length + faultZ.Length > 0) return XyzRoles.None(fault + faultY + faultZ);
        (PlaceColumns? place, SurveyQuestion? question) = x >= 0 && y >= 0 ? (SetPlace(x, y), null) : FindPlace();
        if (question is not null && z < 0 && place is not null && FindDepth(new XyzRoles(place, z, null, "", null)) is { Missing.Length: > 0 } none) return none;
        if (question is not null) return XyzRoles.None("") with { Question = question };
        if (place is null)
            return XyzRoles.None($"no two columns of the file can be a position ({Listed()}); name them latitude_deg and longitude_deg, or easting and northing, in a header row, or set survey.x_column and survey.y_column.");
        XyzRoles roles = new(place, z, null, "", null);
        if (place.Form == AngleForm.DegreeMinutes && place.XLetter < 0 && _options.Angles is null) return roles with { Question = AskAngles() };
        if (_options.Angles is AngleForm form) roles = roles with { Place = place with { Form = form } };
        return WithUnits(z >= 0 ? Checked(roles, z) : FindDepth(roles));
    }

    // A column of nothing but units tells each row's own, where the depth's name tells none.
    private XyzRoles WithUnits(XyzRoles roles)
    {
        int units = _columns.FindIndex(c => c.IsUnits);
        if (units < 0 || roles.Depth < 0 || _options.Unit is not null || roles.Attribute is { Unit: not null }) return roles;
        DepthAttribute told = roles.Attribute ?? new DepthAttribute(_names[roles.Depth], null, null);
        return roles with { Units = units, Attribute = told with { Unit = DepthUnit.Metres } };
    }

    private PlaceColumns SetPlace(int x, int y)
    {
        PlaceColumns? known = PlaceColumns.Of(_columns, _words, _named).FirstOrDefault(p => p.X == x && p.Y == y);
        bool degrees = _words[x].Role == ColumnRole.Lon && _words[y].Role == ColumnRole.Lat;
        // Columns that the user named in this order are not to be exchanged.
        return (known ?? new PlaceColumns(x, y, AngleForm.Plain, 9, degrees, true)) with { NamedPlane = true };
    }

    private (PlaceColumns? Place, SurveyQuestion? Question) FindPlace()
    {
        List<PlaceColumns> found = [.. PlaceColumns.Of(_columns, _words, _named).Select(WithLand).OrderByDescending(p => p.Weight)];
        if (found.Count == 0) return (null, null);
        PlaceColumns best = found[0];
        bool degrees = Math.Abs(_columns[best.X].Middle) <= 360 && Math.Abs(_columns[best.Y].Middle) <= 90;
        // In a plane the order of the two is found with the system.
        List<PlaceColumns> rivals = [.. found.Skip(1).Where(p => p.Weight > best.Weight - Clear && (degrees || !(p.X == best.Y && p.Y == best.X))).Take(MostAsked - 1)];
        if (rivals.Count == 0) return (best, null);
        return (best, new SurveyQuestion(_file, SurveyQuestionKind.Place, "Two columns can be the position in more than one way: which is it?",
            [.. rivals.Prepend(best).Select(p => PlaceChoice(p))], "x_column"));
    }

    private SurveyChoice PlaceChoice(PlaceColumns p)
    {
        ColumnNumbers x = _columns[p.X], y = _columns[p.Y];
        bool degrees = Math.Abs(x.Middle) <= 180 && Math.Abs(y.Middle) <= 90;
        string country = degrees ? Places.Country(y.Middle, x.Middle) ?? "" : "";
        return new SurveyChoice(new SurveyOptions { XColumn = NameOf(p.X), YColumn = NameOf(p.Y) },
            $"{Called(p.Y)} north, {Called(p.X)} east ({y.Middle:G6}, {x.Middle:G6})",
            degrees ? new Engine.Core.Geo.GeoPoint(y.Middle, x.Middle) : null, country);
    }

    // A survey lies on land or beside it: degrees that lead to the open sea or to a pole weigh little.
    private PlaceColumns WithLand(PlaceColumns p)
    {
        double lon = _columns[p.X].Middle, lat = _columns[p.Y].Middle;
        if (p.Form != AngleForm.Plain || Math.Abs(lon) > 180 || Math.Abs(lat) > 90) return p;
        return Places.Country(lat, lon) switch
        {
            null => p,
            "" => p with { Weight = p.Weight - 4 },
            "Antarctica" => p with { Weight = p.Weight - 5 },
            _ => Places.NearSea(lat, lon) == true ? p with { Weight = p.Weight + 0.5 } : p,
        };
    }

    private SurveyQuestion AskAngles() => new(_file, SurveyQuestionKind.Angles,
        "The position's numbers can be degrees and minutes in one (4807.038 is 48 degrees 7.038 minutes) or lengths in a plane: which?",
        [
            new SurveyChoice(new SurveyOptions { Angles = AngleForm.DegreeMinutes }, "degrees and minutes in one number"),
            new SurveyChoice(new SurveyOptions { Angles = AngleForm.Plain }, "lengths in a plane"),
        ], "angles");

    private XyzRoles Checked(XyzRoles roles, int z)
    {
        ColumnNumbers n = _columns[z];
        string fault = n.Count == 0 ? "holds no numbers" : n.Low == n.High ? "holds one number only"
            : n.Counts ? "only counts the rows" : n.OnlyGrows && _words[z].Role != ColumnRole.Depth ? "only grows from row to row, like a distance or a time"
            : n.Distinct <= 2 && n.Count > 12 ? "holds only two values, like a mask" : "";
        return fault.Length > 0 ? XyzRoles.None($"{Called(z)} {fault} and is no depth; set survey.depth_column to another ({Listed()}).")
            : roles with { Depth = z, Attribute = AttributeOf(z) };
    }

    private XyzRoles FindDepth(XyzRoles roles)
    {
        List<DepthColumns> found = WithoutTwins([.. DepthColumns.Of(_columns, _words, _named, roles.Place!).Where(d => d.Weight > DepthColumns.Possible)]);
        if (found.Count == 0)
            return XyzRoles.None($"no column of the file can be a depth ({Listed()}); name it depth_m or depth_ft in a header row, or set survey.depth_column.");
        DepthColumns best = found[0];
        // A file that is called after soundings, or says so before its numbers, has a depth somewhere.
        bool clear = best.Weight >= (_saysDepth ? DepthColumns.Convincing - 1.5 : DepthColumns.Convincing) && (found.Count == 1 || best.Weight - found[1].Weight >= Clear);
        if (clear) return roles with { Depth = best.Column, Attribute = AttributeOf(best.Column) };
        List<SurveyChoice> choices = [.. found.Where(d => d.Weight > best.Weight - 5).Take(MostAsked).Select(d => new SurveyChoice(
            new SurveyOptions { DepthColumn = NameOf(d.Column) },
            $"{Called(d.Column)}, {_columns[d.Column].Low:G6} to {_columns[d.Column].High:G6}"))];
        choices.Add(new SurveyChoice(new SurveyOptions { Use = false }, "none of them: leave the file"));
        return roles with
        {
            Question = new SurveyQuestion(_file, SurveyQuestionKind.Depth, choices.Count == 2
                ? "Nothing says that this column is the depth: is it?" : "More than one column can be the depth: which is it?", choices, "depth_column"),
        };
    }

    // Depth_ft beside Depth_m is one depth told twice: the metres stay.
    private List<DepthColumns> WithoutTwins(List<DepthColumns> found)
    {
        for (int i = 0; i < found.Count; i++)
        {
            for (int j = found.Count - 1; j > i; j--)
            {
                if (Ratio(found[i].Column, found[j].Column) is not double ratio) continue;
                bool keepsLater = found[i].Words.Unit is DepthUnit.Feet or DepthUnit.Fathoms or DepthUnit.Centimetres && found[j].Words.Unit == DepthUnit.Metres;
                if (!keepsLater && !(Math.Abs(ratio - 1) < 0.01) && (found[i].Words.Unit is null || found[j].Words.Unit is null)) continue;
                if (keepsLater) found[i] = found[j] with { Weight = Math.Max(found[i].Weight, found[j].Weight) };
                found.RemoveAt(j);
            }
        }

        return found;
    }

    private double? Ratio(int a, int b)
    {
        double? ratio = null;
        int seen = 0;
        for (int i = 0; i < _columns[a].Values.Length; i++)
        {
            double first = _columns[a].Values[i], second = _columns[b].Values[i];
            if (double.IsNaN(first) || double.IsNaN(second) || Math.Abs(second) < 1 || first == 0) continue;
            double here = first / second;
            if (ratio is double r && Math.Abs((here / r) - 1) > 0.03) return null;
            ratio ??= here;
            seen++;
        }

        return seen > 5 ? ratio : null;
    }

    private DepthAttribute? AttributeOf(int column)
    {
        HeaderWords words = _words[column];
        DepthSense? sense = words.Role switch { ColumnRole.Depth => DepthSense.Depth, ColumnRole.Height when !words.IsLetter => DepthSense.Elevation, _ => null };
        DepthUnit? unit = words.Unit ?? _columns[column].Unit;
        return sense is null && unit is null && !words.OddUnit ? null : new DepthAttribute(_names[column], unit, sense) { OddUnit = words.OddUnit };
    }

    private int Chosen(string? column, out string fault)
    {
        fault = "";
        if (column is null) return -1;
        for (int c = 0; c < _names.Length; c++) if (_names[c].Length > 0 && string.Equals(_names[c], column.Trim(), StringComparison.OrdinalIgnoreCase)) return c;
        if (int.TryParse(column, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1 && number <= _names.Length) return number - 1;
        fault = $"there is no column '{TextDecoding.Excerpt(column)}' ({Listed()}). ";
        return -1;
    }

    private string NameOf(int column) => _names[column].Length > 0 && Array.IndexOf(_names, _names[column]) == column
        ? _names[column] : (column + 1).ToString(CultureInfo.InvariantCulture);

    private Finding Called(int column) => _names[column].Length > 0 ? Finding.Of($"{TextDecoding.Excerpt(_names[column])}") : Finding.Of($"column {column + 1}");

    /// <summary>Columns with their ranges, for a refusal.</summary>
    private string Listed() => string.Join("; ", Enumerable.Range(0, Math.Min(_names.Length, 12)).Select(c => _columns[c].Count == 0
        ? $"{Called(c)}: text" : string.Create(CultureInfo.InvariantCulture, $"{Called(c)}: {_columns[c].Low:G7} to {_columns[c].High:G7}")));
}

/// <summary>Which columns a text file's reading takes.</summary>
/// <param name="Place">The position; null when there is none.</param>
/// <param name="Depth">The depth; -1 when there is none.</param>
/// <param name="Attribute">What the depth's name tells; null when nothing.</param>
/// <param name="Missing">What is wanting, as a sentence; empty when nothing is.</param>
/// <param name="Question">What must be asked; null when nothing must.</param>
internal sealed record XyzRoles(PlaceColumns? Place, int Depth, DepthAttribute? Attribute, string Missing, SurveyQuestion? Question)
{
    /// <summary>Column that names each row's unit; -1 without. Depths are then metres.</summary>
    public int Units { get; init; } = -1;

    public static XyzRoles None(string missing) => new(null, -1, null, missing, null);
}
