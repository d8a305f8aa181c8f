using System.Runtime.CompilerServices;
using SecondShore.Engine.Rig;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Rig;

/// <summary>Turns tackle.json, as filed, into tackle that the engine can work with. What it cannot use is said, not dropped in silence.</summary>
public static class TackleMapper
{
    // Below this the solver has no bottom to find.
    private static readonly double LeastWeightN = 0.004;

    // Observations cost a tenth of a second each in a browser: a document is mapped once.
    private static readonly ConditionalWeakTable<TackleDocument, Mapped> Known = [];

    /// <summary>The tackle of a document.</summary>
    /// <param name="document">The document; null is nothing owned.</param>
    /// <param name="assumed">Receives each thing that was not understood and what was taken instead.</param>
    public static Tackle Map(TackleDocument? document, ICollection<Finding> assumed)
    {
        ArgumentNullException.ThrowIfNull(assumed);
        if (document is null) return Tackle.None;
        Mapped mapped = Known.GetValue(document, d => MapNew(d));
        foreach (Finding finding in mapped.Assumed) assumed.Add(finding);
        return mapped.Tackle;
    }

    private static Mapped MapNew(TackleDocument document)
    {
        List<Finding> assumed = [];
        List<Trailer> trailers = [];
        foreach (TrailerItem item in document.Trailers) trailers.Add(Trailer(item, assumed));
        List<FishingLine> lines = [];
        foreach (LineItem item in document.Lines)
            if (Line(item, assumed) is { } line) lines.Add(line);
        List<Jig> jigs = [];
        foreach (JigItem item in document.Jigs)
        {
            if (item.Count == 0) continue;
            Jig jig = Jig(item, trailers, assumed);
            if (jig.WeightInWaterN(RigWater.Usual.DensityKgPerM3) > LeastWeightN) jigs.Add(JigSightings.Calibrated(jig, item, lines, assumed));
            else assumed.Add(AnswerFindings.JigFloats.Of(item.Name, jig.Trailer.Name));
        }

        List<Rod> rods = [];
        foreach (RodItem item in document.Rods)
            rods.Add(new Rod(item.Name, item.LengthM ?? 2.1, (item.LightestLureG ?? 0) / 1000, (item.HeaviestLureG ?? 0) / 1000));
        return new Mapped(new Tackle(jigs, lines, trailers, rods), assumed);
    }

    /// <summary>A trailer kind by name, or null.</summary>
    public static Trailer? TrailerKind(string kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        foreach (Trailer known in Engine.Rig.Trailer.Kinds)
            if (string.Equals(known.Name, kind.Trim(), StringComparison.OrdinalIgnoreCase)) return known;
        return null;
    }

    /// <summary>A head shape by name, or null.</summary>
    public static HeadShape? Head(string head)
    {
        ArgumentNullException.ThrowIfNull(head);
        return head.Trim().ToUpperInvariant() switch
        {
            "BALL" or "ROUND" => HeadShape.Ball,
            "BROAD" or "FOOTBALL" => HeadShape.Broad,
            "SLIM" => HeadShape.Slim,
            "POINTED" or "SWIM" or "SWIMMING" => HeadShape.Pointed,
            "FLAT" => HeadShape.Flat,
            _ => null,
        };
    }

    private static Trailer Trailer(TrailerItem item, List<Finding> assumed)
    {
        Trailer? kind = TrailerKind(item.Kind);
        if (kind is null && item.Kind.Length > 0) assumed.Add(AnswerFindings.TrailerKindUnknown.Of(item.Name, item.Kind));
        kind ??= Engine.Rig.Trailer.Slim;
        return kind with
        {
            Name = item.Name,
            MassKg = (item.WeightG ?? (kind.MassKg * 1000)) / 1000.0,
            DragAreaM2 = item.DragAreaM2 ?? kind.DragAreaM2,
            DensityKgPerM3 = item.DensityKgPerM3 ?? kind.DensityKgPerM3,
        };
    }

    private static FishingLine? Line(LineItem item, List<Finding> assumed)
    {
        LineMaterial? material = LineMaterial.Find(item.Kind);
        if (material is null && item.Kind.Length > 0) assumed.Add(AnswerFindings.LineKindUnknown.Of(item.Name, item.Kind));
        material ??= LineMaterial.Fluorocarbon;
        if (item.DiameterM is null && item.StrengthN is null)
        {
            assumed.Add(AnswerFindings.LineUnrated.Of(item.Name));
            return null;
        }

        double diameterM = item.DiameterM ?? FishingLine.UsualDiameterM(item.StrengthN!.Value, material.StrengthPa);
        double strengthN = item.StrengthN ?? (material.StrengthPa * 0.25 * Math.PI * diameterM * diameterM);
        return new FishingLine(item.Name, material, diameterM, strengthN, item.IsDiameterMeasured == true && item.DiameterM is not null)
        {
            DensityKgPerM3 = item.DensityKgPerM3 ?? material.DensityKgPerM3,
            ModulusPa = item.ModulusPa ?? material.ModulusPa,
        };
    }

    private static Jig Jig(JigItem item, List<Trailer> trailers, List<Finding> assumed)
    {
        JigMaterial? material = JigMaterial.Find(item.Material);
        if (item.DensityKgPerM3 is double density) material = new JigMaterial(item.Material.Length > 0 ? item.Material : "metal", density);
        if (material is null && item.Material.Length > 0) assumed.Add(AnswerFindings.MaterialUnknown.Of(item.Name, item.Material));
        HeadShape? head = Head(item.Head);
        if (head is null && item.Head.Length > 0) assumed.Add(AnswerFindings.HeadUnknown.Of(item.Name, item.Head));
        bool bare = item.Skirt.Trim().ToUpperInvariant() is "NONE" or "NO" or "FALSE";
        return new Jig(item.Name, item.WeightG / 1000.0, material ?? JigMaterial.Lead, head ?? HeadShape.Broad,
            item.SkirtDragAreaM2 ?? (bare ? 0 : Engine.Rig.Jig.UsualSkirtAreaM2), Worn(item, trailers, assumed));
    }

    private static Trailer Worn(JigItem item, List<Trailer> trailers, List<Finding> assumed)
    {
        if (item.Trailer.Length == 0) return Engine.Rig.Trailer.Slim;
        Trailer? worn = trailers.Find(t => string.Equals(t.Name, item.Trailer.Trim(), StringComparison.OrdinalIgnoreCase)) ?? TrailerKind(item.Trailer);
        if (worn is null) assumed.Add(AnswerFindings.TrailerUnknown.Of(item.Name, item.Trailer));
        return worn ?? Engine.Rig.Trailer.Slim;
    }

    private sealed record Mapped(Tackle Tackle, IReadOnlyList<Finding> Assumed);
}
