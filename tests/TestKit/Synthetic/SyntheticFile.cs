using System.Globalization;
using System.Text;
using SecondShore.Atlas;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Files;
using SecondShore.Formats.Surveys;

namespace SecondShore.TestKit.Synthetic;

/// <summary>How positions are written in a synthetic survey.</summary>
public enum SyntheticPlaces
{
    /// <summary>Decimal degrees.</summary>
    Degrees,

    /// <summary>Degrees and minutes in one number, with a letter column.</summary>
    Minutes,

    /// <summary>Degrees, minutes and seconds as text.</summary>
    Seconds,

    /// <summary>Lengths in a plane.</summary>
    Plane,
}

/// <summary>A synthetic survey as text: random layout, unit, sense, system, separator, header words and noise columns over a known lake.</summary>
public sealed class SyntheticFile
{
    private static readonly string[] DepthWords =
    [
        "depth", "Depth", "DEPTH", "Depth_{u}", "depth ({u})", "DEPTH_IN_{U}", "DepthM?", "dep", "Tiefe", "Wassertiefe [{u}]", "prof", "Profondeur ({u})", "profundidad", "depht", "Deapth {u}",
        "water depth", "Sounding", "Depth (Proc)", "Dybde", "glebokosc", "depth{u}",
    ];

    private static readonly string[] HeightWords = ["elevation", "Elev_{u}", "H", "Hoehe", "Höhe [{u}]", "elev ({u})", "Bottom elevation", "Altitude", "RL", "rzedna", "height", "z_elev"];
    private static readonly string[] BareWords = ["z", "Z", "Z_{u}", "value"];
    private static readonly (string Lat, string Lon)[] DegreeWords =
        [("lat", "lon"), ("Latitude", "Longitude"), ("LAT", "LONG"), ("latitude_deg", "longitude_deg"), ("Lat (DD)", "Long (DD)"), ("Breite", "Länge"), ("lattitude", "longitute"), ("lat", "lng"), ("GPS_Lat", "GPS_Lon"), ("Szerokosc", "Dlugosc")];
    private static readonly (string North, string East)[] PlaneWords =
        [("northing", "easting"), ("Northing", "Easting"), ("Y", "X"), ("y", "x"), ("UTM_N", "UTM_E"), ("Hochwert", "Rechtswert"), ("NORTH", "EAST"), ("POINT_Y", "POINT_X"), ("Y_COORD", "X_COORD"), ("N", "E")];
    private static readonly string[] Noise = ["count", "time", "temperature", "speed", "sats", "distance", "constant", "heading", "stamp"];

    private readonly SeededRandom _random;
    private readonly CultureInfo _culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
    private readonly List<(string Header, Func<int, string> Cell)> _columns = [];
    private readonly List<double> _filed = [];
    private readonly List<int> _rows = [];
    private readonly bool _header;

    /// <summary>Makes the survey of a seed.</summary>
    public SyntheticFile(ulong seed)
    {
        _random = new SeededRandom(seed, 21);
        _header = _random.NextDouble() < 0.72;
        do Lake = new SyntheticLake(_random, _header);
        while (Lake.Places.Count < 60);
        Choose();
        double roll = _random.NextDouble();
        char separator = roll < 0.5 ? ',' : roll < 0.75 ? ';' : roll < 0.9 ? '\t' : ' ';
        bool comma = separator is ';' or '\t' && _random.NextDouble() < 0.35;
        if (separator == ' ' && Written == SyntheticPlaces.Seconds) separator = ';';
        Columns(separator);
        Text = Write(separator, comma);
    }

    /// <summary>The truth.</summary>
    public SyntheticLake Lake { get; }

    /// <summary>The file.</summary>
    public string Text { get; }

    /// <summary>Name of the file.</summary>
    public string Name { get; } = "notes.txt";

    /// <summary>How places are written.</summary>
    public SyntheticPlaces Written { get; private set; }

    /// <summary>System of a plane; null for degrees.</summary>
    public EpsgEntry? System { get; private set; }

    /// <summary>Header or number of the depth's column.</summary>
    public string DepthColumn { get; private set; } = "";

    /// <summary>Number of the depth's column, from 1.</summary>
    public int DepthNumber { get; private set; }

    /// <summary>Whether the unit is written somewhere in the file.</summary>
    public bool UnitNamed { get; private set; }

    /// <summary>Columns of the position, from 1: east and north.</summary>
    public (int X, int Y) PlaceNumbers { get; private set; }

    /// <summary>Its reading with what the user set.</summary>
    public SurveyImport Read(SurveyOptions options, SurveyContext context) =>
        SurveyImporter.Read(new SurveySource(new MemoryFiles("made", [KeyValuePair.Create(Name, Encoding.UTF8.GetBytes(Text))]), Name), options, context);

    private void Choose()
    {
        double roll = _random.NextDouble();
        Written = roll < 0.5 ? SyntheticPlaces.Degrees : roll < 0.56 ? SyntheticPlaces.Minutes : roll < 0.6 ? SyntheticPlaces.Seconds : SyntheticPlaces.Plane;
        if (Written != SyntheticPlaces.Plane) return;
        int utm = EpsgTable.UtmCode(Lake.Middle.LatDeg, Lake.Middle.LonDeg);
        if (_random.NextDouble() < 0.6) System = EpsgBook.Find(utm);
        else
        {
            int[] own = [.. EpsgBook.Codes.Where((_, i) => i % 3 == (int)(Lake.Middle.LonDeg * 10 % 3 + 3) % 3).Where(c => EpsgBook.Find(c) is { } e && Usable(e))];
            System = own.Length > 0 ? EpsgBook.Find(own[_random.NextInt(own.Length)]) : EpsgBook.Find(utm);
        }

        if (System is null) Written = SyntheticPlaces.Degrees;
    }

    // Systems that somebody would use for a lake there: of its region, on a datum of today, not made for a continent.
    private bool Usable(EpsgEntry e) => e.Covers(Lake.Middle.LatDeg, Lake.Middle.LonDeg, -0.2) && e.Shift.Length > 0 && e.Shift.All(s => Math.Abs(s) < 1)
        && e.Area[2] - e.Area[0] < 20 && e.Area[1] <= e.Area[3] && CoordinateSystems.FromEpsg(e.Code, out _) is not null;

    private void Columns(char separator)
    {
        CoordinateSystem? crs = System is null ? null : CoordinateSystems.FromEpsg(System.Code, out _);
        (double X, double Y)[] xy = [.. Lake.Places.Select(p => crs is null ? (p.LonDeg, p.LatDeg) : crs.FromGeo(p))];
        double noise = 0.01 * Lake.DeepestM;
        for (int i = 0; i < xy.Length; i++) _filed.Add(Lake.Filed(Lake.DepthM(Lake.Places[i]) + (noise * _random.NextDouble(-1, 1))));
        int decimals = _random.NextDouble() < 0.6 ? 2 : _random.NextDouble() < 0.7 ? 1 : 3;
        bool northFirst = _random.NextDouble() < (Written == SyntheticPlaces.Plane ? 0.15 : 0.5);
        (string east, string north) = Words();
        List<(string, Func<int, string>)> place = Positions(xy, east, north);
        if (northFirst) place = place.Count == 2 ? [place[1], place[0]] : [place[2], place[3], place[0], place[1]];
        (string Header, Func<int, string> Cell) depth = (DepthHeader(), i => _filed[i].ToString("F" + decimals, _culture));
        bool before = _random.NextDouble() < 0.2;
        List<(string, Func<int, string>)> all = before ? [depth, .. place] : [.. place, depth];
        int extra = _random.NextInt(5);
        foreach (string kind in Noise.OrderBy(_ => _random.NextDouble()).Take(extra)) all.Insert(AtSeam(all, place, before), NoiseColumn(kind, separator));
        _columns.AddRange(all);
        DepthNumber = all.FindIndex(c => c.Item2 == depth.Cell) + 1;
        DepthColumn = _header ? depth.Header : DepthNumber.ToString(CultureInfo.InvariantCulture);
        int first = all.IndexOf(place[0]) + 1, second = all.IndexOf(place[place.Count / 2]) + 1;
        PlaceNumbers = northFirst ? (second, first) : (first, second);
    }

    // Not between the columns of a position.
    private int AtSeam(List<(string, Func<int, string>)> all, List<(string, Func<int, string>)> place, bool before)
    {
        while (true)
        {
            int at = _random.NextInt(all.Count + 1);
            int first = all.IndexOf(place[0]), last = all.IndexOf(place[^1]);
            if (at <= first || at > last) return before && at == 0 ? all.Count : at;
        }
    }

    private (string East, string North) Words()
    {
        if (Written == SyntheticPlaces.Plane)
        {
            (string n, string e) = PlaneWords[_random.NextInt(PlaneWords.Length)];
            return (e, n);
        }

        (string lat, string lon) = DegreeWords[_random.NextInt(DegreeWords.Length)];
        return (lon, lat);
    }

    private List<(string, Func<int, string>)> Positions((double X, double Y)[] xy, string east, string north)
    {
        switch (Written)
        {
            case SyntheticPlaces.Minutes:
                return [(east, i => Minutes(xy[i].X)), ("EW", i => xy[i].X < 0 ? "W" : "E"), (north, i => Minutes(xy[i].Y)), ("NS", i => xy[i].Y < 0 ? "S" : "N")];
            case SyntheticPlaces.Seconds:
                return [(east, i => Seconds(xy[i].X, "E", "W")), (north, i => Seconds(xy[i].Y, "N", "S"))];
            default:
                int digits = Written == SyntheticPlaces.Plane ? _random.NextInt(4) : 5 + _random.NextInt(3);
                return [(east, i => xy[i].X.ToString("F" + digits, _culture)), (north, i => xy[i].Y.ToString("F" + digits, _culture))];
        }
    }

    private string Minutes(double degrees)
    {
        double size = Math.Abs(degrees), whole = Math.Floor(size), minutes = Math.Min(59.9999, (size - whole) * 60);
        return ((whole * 100) + minutes).ToString("0000.0000", _culture);
    }

    private static string Seconds(double degrees, string plus, string minus)
    {
        double size = Math.Abs(degrees), whole = Math.Floor(size), minutes = Math.Floor((size - whole) * 60), seconds = Math.Min(59.99, (((size - whole) * 60) - minutes) * 60);
        return string.Create(CultureInfo.InvariantCulture, $"{whole:0}°{minutes:00}'{seconds:00.00}\" {(degrees < 0 ? minus : plus)}");
    }

    private string DepthHeader()
    {
        string[] words = _random.NextDouble() < 0.12 ? BareWords : Lake.Sense == DepthSense.Elevation ? HeightWords : DepthWords;
        string word = words[_random.NextInt(words.Length)];
        string unit = Lake.Unit switch { DepthUnit.Feet => "ft", DepthUnit.Centimetres => "cm", DepthUnit.Fathoms => "fathoms", _ => "m" };
        // Who files feet outside the countries that use them says so, but for one in fifty.
        bool odd = Lake.Unit != DepthUnit.Metres && Lake.Country != "United States of America";
        if ((odd || Lake.Unit == DepthUnit.Fathoms) && !word.Contains('{', StringComparison.Ordinal) && _random.NextDouble() < 0.98) word += "_{u}";
        UnitNamed = _header && word.Contains('{', StringComparison.Ordinal);
        return word.Replace("M?", "", StringComparison.Ordinal).Replace("{u}", unit, StringComparison.Ordinal).Replace("{U}", Lake.Unit == DepthUnit.Feet ? "Feet" : unit.ToUpperInvariant(), StringComparison.Ordinal);
    }

    private (string, Func<int, string>) NoiseColumn(string kind, char separator)
    {
        double start = _random.NextDouble(0, 40), step = _random.NextDouble(0.5, 9);
        ulong own = (ulong)_random.NextInt(1_000_000);
        double Chance(int i, int k) => new SeededRandom(own, (ulong)((i * 8) + k)).NextDouble();
        return kind switch
        {
            "count" => ("id", i => (i + 1).ToString(_culture)),
            "time" => ("time", i => TimeSpan.FromSeconds(36000 + (2 * i)).ToString("hh\\:mm\\:ss", CultureInfo.InvariantCulture)),
            "temperature" => ("temp_c", i => (14 + (3 * Math.Sin((i * 0.02) + start)) + Chance(i, 1)).ToString("F1", _culture)),
            "speed" => ("speed", i => (1.5 + Chance(i, 2)).ToString("F2", _culture)),
            "sats" => ("sats", i => (8 + (int)(Chance(i, 3) * 5)).ToString(_culture)),
            "distance" => ("dist", i => (start + (i * step) + Chance(i, 4)).ToString("F1", _culture)),
            "constant" => ("draft", _ => 0.35.ToString("F2", _culture)),
            "heading" => ("heading", i => ((i * 7 % 360) + Chance(i, 5)).ToString("F1", _culture)),
            _ => ("timestamp", i => (1.6e9 + (i * 2)).ToString("F0", _culture)),
        };
    }

    private string Write(char separator, bool comma)
    {
        if (comma) _culture.NumberFormat = new NumberFormatInfo { NumberDecimalSeparator = "," };
        StringBuilder text = new();
        double damage = _random.NextDouble();
        if (_header) text.AppendJoin(separator, _columns.Select(c => separator == ' ' ? c.Header.Replace(' ', '_') : c.Header)).Append('\n');
        for (int i = 0; i < Lake.Places.Count; i++)
        {
            // One file in ten has rows without a fix, one in twenty a stray far away.
            if (damage < 0.1 && i % 23 == 5) text.AppendJoin(separator, _columns.Select((c, k) => IsPlace(k) ? "0.0000" : c.Cell(i))).Append('\n');
            _rows.Add(i);
            text.AppendJoin(separator, _columns.Select(c => c.Cell(i))).Append('\n');
        }

        return text.ToString();
    }

    private bool IsPlace(int column) => column + 1 == PlaceNumbers.X || column + 1 == PlaceNumbers.Y;
}
