using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Arms;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Motion;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Lake;

/// <summary>
/// A lake folder made ready once, so that every question starts from the same bottom: the survey gridded, arms split,
/// area by depth known. Immutable but for what it remembers of the last level.
/// </summary>
public sealed class PreparedLake
{
    // Without survey, area or depth a modest lake is assumed, and said.
    private const double AssumedAreaM2 = 2e6;
    internal const double AssumedMaxDepthM = 15;

    // A water line moved by less is the same shore.
    private const double SameLevelM = 0.01;
    private Levelled? _levelled;

    private PreparedLake(LakeFolder folder, LakeSite site, DepthGrid? fullPool, ArmSet? arms, Hypsography hypsography, IReadOnlyList<Finding> assumed)
    {
        (Folder, Site, FullPool, Arms, Hypsography, Assumed) = (folder, site, fullPool, arms, hypsography, assumed);
    }

    /// <summary>The files as read.</summary>
    public LakeFolder Folder { get; }

    /// <summary>The site, completed from the survey where lake.json is silent.</summary>
    public LakeSite Site { get; }

    /// <summary>Depths at full pool; null where the folder holds no survey.</summary>
    public DepthGrid? FullPool { get; }

    /// <summary>The arms at full pool; null without a survey.</summary>
    public ArmSet? Arms { get; }

    /// <summary>Area by depth of the whole lake at full pool.</summary>
    public Hypsography Hypsography { get; }

    /// <summary>What had to be assumed.</summary>
    public IReadOnlyList<Finding> Assumed { get; }

    /// <summary>Units the lake's folder asks for.</summary>
    public UnitSystem Units => Folder.DisplayUnits == DisplayUnits.UsCustomary ? UnitSystem.Feet : UnitSystem.Metric;

    /// <summary>Prepares a lake.</summary>
    /// <param name="folder">A folder whose <see cref="LakeFolder.IsUsable"/> holds.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="CouldNotComputeException">The folder gives no lake: the message says what would.</exception>
    public static PreparedLake From(LakeFolder folder, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(folder);
        if (!folder.HasSite)
            throw new CouldNotComputeException(AnswerFindings.NoPosition.Of(folder.Files.Name));

        List<Finding> assumed = [.. folder.Assumed];
        GriddedLake? gridded = null;
        if (folder.Survey is not null)
        {
            Survey survey = folder.Survey.Shoreline is null ? folder.Survey with { Shoreline = folder.Shoreline } : folder.Survey;
            gridded = SurveyGridder.Grid(survey, new GridOptions { OnTheLake = folder.Document.Position }, progress, cancel);
            if (gridded.Refusal is not null && gridded.OutlineAreaM2 is null && folder.Hypsography is null) throw new CouldNotComputeException(gridded.Refusal);
            assumed.AddRange(gridded.Assumed);
        }

        Hypsography hypsography = folder.Hypsography ?? gridded?.Hypsography ?? FromFacts(folder.Site, gridded?.OutlineAreaM2, folder.Document.MeanDepthM, assumed);
        LakeSite site = folder.Site with
        {
            SurfaceAreaM2 = folder.Site.SurfaceAreaM2 ?? hypsography.SurfaceAreaM2,
            MaxDepthM = folder.Site.MaxDepthM ?? hypsography.MaxDepthM,
        };
        ArmOptions naming = new() { Names = [.. folder.Marks.Where(m => m.Kind == PlaceMarkKind.Arm).Select(m => new NamedPlace(m.Name, m.Place))] };
        ArmSet? arms = gridded?.Grid is { } grid ? ArmSplitter.Split(grid, naming, cancel: cancel) : null;
        return new PreparedLake(folder, site, gridded?.Grid, arms, hypsography, assumed);
    }

    /// <summary>The same bottom with other readings, levels or log: nothing is gridded anew.</summary>
    /// <param name="folder">A folder with the same survey and site.</param>
    public PreparedLake With(LakeFolder folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        return new PreparedLake(folder, Site, FullPool, Arms, Hypsography, Assumed) { _levelled = _levelled };
    }

    /// <summary>Depths at the level of an instant.</summary>
    /// <exception cref="CouldNotComputeException">The folder holds no survey.</exception>
    public DepthGrid GridAt(DateTimeOffset at) => RequireGrid().Lowered(PoolDrop.AtM(Folder.Levels, at));

    /// <summary>Fetch at the level of an instant; kept, since the wind, the day and the spots of one day ask for the same.</summary>
    /// <exception cref="CouldNotComputeException">The folder holds no survey.</exception>
    public FetchField FetchAt(DateTimeOffset at)
    {
        double dropM = PoolDrop.AtM(Folder.Levels, at);
        if (_levelled is { } kept && Math.Abs(kept.DropM - dropM) < SameLevelM) return kept.Fetch;
        FetchField fetch = FetchField.Of(GridAt(at));
        _levelled = new Levelled(dropM, fetch);
        return fetch;
    }

    /// <summary>Depths at full pool.</summary>
    /// <exception cref="CouldNotComputeException">The folder holds no survey.</exception>
    public DepthGrid RequireGrid() => FullPool ?? throw new CouldNotComputeException(
        (Folder.Survey is null ? AnswerFindings.NoSurvey : AnswerFindings.OnlyOutline).Of(Folder.Files.Name));

    private static Hypsography FromFacts(LakeSite site, double? outlineAreaM2, double? meanDepthM, List<Finding> assumed)
    {
        double areaM2 = site.SurfaceAreaM2 ?? outlineAreaM2 ?? AssumedAreaM2, maxDepthM = site.MaxDepthM ?? AssumedMaxDepthM;
        FindingKind bowl = outlineAreaM2 is null ? AnswerFindings.BowlTaken : site.MaxDepthM is null ? AnswerFindings.BowlInOutline : AnswerFindings.BowlInOutlineOfDepth;
        assumed.Add(bowl.Of(Told.Area(areaM2), Told.Depth(maxDepthM)));
        return Hypsography.FromShape(areaM2, maxDepthM, meanDepthM);
    }

    private sealed record Levelled(double DropM, FetchField Fetch);
}
