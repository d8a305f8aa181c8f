using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Passes;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Basin.Spots;

/// <summary>
/// Ranks places on the belt, and, as far as the layers may be gone, places that do not need them. Cheap: forms are found once,
/// ranking can run again for every day and every hour. Method: docs/science/spots.md.
/// </summary>
public static class SpotFinder
{
    /// <summary>Finds spots, best first.</summary>
    /// <param name="request">What is known.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">An array's length is not the number of cells, or a number is out of range.</exception>
    public static IReadOnlyList<Spot> Find(SpotRequest request, CancellationToken cancel = default)
    {
        Require.NotNull(request);
        Require.SameLength(request.Forms.Frame.Count, request.Grid.Frame.Count, nameof(request));
        if (request.ChanceInReach is { } chance) Require.SameLength(chance.Length, request.Grid.Frame.Count, nameof(request));
        if (request.ArmOfCell is { } arms) Require.SameLength(arms.Length, request.Grid.Frame.Count, nameof(request));
        Require.InRange(request.ChanceStratified, 0, 1);
        Require.InRange(request.MaxCount, 1, 200);
        FormField field = new(request);
        cancel.ThrowIfCancellationRequested();
        Candidate[] candidates = Rank(request, field);
        cancel.ThrowIfCancellationRequested();
        return Choose(request, field, candidates, cancel);
    }

    private readonly record struct Candidate(int Cell, SpotKind Kind, double Score);

    private static Candidate[] Rank(SpotRequest request, FormField field)
    {
        DepthGrid grid = request.Grid;
        SpotWeights w = request.Weights;
        double gone = request.ThermoclineM is null ? 1 : 1 - request.ChanceStratified;
        List<Candidate> found = [];
        for (int i = 0; i < grid.DepthM.Length; i++)
        {
            if (!(grid.DepthM[i] > 0)) continue;
            double offered = field.First[i] + (w.SecondFormShare * field.Second[i]) + (w.Cover * field.Cover[i]);
            if (offered <= 0) continue;
            double chance = request.ThermoclineM is null || request.ChanceInReach is null ? 0 : request.ChanceInReach[i];
            double belt = chance >= w.LeastChance ? chance * (offered + Sharpness(grid, i, w)) : 0;
            (double loose, SpotKind kind) = gone > 0.05 ? WithoutLayers(request, field, i, offered) : (0, SpotKind.Belt);
            loose *= gone;
            if (belt > 0 && belt >= loose) found.Add(new Candidate(i, SpotKind.Belt, belt));
            else if (loose > 0) found.Add(new Candidate(i, kind, loose));
        }

        Candidate[] sorted = [.. found];
        Array.Sort(sorted, (a, b) => a.Score != b.Score ? b.Score.CompareTo(a.Score) : a.Cell.CompareTo(b.Cell));
        return sorted;
    }

    private static double Sharpness(DepthGrid grid, int i, SpotWeights w) =>
        w.EdgeSharpness * Math.Min(1, Surroundings.Slope(grid, i % grid.Frame.Nx, i / grid.Frame.Nx) / LooseSpots.SharpTan);

    // What a place is worth when nothing holds the fish at one depth.
    private static (double Score, SpotKind Kind) WithoutLayers(SpotRequest request, FormField field, int i, double offered)
    {
        SpotWeights w = request.Weights;
        float depth = request.Grid.DepthM[i];
        if (field.FirstForm[i] < 0) return (0, SpotKind.Belt);
        FormClass form = request.Forms.Forms[field.FirstForm[i]].Class;
        double arm = ArmOf(request, i) switch { { Water: ArmWater.Turning } => w.TurningArm, { Water: ArmWater.Settled } => w.SettledArm, null => 0.5 * (w.TurningArm + w.SettledArm), _ => LooseSpots.OtherArmShare * w.SettledArm };
        switch (form)
        {
            case FormClass.BluffEnd or FormClass.BluffWall when depth is > LooseSpots.BluffFromM and < LooseSpots.BluffToM:
                return (arm * w.Steep * (offered + Sharpness(request.Grid, i, w) + LooseSpots.BluffPoints), SpotKind.Steep);
            case FormClass.MainChannel or FormClass.ChannelBend or FormClass.Junction when depth is > LooseSpots.ChannelFromM and < LooseSpots.ChannelToM:
                return (arm * ((LooseSpots.OfferedShare * offered) + Sharpness(request.Grid, i, w)), SpotKind.ChannelEdge);
            case FormClass.SideChannel when depth is > LooseSpots.SideFromM and <= LooseSpots.SideToM:
                return (arm * w.Shallow * (offered + LooseSpots.SidePoints), SpotKind.Shallow);
            case FormClass.SideChannel when depth < LooseSpots.ChannelToM:
                return (arm * LooseSpots.OfferedShare * offered, SpotKind.ChannelEdge);
            case FormClass.Flat when depth is > LooseSpots.FlatFromM and < LooseSpots.FlatToM && field.Second[i] > 0:
                return (arm * w.Shallow * (offered + (LooseSpots.WindyFlatPoints * WindOn(request, i))), SpotKind.Shallow);
            case FormClass.MainPoint or FormClass.SecondaryPoint or FormClass.Hump or FormClass.Ledge or FormClass.Saddle
                when depth is > LooseSpots.RiseFromM and < LooseSpots.RiseToM:
                double steep = Surroundings.Slope(request.Grid, i % request.Grid.Frame.Nx, i / request.Grid.Frame.Nx);
                return steep > LooseSpots.SteepTan ? (arm * w.Steep * LooseSpots.OfferedShare * offered, SpotKind.Steep) : (0, SpotKind.Belt);
            default:
                return (0, SpotKind.Belt);
        }
    }

    // 1 where the wind has an open run of a kilometre onto the place.
    private static double WindOn(SpotRequest request, int i)
    {
        if (double.IsNaN(request.WindFromDeg)) return 0;
        double east = Math.Sin(double.DegreesToRadians(request.WindFromDeg)), north = Math.Cos(double.DegreesToRadians(request.WindFromDeg)), open = 0;
        PlanePoint at = request.Grid.Frame.Centre(i);
        for (double r = 50; r <= 1000; r += 50, open += 0.05)
            if (double.IsNaN(request.Grid.DepthAtM(new PlanePoint(at.XM + (r * east), at.YM + (r * north))))) break;
        return Math.Min(1, open);
    }

    private static ArmState? ArmOf(SpotRequest request, int i)
    {
        if (request.ArmOfCell is null) return null;
        int arm = request.ArmOfCell[i];
        return arm >= 0 && arm < request.Arms.Count ? request.Arms[arm] : null;
    }

    private static List<Spot> Choose(SpotRequest request, FormField field, Candidate[] candidates, CancellationToken cancel)
    {
        DepthGrid grid = request.Grid;
        double apart = request.Weights.ApartYardsticks * request.Forms.YardstickM, apart2 = apart * apart;
        List<(Candidate Candidate, PlanePoint Place, Surroundings Ground, double Value)> kept = [];
        Dictionary<int, int> perForm = [];
        int[] perClass = new int[Enum.GetValues<FormClass>().Length];
        int mostPerClass = Math.Max(2, (int)Math.Ceiling(0.4 * request.MaxCount));
        // Half again as many are kept as asked for: what lies about a place may still change its rank.
        foreach (Candidate candidate in candidates)
        {
            if (kept.Count >= request.MaxCount + (request.MaxCount / 2)) break;
            PlanePoint place = grid.Frame.Centre(candidate.Cell);
            int form = field.FirstForm[candidate.Cell];
            if (form >= 0 && perForm.GetValueOrDefault(form) >= request.Weights.MostPerForm) continue;
            if (form >= 0 && perClass[(int)request.Forms.Forms[form].Class] >= mostPerClass) continue;
            bool free = true;
            foreach (var other in kept)
            {
                double need = field.FirstForm[other.Candidate.Cell] == form && form >= 0 ? 4 * apart2 : apart2;
                if (other.Place.SquaredDistanceToM2(place) < need) { free = false; break; }
            }

            if (!free) continue;
            Surroundings ground = Surroundings.Of(grid, request.ChanceInReach, candidate.Cell, request.Forms.YardstickM, request.Weights.DeepWaterReachM);
            perForm[form] = perForm.GetValueOrDefault(form) + 1;
            if (form >= 0) perClass[(int)request.Forms.Forms[form].Class]++;
            kept.Add((candidate, place, ground, candidate.Score + (Extra(request.Weights, ground) * InPlay(request, candidate))));
        }

        kept.Sort((a, b) => a.Value != b.Value ? b.Value.CompareTo(a.Value) : a.Candidate.Cell.CompareTo(b.Candidate.Cell));
        List<Spot> spots = [];
        foreach (var (candidate, place, ground, value) in kept)
        {
            if (spots.Count >= request.MaxCount) break;
            cancel.ThrowIfCancellationRequested();
            spots.Add(Describe(request, field, candidate, place, ground, value, spots.Count + 1));
        }

        return spots;
    }

    private static double InPlay(SpotRequest request, Candidate candidate) => candidate.Kind == SpotKind.Belt
        ? request.ChanceInReach![candidate.Cell] : (request.ThermoclineM is null ? 1 : 1 - request.ChanceStratified) * 0.7;

    private static double Extra(SpotWeights w, Surroundings ground) =>
        (w.DepthChange * Math.Clamp((ground.DeepM - ground.ShallowM) / 6, 0, 1))
        + (double.IsNaN(ground.ToDeepWaterM) ? 0 : w.DeepWater * (1 - (ground.ToDeepWaterM / (w.DeepWaterReachM * 1.2))));

    private static Spot Describe(SpotRequest request, FormField field, Candidate candidate, PlanePoint place, Surroundings ground, double value, int rank)
    {
        int cell = candidate.Cell, formId = field.FirstForm[cell];
        BottomForm? form = formId >= 0 ? request.Forms.Forms[formId] : null;
        double sure = form?.ConfidenceShare ?? 0.3, depth = request.Grid.DepthM[cell];
        bool belt = candidate.Kind == SpotKind.Belt;
        double chance = belt ? request.ChanceInReach![cell] : 0;
        Spread around = belt ? Around(ground.Chance, chance) : default;
        double low = belt ? around.P10 / Math.Max(chance, 1e-6) : 0.6, high = belt ? around.P90 / Math.Max(chance, 1e-6) : 1.3;
        return new Spot
        {
            Id = FormattableString.Invariant($"s{cell}"),
            Rank = rank,
            Letter = LetterOf(rank),
            Kind = candidate.Kind,
            Place = place,
            At = request.Grid.Projection.ToGeo(place),
            DepthM = depth,
            Form = form?.Class ?? FormClass.Slope,
            FormId = formId,
            Name = NameOf(request, place),
            ChanceInReach = chance,
            Value = new Spread(value * low * (0.5 + (0.5 * sure)), value, value * high * (1.25 - (0.25 * sure))),
            Reasons = SpotReasons.Of(request, field, candidate.Cell, candidate.Kind, ground, ArmOf(request, cell)),
            BoundingSlopeDeg = ground.SlopeDeg,
            Passes = PassesOf(request, candidate, place, depth, form),
        };
    }

    private static Spread Around(Spread spread, double chance) =>
        new(Math.Min(spread.P10, chance), chance, Math.Max(spread.P90, chance));

    private static List<Pass> PassesOf(SpotRequest request, Candidate candidate, PlanePoint place, double depth, BottomForm? form)
    {
        bool belt = candidate.Kind == SpotKind.Belt && request.ThermoclineM is not null;
        Spread step = belt ? request.ThermoclineM!.Spread : default;
        double target = belt ? Math.Clamp(depth, step.P10, step.P90) : depth, reach = belt ? Math.Max(1.5, (0.6 * (step.P90 - step.P10)) + 1) : Math.Max(1.5, 0.25 * depth);
        reach = Math.Max(reach, Math.Abs(depth - target) + 0.5);
        float[]? chance = belt ? request.ChanceInReach : null;
        List<Pass> passes = [];
        double axis = form?.OrientationDeg ?? double.NaN;
        Pass? along = PassPlanner.Along(request.Grid, chance, place, target, reach, request.PassOptions, axis);
        // On a wall a boat's length is several metres of depth: the line may stray further before there is none.
        along ??= PassPlanner.Along(request.Grid, chance, place, target, 3 * reach, request.PassOptions, axis);
        if (along is not null) passes.Add(along);
        IReadOnlyList<PlanePoint>? line = form switch
        {
            null => null,
            { LeftEdge.Count: > 0 } => Nearer(form.LeftEdge, form.RightEdge, place),
            { Geometry.Shape: FormShape.Line } => form.Geometry.Points,
            _ => null,
        };
        if (line is not null && PassPlanner.Over(request.Grid, chance, line, place, target, reach, request.PassOptions) is { } over) passes.Add(over);
        passes.Sort((a, b) => (b.LengthM * (0.2 + b.MeanChanceShare)).CompareTo(a.LengthM * (0.2 + a.MeanChanceShare)));
        return passes;
    }

    private static IReadOnlyList<PlanePoint> Nearer(IReadOnlyList<PlanePoint> a, IReadOnlyList<PlanePoint> b, PlanePoint place)
    {
        return Least(a) <= Least(b) ? a : b;

        double Least(IReadOnlyList<PlanePoint> line)
        {
            double least = double.MaxValue;
            foreach (PlanePoint p in line) least = Math.Min(least, p.SquaredDistanceToM2(place));
            return least;
        }
    }

    private static string NameOf(SpotRequest request, PlanePoint place)
    {
        string name = "";
        double best = double.MaxValue;
        foreach (NamedPlace named in request.Names)
        {
            double d = named.Place.DistanceToM(place);
            if (d <= Math.Max(named.RadiusM, 60) && d < best) (best, name) = (d, named.Name);
        }

        return name;
    }

    /// <summary>A for 1, Z for 26, AA for 27.</summary>
    public static string LetterOf(int rank)
    {
        string letters = "";
        for (int n = rank; n > 0; n = (n - 1) / 26) letters = (char)('A' + ((n - 1) % 26)) + letters;
        return letters;
    }
}
