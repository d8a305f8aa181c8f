namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>Words that headers of surveys use, with what they stand for. Weights are log-odds, stated in docs/decisions/0023.</summary>
internal static class WordList
{
    /// <summary>From this weight on, a word for something else outweighs "depth" in the same name ("depth error").</summary>
    public const double Veto = 7;

    private const double Sure = 7;
    private const double Likely = 5;
    private const double Letter = 4;

    /// <summary>Words that say nothing.</summary>
    public static readonly HashSet<string> Filler =
    [
        "in", "of", "the", "at", "to", "from", "and", "proc", "processed", "corrected", "corr", "raw", "final", "gps", "utm", "wgs", "dd", "deg", "degrees",
        "decimal", "grad", "dez", "coord", "coordinate", "coordinates", "koordinate", "point", "field", "col", "column", "measured", "mean", "avg", "med", "bottom", "bed", "lake", "see",
    ];

    /// <summary>Units and how they are written.</summary>
    public static readonly Dictionary<string, DepthUnit> Units = new (DepthUnit Unit, string[] Words)[]
    {
        (DepthUnit.Metres,
        [
            "m", "meter", "meters", "metre", "metres", "mtr", "mtrs", "metri", "metros", "metry", "metr", "metro", "metra",
            "metria", "mts", "м", "метр", "метров", "метры", "米", "公尺"
        ]),
        (DepthUnit.Feet,
        [
            "ft", "feet", "foot", "fuss", "pies", "usft", "pied", "pieds", "pie", "piedi", "fot", "fod", "jalka", "jalkaa",
            "voet", "stopy", "foots", "фут", "футы", "футов", "英尺"
        ]),
        (DepthUnit.Fathoms,
        [
            "fm", "fathom", "fathoms", "fth", "ftm"
        ]),
        (DepthUnit.Centimetres,
        [
            "cm", "centimeter", "centimeters", "centimetre", "centimetres", "zentimeter", "см", "厘米", "公分"
        ]),
        (DepthUnit.Millimetres,
        [
            "mm", "millimeter", "millimeters", "millimetres", "мм"
        ]),
        (DepthUnit.Decimetres,
        [
            "dm", "decimeter", "decimetre", "dezimeter", "дм"
        ]),
    }.SelectMany(u => u.Words.Select(w => (w, u.Unit))).ToDictionary(StringComparer.Ordinal);

    /// <summary>Old measures that differ from land to land: whoever names one is asked.</summary>
    public static readonly HashSet<string> OldUnits =
        ["famn", "famnar", "favn", "favner", "faden", "klafter", "brasse", "brasses", "braza", "brazas", "braccia", "sylta", "vaam", "vadem", "sazhen", "сажень", "сажени", "арш", "elle", "ellen", "yard", "yards", "yd", "inch", "inches", "zoll"];

    private static readonly Dictionary<string, (ColumnRole Role, double Weight)> Words = new(StringComparer.Ordinal);

    static WordList()
    {
        Add(ColumnRole.Depth, Sure, "depth", "depths", "tiefe", "wassertiefe", "seetiefe", "profondeur", "profundidad", "profondita", "profundidade", "profundid", "dybde",
            "djup", "vattendjup", "diepte", "waterdiepte", "glebokosc", "hloubka", "syvyys", "glubina", "derinlik", "sounding", "soundings", "sonde", "lotung", "dybd",
            "глубина", "глубины", "глуб", "глибина", "дълбочина", "дубина", "dubina", "globina", "gylis", "dzilums", "sugavus", "dypi", "dyp", "dypde", "profunditat", "水深", "深度", "深さ", "수심", "βαθος",
            "peilung", "dbs", "dbt", "dpt", "bathymetry", "bathy", "waterdepth", "tiefen", "profondeurs", "adancime", "melyseg");
        Add(ColumnRole.Depth, Letter - 1, "d", "dp");
        Add(ColumnRole.Depth, Likely, "dep", "deph", "dept", "dpth", "prof", "tief", "glub", "sonar", "echo", "echolot");
        Add(ColumnRole.Height, Likely, "elevation", "elevations", "elev", "altitude", "height", "heights", "hoehe", "hohe", "hgt", "cota", "quota", "kote", "kota", "wysokosc", "rzedna",
            "rl", "ele", "sohle", "sohlhoehe", "gelaendehoehe", "hauteur", "altura", "hoyde", "hoejde", "hojd", "hoogte", "nadmorska", "nhn", "mnn", "asl", "masl", "navd", "ngvd", "contour", "isobath", "высота", "отметка", "標高", "高程", "海拔", "korkeus");
        Add(ColumnRole.Height, Letter - 1.5, "h", "alt", "msl");
        Add(ColumnRole.Bare, Letter - 1, "z", "val", "value", "values", "grid", "gridcode", "band");
        Add(ColumnRole.Lat, Sure + 2, "lat", "latitude", "latitud", "latitudine", "latitudes", "lats", "breite", "breitengrad", "geobreite", "szerokosc", "bredde", "breddegrad", "latit", "leveysaste", "latdeg", "latdd", "широта", "широти", "緯度", "纬度", "위도", "enlem", "bredd", "breddgrad", "sirina", "laius");
        Add(ColumnRole.Lon, Sure + 2, "lon", "long", "lng", "longitude", "longitud", "longitudine", "longitudes", "lons", "longs", "laenge", "laengengrad", "dlugosc", "lengde", "lengdegrad",
            "longit", "pituusaste", "londeg", "londd", "долгота", "довгота", "経度", "經度", "经度", "경도", "boylam", "laengd", "langd", "laengdgrad", "duzina", "pikkus");
        Add(ColumnRole.East, Sure, "easting", "eastings", "east", "rechtswert", "ostwert", "este", "ost", "xcoord", "utme", "utmx", "est", "xutm", "oost", "rw", "abscissa", "easing", "xkoord");
        Add(ColumnRole.North, Sure, "northing", "northings", "north", "hochwert", "nordwert", "norte", "nord", "ycoord", "utmn", "utmy", "yutm", "noord", "hw", "ordinate", "ykoord");
        Add(ColumnRole.East, Letter, "x", "e");
        Add(ColumnRole.North, Letter, "y", "n");
        Add(ColumnRole.Other, Veto, "time", "date", "datetime", "datum", "zeit", "uhrzeit", "utc", "timestamp", "czas", "hour", "minute", "second", "seconds", "epoch", "year", "month", "day",
            "temp", "temperature", "temperatur", "wtemp", "speed", "sog", "course", "cog", "heading", "hdg", "kurs", "sats", "satellites", "sat", "hdop", "pdop", "vdop",
            "voltage", "volt", "battery", "accuracy", "error", "err", "std", "stdev", "sigma", "uncertainty", "uncert", "quality", "confidence", "secchi", "sichttiefe", "sichttief",
            "tide", "salinity", "conductivity", "turbidity", "chlorophyll", "oxygen", "pitch", "roll", "heave", "yaw", "snr", "intensity", "amplitude", "strength", "hardness",
            "distance", "dist", "chainage", "entfernung", "area", "perimeter", "volume", "length", "shape", "draft", "draught", "offset", "thickness", "sediment", "muck", "mud", "sv", "geschwindigkeit", "velocity", "humidity", "pressure",
            "wind", "magnetic", "bearing", "residual", "geoid", "undulation", "antenna", "antenne", "weed", "vegetation", "biomass", "sigma", "rms", "diff", "model", "predicted", "acres", "ph");
        Add(ColumnRole.Other, Letter, "id", "nr", "no", "num", "number", "nummer", "fid", "oid", "objectid", "index", "idx", "pt", "ping", "pings", "rec", "record", "row", "count", "line", "profile",
            "transect", "lp", "lfd", "sample", "station", "name", "site", "code", "level", "waterlevel", "stage", "track", "waypoint", "zone", "seq", "sequence");
    }

    /// <summary>Whether a word only names a unit.</summary>
    public static bool IsUnit(string word) => Units.ContainsKey(word);

    /// <summary>A unit written on to a word, as in <c>depthft</c>.</summary>
    public static DepthUnit? UnitAtEnd(string word)
    {
        foreach ((string unit, DepthUnit means) in Units)
            if (word.Length > unit.Length + 1 && word.EndsWith(unit, StringComparison.Ordinal) && Words.TryGetValue(word[..^unit.Length], out (ColumnRole Role, double _) role)
                && role.Role is ColumnRole.Depth or ColumnRole.Height or ColumnRole.Bare) return means;
        return null;
    }

    /// <summary>What a word stands for; misspelt by one letter it counts a little less.</summary>
    public static (ColumnRole Role, double Weight) RoleOf(string word)
    {
        if (Words.TryGetValue(word, out (ColumnRole Role, double Weight) exact)) return exact;
        foreach ((string unit, _) in Units)
            if (word.Length > unit.Length + 1 && word.EndsWith(unit, StringComparison.Ordinal) && Words.TryGetValue(word[..^unit.Length], out exact)
                && exact.Role is ColumnRole.Depth or ColumnRole.Height or ColumnRole.Bare) return exact;
        foreach (string before in new[] { "gps", "utm" })
            if (word.StartsWith(before, StringComparison.Ordinal) && Words.TryGetValue(word[before.Length..], out exact)) return exact;
        if (word.Contains("sicht", StringComparison.Ordinal) || word.Contains("temperat", StringComparison.Ordinal)) return (ColumnRole.Other, Veto);
        foreach (string stem in new[] { "depth", "tiefe", "profond", "profund", "diepte", "dybde" })
            if (word.Length > stem.Length && word.Contains(stem, StringComparison.Ordinal)) return (ColumnRole.Depth, Likely);
        if (word.Length < 5) return (ColumnRole.Unknown, 0);
        foreach ((string known, (ColumnRole role, double weight)) in Words)
            if (known.Length >= 5 && role != ColumnRole.Other && Math.Abs(known.Length - word.Length) <= 1 && OneApart(known, word)) return (role, weight - 1.5);
        return (ColumnRole.Unknown, 0);
    }

    private static void Add(ColumnRole role, double weight, params string[] words)
    {
        foreach (string word in words) Words[word] = (role, weight);
    }

    // One letter added, left out, changed, or two neighbours exchanged.
    private static bool OneApart(string a, string b)
    {
        if (a.Length > b.Length) (a, b) = (b, a);
        int i = 0;
        while (i < a.Length && a[i] == b[i]) i++;
        if (a.Length < b.Length) return a.AsSpan(i).SequenceEqual(b.AsSpan(i + 1));
        if (i == a.Length) return true;
        if (a.AsSpan(i + 1).SequenceEqual(b.AsSpan(i + 1))) return true;
        return i + 1 < a.Length && a[i] == b[i + 1] && a[i + 1] == b[i] && a.AsSpan(i + 2).SequenceEqual(b.AsSpan(i + 2));
    }
}
