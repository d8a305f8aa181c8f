using SecondShore.Answers.Documents;
using SecondShore.Answers.Lake;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Arms;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Passes;
using SecondShore.Engine.Basin.Shore;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;
using NamedPlace = SecondShore.Engine.Basin.Spots.NamedPlace;

namespace SecondShore.Answers.Questions;

/// <summary>Where does the thermocline meet good bottom, and which places first?</summary>
public static class ShoreAnswer
{
    /// <summary>How far above or below the thermocline a jig still counts as in reach of it, m: our choice, about 5 ft.</summary>
    public static readonly double ReachM = 1.5;

    /// <summary>Finds the bottom's forms at full pool: the slow part, the same for every outlook and level.</summary>
    /// <exception cref="CouldNotComputeException">The folder holds no survey.</exception>
    public static FormMap Forms(PreparedLake lake, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(lake);
        return BottomForms.Find(lake.RequireGrid(), FormOptions.Default, progress, cancel);
    }

    /// <summary>Traces the second shore and ranks the spots for an outlook.</summary>
    /// <param name="lake">The lake.</param>
    /// <param name="forms">What <see cref="Forms"/> found.</param>
    /// <param name="outlook">The outlook.</param>
    /// <param name="offsetM">[Ny*Nx] how much deeper than at rest the thermocline lies, m; null for still water.</param>
    /// <param name="maxSpots">Most spots wanted.</param>
    /// <param name="cancel">Stops the work.</param>
    public static ShoreResult Compute(PreparedLake lake, FormMap forms, Outlook outlook, float[]? offsetM = null, int maxSpots = 16, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(forms);
        ArgumentNullException.ThrowIfNull(outlook);
        DepthGrid grid = lake.GridAt(outlook.At);
        ArmOutlook whole = outlook.Lake;
        Belt? belt = whole.ThermoclineM is { } law ? Belt.Compute(grid, law, offsetM, ReachM, whole.ChanceStratified) : null;
        SecondShoreLine? line = whole.ThermoclineM is { } depth ? Trace(grid, depth.Quantile(0.5), offsetM) : null;
        IReadOnlyList<Spot> spots = SpotFinder.Find(
            new SpotRequest
            {
                Grid = grid,
                Forms = forms,
                ChanceInReach = belt?.Chance,
                ThermoclineM = whole.ThermoclineM,
                ChanceStratified = whole.ChanceStratified,
                Cover = lake.Folder.Cover,
                ArmOfCell = lake.Arms is { } arms ? Array.ConvertAll(arms.Label, l => (int)l) : null,
                Arms = lake.Arms is { } set ? [.. set.Arms.Select(a => State(a, outlook))] : [],
                Names = [.. lake.Folder.Marks.Where(m => m.Kind != PlaceMarkKind.Arm).Select(m => new NamedPlace(m.Name, grid.Projection.ToPlane(m.Place), Math.Max(m.RadiusM, 150)))],
                MaxCount = maxSpots,
            },
            cancel);
        return new ShoreResult(lake, outlook, grid, forms, line, belt, spots);
    }

    private static SecondShoreLine Trace(DepthGrid grid, double restM, float[]? offsetM) => offsetM is null
        ? SecondShoreLine.Trace(grid, restM)
        : SecondShoreLine.Trace(grid, Array.ConvertAll(offsetM, o => (float)Math.Max(0, restM + o)));

    /// <summary>The document of an answer.</summary>
    public static ShoreDocument Document(ShoreResult result, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(units);
        return new ShoreDocument
        {
            Lake = result.Lake.Site.Name,
            At = result.Outlook.At,
            ThermoclineM = SpreadDocument.From(result.Outlook.Lake.ThermoclineM),
            SecondShoreLengthM = Math.Round(result.Line?.LengthM ?? 0, 1),
            BeltAreaM2 = Math.Round(result.Belt?.AreaAboveM2(0.5) ?? 0, 0),
            Spots = [.. result.Spots.Select(s => Row(s, result.Grid.Projection, units))],
            Assumed = result.Outlook.Assumed.Say(units),
        };
    }

    private static ArmState State(Arm arm, Outlook outlook)
    {
        ArmOutlook? of = outlook.Arms.FirstOrDefault(a => a.Name == arm.Name);
        return new ArmState(arm.Name, (of ?? outlook.Lake).State switch
        {
            LayerState.Stratified => ArmWater.Layered,
            LayerState.Turning => ArmWater.Turning,
            _ => ArmWater.Settled,
        });
    }

    private static ShoreDocument.SpotRow Row(Spot spot, LocalProjection projection, UnitSystem units) => new()
    {
        Id = spot.Id,
        Rank = spot.Rank,
        Name = spot.Name.Length > 0 ? spot.Name : null,
        Lat = Math.Round(spot.At.LatDeg, 6),
        Lon = Math.Round(spot.At.LonDeg, 6),
        DepthM = Math.Round(spot.DepthM, 2),
        ChanceInReach = Math.Round(spot.ChanceInReach, 3),
        Value = SpreadDocument.From(spot.Value, 1),
        Form = FormWords.Of(spot.Form),
        Reasons = [.. spot.Reasons.Select(r => ReasonText.Of(r, !units.IsMetric, units.Speech))],
        Passes = [.. spot.Passes.Select(p => PassRow(p, projection))],
    };

    private static ShoreDocument.PassRow PassRow(Pass pass, LocalProjection projection)
    {
        double[] latLon = new double[pass.Line.Count * 2];
        for (int i = 0; i < pass.Line.Count; i++)
        {
            GeoPoint place = projection.ToGeo(pass.Line[i]);
            latLon[2 * i] = Math.Round(place.LatDeg, 6);
            latLon[(2 * i) + 1] = Math.Round(place.LonDeg, 6);
        }

        return new ShoreDocument.PassRow(Math.Round(pass.LengthM, 1), Math.Round(pass.HeadingDeg), Math.Round(pass.ShallowM, 2), Math.Round(pass.DeepM, 2), latLon);
    }
}
