using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Rig;

/// <summary>Answers: what do I tie on, how much line out, how fast may I drag, how long is the fall?</summary>
public static class RigAnswer
{
    private static readonly double[] MphColumns = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1.0];
    private static readonly double[] KmhColumns = [0.5, 0.7, 0.9, 1.0, 1.1, 1.3, 1.6];
    private static readonly double[] DepthSteps = [0.75, 0.875, 1.0, 1.125, 1.275];
    private static readonly double QuickSweepMps = 3.0;

    // What it takes to move a jig that a fish or a stone holds (choice).
    private static readonly double SweepPullN = 10.0;

    /// <summary>Works a request out.</summary>
    /// <exception cref="RefusedException">A number lies outside what the solver covers.</exception>
    public static RigReply Of(RigRequest request)
    {
        try
        {
            return Worked(request);
        }
        catch (ArgumentOutOfRangeException e) when (Require.Found(e) is { } found)
        {
            throw new RefusedException(found, e);
        }
    }

    private static RigReply Worked(RigRequest request)
    {
        RigPick pick = Pick(request, withNeighbours: true, out IReadOnlyList<Jig> candidates);
        (RigConditions conditions, FishingLine line, RigChoice choice) = (pick.Conditions, pick.Line, pick.Choice);
        IReadOnlyList<StandardWeight> sizes = Sizes(request);
        bool owned = request.Tackle.Jigs.Count > 0 && !request.AnySize;
        Jig jig = choice.Chosen.Jig;
        TowCase tow = conditions.Tow(jig, line);
        TowShape shape = TowShape.Of(tow);
        IReadOnlyList<StandardWeight> tableSizes = owned ? RigAssumptions.OwnedSizes(candidates, jig, request.Units) : sizes;
        double[] depths = Depths(request), speeds = Speeds(request);
        return new RigReply
        {
            Request = request,
            Conditions = conditions,
            Line = line,
            Choice = choice,
            Asked = request.AskedKg is double asked
                ? WeightOutlook.Of(jig with { Name = request.Units.JigWeight(asked), MassKg = asked }, line, conditions, request.Rule, seed: request.Seed) with
                {
                    HoldsChance = choice.HoldsChance(asked),
                }
                : null,
            Shape = shape,
            SteepShape = TowShape.Of(Moved(tow, jig, line, conditions, -1)),
            FlatShape = TowShape.Of(Moved(tow, jig, line, conditions, +1)),
            Sweep = SweepSolver.Solve(tow, shape, QuickSweepMps, SweepPullN),
            Lines = Lines(request, line, jig, conditions, tableSizes, choice),
            Sizes = RigTables.Sizes(jig, line, conditions, request.Rule, tableSizes, choice),
            TableDepthsM = depths,
            TableSpeedsMps = speeds,
            Table = RigTables.Weights(jig, line, conditions, request.Rule, depths, speeds, tableSizes, choice),
            Tows = RigTables.Tows(jig, line, conditions, depths, speeds),
            Assumed = pick.Assumed,
        };
    }

    /// <summary>The choice alone, for one stop of many: neither neighbours nor tables, lines or shapes.</summary>
    /// <exception cref="RefusedException">A number lies outside what the solver covers.</exception>
    public static RigPick PickOf(RigRequest request) => Pick(request, withNeighbours: false, out _);

    private static RigPick Pick(RigRequest request, bool withNeighbours, out IReadOnlyList<Jig> candidates)
    {
        ArgumentNullException.ThrowIfNull(request);
        List<string> assumed = [];
        RigConditions conditions = RigAssumptions.Conditions(request, assumed);
        FishingLine line = RigAssumptions.Line(request, assumed);
        Jig kind = RigAssumptions.Kind(request, assumed);
        bool owned = request.Tackle.Jigs.Count > 0 && !request.AnySize;
        candidates = owned ? request.Tackle.Jigs : RigChooser.Standard(kind, Sizes(request));
        RigChoice choice = RigChooser.Choose(candidates, line, conditions, request.Rule, request.Samples, request.Seed, withNeighbours);
        return new RigPick { Request = request, Conditions = conditions, Line = line, Choice = choice, Assumed = assumed };
    }

    private static IReadOnlyList<StandardWeight> Sizes(RigRequest request) =>
        request.Units.IsMetric ? StandardWeight.Grams : StandardWeight.Ounces;

    // Line drag and speed together at their tenth: each at 1.28/sqrt(2) of its own doubt.
    private static TowCase Moved(in TowCase tow, Jig jig, FishingLine line, RigConditions conditions, double way)
    {
        double z = way * NormalLaw.Quantile(0.9) / Math.Sqrt(2.0);
        double lineLnSd = Math.Sqrt((jig.Belief.LineLnSd * jig.Belief.LineLnSd) + (line.DiameterLnSd * line.DiameterLnSd));
        return tow with
        {
            LineDragFactor = Math.Clamp(tow.LineDragFactor * Math.Exp(z * lineLnSd), 0.1, 5),
            SpeedMps = Math.Clamp(tow.SpeedMps + (z * Math.Sqrt((conditions.SpeedSdMps * conditions.SpeedSdMps) + (conditions.CurrentSdMps * conditions.CurrentSdMps))), 0, 3),
        };
    }

    private static List<LineTrade> Lines(RigRequest request, FishingLine present, Jig jig, RigConditions conditions, IReadOnlyList<StandardWeight> sizes, RigChoice choice)
    {
        List<FishingLine> lines = request.Tackle.Lines.Count > 1 ? [.. request.Tackle.Lines] :
        [
            FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 10), FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 12),
            FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 15), FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 17),
            FishingLine.OfPoundsWeight(LineMaterial.Nylon, 12), FishingLine.OfPoundsWeight(LineMaterial.Braid, 20),
            FishingLine.OfPoundsWeight(LineMaterial.Braid, 30),
        ];
        if (!lines.Contains(present)) lines.Add(present);
        lines.Sort((a, b) => a.DiameterM.CompareTo(b.DiameterM));
        List<LineTrade> trades = [];
        foreach (FishingLine line in lines)
        {
            double needed = line == present ? choice.NeededKg : WeightNeed.QuickKg(jig, line, conditions, request.Rule, choice.SureShare);
            trades.Add(new LineTrade(line, needed, RigTables.Lightest(sizes, needed), FallSolver.Solve(FallCase.Of(jig, line, conditions)).TimeS,
                TowShape.Of(conditions.Tow(jig, line)).BowM, line.StretchM(10, conditions.LineOutAtM(conditions.DepthM))));
        }

        return trades;
    }

    private static double[] Depths(RigRequest request)
    {
        if (request.TableDepthsM is { } given) return [.. given];
        List<double> depths = [];
        foreach (double step in DepthSteps)
        {
            double depth = step == 1.0 ? request.DepthM : request.Units.IsMetric
                ? Math.Round(request.DepthM * step * 2.0) / 2.0
                : Length.FromFeet(Math.Round(Length.FromMetres(request.DepthM * step).Feet)).Metres;
            if (depth is >= 0.3 and <= 100 && !depths.Exists(d => Math.Abs(d - depth) < 0.05)) depths.Add(depth);
        }

        depths.Sort();
        return [.. depths];
    }

    private static double[] Speeds(RigRequest request)
    {
        if (request.TableSpeedsMps is { } given) return [.. given];
        double unit = request.Units.IsMetric ? 1.0 / 3.6 : Speed.MpsPerMph;
        List<double> speeds = [request.SpeedMps];
        foreach (double column in request.Units.IsMetric ? KmhColumns : MphColumns)
            if (Math.Abs((column * unit) - request.SpeedMps) > 0.02 * unit) speeds.Add(column * unit);
        speeds.Sort();
        return [.. speeds];
    }
}
