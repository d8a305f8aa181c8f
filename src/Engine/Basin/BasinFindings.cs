namespace SecondShore.Engine.Basin;

/// <summary>What is found, assumed and refused about the bottom.</summary>
public static class BasinFindings
{
    /// <summary>An area by depth of fewer than two depths.</summary>
    public static readonly FindingKind TooFewDepths = new("basin.too-few-depths");

    /// <summary>An area by depth that does not begin at the surface.</summary>
    public static readonly FindingKind NoSurface = new("basin.no-surface", "first");

    /// <summary>A surface without area.</summary>
    public static readonly FindingKind NoArea = new("basin.no-area", "area");

    /// <summary>Depths that do not increase.</summary>
    public static readonly FindingKind DepthsFall = new("basin.depths-fall", "depth", "before");

    /// <summary>An area larger than the one above it.</summary>
    public static readonly FindingKind AreaGrows = new("basin.area-grows", "area", "depth", "above");

    /// <summary>A survey without anything that lies somewhere.</summary>
    public static readonly FindingKind NothingToGrid = new("basin.nothing-to-grid");

    /// <summary>A shoreline alone.</summary>
    public static readonly FindingKind NoDepths = new("basin.no-depths");

    /// <summary>Depths that all lie dry.</summary>
    public static readonly FindingKind NothingBelowPool = new("basin.nothing-below-pool");

    /// <summary>A survey spread over a land.</summary>
    public static readonly FindingKind TooWide = new("basin.too-wide", "widthKm");

    /// <summary>Soundings on one line.</summary>
    public static readonly FindingKind OneLine = new("basin.one-line");

    /// <summary>A grid without water.</summary>
    public static readonly FindingKind NoWater = new("basin.no-water");

    /// <summary>A shoreline around nothing.</summary>
    public static readonly FindingKind EmptyShoreline = new("basin.empty-shoreline");

    /// <summary>A raster above the water.</summary>
    public static readonly FindingKind DryRaster = new("basin.dry-raster", "name");

    /// <summary>Soundings nobody can place.</summary>
    public static readonly FindingKind UnplacedSoundings = new("basin.unplaced-soundings", "count");

    /// <summary>An outline of another water.</summary>
    public static readonly FindingKind OtherShore = new("basin.other-shore", "percent");

    /// <summary>Soundings far off.</summary>
    public static readonly FindingKind Strays = new("basin.strays", "count");

    /// <summary>Soundings that their neighbours rule out.</summary>
    public static readonly FindingKind FalseEchoes = new("basin.false-echoes", "count");

    /// <summary>An outline of several waters.</summary>
    public static readonly FindingKind SeveralWaters = new("basin.several-waters", "count");

    /// <summary>A raster of several waters.</summary>
    public static readonly FindingKind SeparateWaters = new("basin.separate-waters", "count", "kept", "dropped");

    /// <summary>An edge of the water drawn around the soundings.</summary>
    public static readonly FindingKind EdgeDrawn = new("basin.edge-drawn", "longest");

    /// <summary>Water without a sounding near.</summary>
    public static readonly FindingKind GuessedShallows = new("basin.guessed-shallows", "area");

    /// <summary>An outline without water.</summary>
    public static readonly FindingKind EmptyOutline = new("basin.empty-outline");

    /// <summary>A dam nobody has shown.</summary>
    public static readonly FindingKind GuessedDam = new("basin.guessed-dam");

    /// <summary>A greatest depth by the lake's area.</summary>
    public static readonly FindingKind DeepestFromArea = new("basin.deepest-from-area", "deepest", "low", "high");

    /// <summary>A greatest depth by the mean depth.</summary>
    public static readonly FindingKind DeepestFromMean = new("basin.deepest-from-mean", "deepest");
}
