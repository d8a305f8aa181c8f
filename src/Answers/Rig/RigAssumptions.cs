using SecondShore.Engine.Core.Words;
using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Rig;

/// <summary>Fills in what a request leaves open, and says so.</summary>
internal static class RigAssumptions
{
    public static RigConditions Conditions(RigRequest request, List<string> assumed)
    {
        UnitSystem units = request.Units;
        Speech speech = units.Speech;
        double tipM = request.TipHeightM ?? 0.6;
        if (request.DepthSdM is null) assumed.Add(speech.Plain("Depth along the pass varies by about a twentieth."));
        if (request.SpeedSdMps is null) assumed.Add(speech.Plain("Drag speed wanders by about 15 %."));
        if (request.Current is null) assumed.Add(speech.Say($"No current is known: still water, give or take {(units.IsMetric ? speech.Number(0.07, "0.00") + " km/h" : speech.Number(0.04, "0.00") + " mph")}."));
        if (request.TipHeightM is null) assumed.Add(speech.Say($"The rod tip is {units.ShortDistance(tipM)} over the water."));
        if (request.LineOutM is null) assumed.Add(speech.Plain("Line out is twice the depth below the rod tip."));
        if (request.Bottom == BottomKind.Unknown) assumed.Add(speech.Plain("The kind of bottom is not known; friction as on sand, with doubt."));
        if (request.Water is null) assumed.Add(speech.Say($"Fresh water of {units.Temp(15)}."));
        return new RigConditions
        {
            DepthM = request.DepthM,
            SpeedMps = request.SpeedMps,
            DepthSdM = request.DepthSdM ?? (0.05 * Math.Abs(request.DepthM)),
            SpeedSdMps = request.SpeedSdMps ?? (0.15 * Math.Abs(request.SpeedMps)),
            Current = request.Current ?? CurrentProfile.Still,
            CurrentSdMps = request.CurrentSdMps ?? 0.02,
            LineOutM = request.LineOutM,
            TipHeightM = tipM,
            Bottom = request.Bottom,
            SlopeRad = request.SlopeRad,
            Motion = request.Motion,
            Water = request.Water ?? RigWater.Usual,
        };
    }

    public static FishingLine Line(RigRequest request, List<string> assumed)
    {
        if (request.Line is { } given) return given;
        IReadOnlyList<FishingLine> lines = request.Tackle.Lines;
        FishingLine line = lines.FirstOrDefault(l => l.Material == LineMaterial.Fluorocarbon)
            ?? (lines.Count > 0 ? lines[0] : null) ?? FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 15);
        Speech speech = request.Units.Speech;
        string name = RigWords.LineName(request.Units, line);
        assumed.Add(line.DiameterMeasured ? speech.Say($"The line is {name}, {line.DiameterM * 1000:0.00} mm.") : speech.Say($"The line is {name}, {line.DiameterM * 1000:0.00} mm as usual for its strength, give or take 8 %."));
        return line;
    }

    public static Jig Kind(RigRequest request, List<string> assumed)
    {
        if (request.Tackle.Jigs.Count > 0 && !request.AnySize) return request.Tackle.Jigs[0];
        if (request.Kind is { } kind) return kind;
        assumed.Add(request.Units.Speech.Plain("The jig is lead with a broad head, a skirt and a slim trailer."));
        return Jig.Usual(0.014);
    }

    /// <summary>Weights owned of the kind of a jig, lightest first.</summary>
    public static IReadOnlyList<StandardWeight> OwnedSizes(IReadOnlyList<Jig> jigs, Jig family, UnitSystem units)
    {
        List<StandardWeight> sizes = [];
        foreach (Jig jig in jigs.OrderBy(j => j.MassKg))
        {
            if (!RigChooser.AreOfOneKind(jig, family) || (sizes.Count > 0 && Math.Abs((jig.MassKg / sizes[^1].MassKg) - 1.0) < 0.01)) continue;
            sizes.Add(new StandardWeight(units.JigWeight(jig.MassKg), jig.MassKg));
        }

        return sizes;
    }
}
