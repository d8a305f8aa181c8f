namespace SecondShore.Formats.Surveys;

/// <summary>Unit of depths or heights in a survey file.</summary>
public enum DepthUnit
{
    /// <summary>Metres.</summary>
    Metres,

    /// <summary>International feet.</summary>
    Feet,

    /// <summary>Fathoms of six feet.</summary>
    Fathoms,

    /// <summary>Decimetres.</summary>
    Decimetres,

    /// <summary>Centimetres.</summary>
    Centimetres,

    /// <summary>Millimetres.</summary>
    Millimetres,
}

/// <summary>Which way a survey's numbers grow.</summary>
public enum DepthSense
{
    /// <summary>Depth below the water surface, positive down.</summary>
    Depth,

    /// <summary>Height against the water surface, negative under water.</summary>
    NegativeDepth,

    /// <summary>Elevation above sea level.</summary>
    Elevation,
}

/// <summary>How the numbers of a position are written.</summary>
public enum AngleForm
{
    /// <summary>Degrees, or the lengths of a plane.</summary>
    Plain,

    /// <summary>Degrees and minutes in one number: 4807.038 is 48 degrees and 7.038 minutes.</summary>
    DegreeMinutes,
}

/// <summary>What the user knows of a survey file and sets, so that nothing needs to be found. Null leaves it to the file.</summary>
public sealed record SurveyOptions
{
    /// <summary>Unit of the depths.</summary>
    public DepthUnit? Unit { get; init; }

    /// <summary>Sense of the depths.</summary>
    public DepthSense? Sense { get; init; }

    /// <summary>Coordinate system: <c>EPSG:26918</c>, a number, or WKT.</summary>
    public string? Crs { get; init; }

    /// <summary>Header name or number (from 1) of the column with eastings or longitudes.</summary>
    public string? XColumn { get; init; }

    /// <summary>Header name or number (from 1) of the column with northings or latitudes.</summary>
    public string? YColumn { get; init; }

    /// <summary>Header or attribute name, or number (from 1), of the depth.</summary>
    public string? DepthColumn { get; init; }

    /// <summary>Column separator of a text file.</summary>
    public char? Separator { get; init; }

    /// <summary>Whether numbers are written with a decimal comma.</summary>
    public bool? DecimalComma { get; init; }

    /// <summary>How far the surface lay below full pool when these depths were taken, m.</summary>
    public double? BelowFullPoolM { get; init; }

    /// <summary>Elevation of the water surface that elevations are turned into depths with, m; null takes the lake's full pool.</summary>
    public double? SurfaceElevationM { get; init; }

    /// <summary>Depth of the transducer below the surface, m, added to depths taken below the transducer.</summary>
    public double? TransducerDepthM { get; init; }

    /// <summary>How the numbers of a position are written.</summary>
    public AngleForm? Angles { get; init; }

    /// <summary>Whether the two numbers of each position stand in each other's place; false says that they do not.</summary>
    public bool? Swapped { get; init; }

    /// <summary>Whether longitudes count to the west without a sign; false says that they do not.</summary>
    public bool? WestPositive { get; init; }

    /// <summary>The box that the lake lies in, degrees: what lies outside it is left out. South, west, north, east.</summary>
    public IReadOnlyList<double>? Area { get; init; }

    /// <summary>Name of the water meant, where the rows of a table name several; <c>*</c> takes all as one.</summary>
    public string? Water { get; init; }

    /// <summary>Whether to go on with the rest where many rows cannot be used.</summary>
    public bool? UseRest { get; init; }

    /// <summary>Why these were set, in words; kept in lake.json for the reader.</summary>
    public string? Why { get; init; }

    /// <summary>Whether the file is a survey at all; false leaves it alone.</summary>
    public bool Use { get; init; } = true;

    /// <summary>These options with another's where this one says nothing.</summary>
    public SurveyOptions Over(SurveyOptions? other) => other is null ? this : this with
    {
        Unit = Unit ?? other.Unit,
        Sense = Sense ?? other.Sense,
        Crs = Crs ?? other.Crs,
        XColumn = XColumn ?? other.XColumn,
        YColumn = YColumn ?? other.YColumn,
        DepthColumn = DepthColumn ?? other.DepthColumn,
        Separator = Separator ?? other.Separator,
        DecimalComma = DecimalComma ?? other.DecimalComma,
        BelowFullPoolM = BelowFullPoolM ?? other.BelowFullPoolM,
        SurfaceElevationM = SurfaceElevationM ?? other.SurfaceElevationM,
        TransducerDepthM = TransducerDepthM ?? other.TransducerDepthM,
        Angles = Angles ?? other.Angles,
        Swapped = Swapped ?? other.Swapped,
        WestPositive = WestPositive ?? other.WestPositive,
        Area = Area ?? other.Area,
        Water = Water ?? other.Water,
        UseRest = UseRest ?? other.UseRest,
        Why = Why ?? other.Why,
        Use = Use && other.Use,
    };
}
