using SecondShore.Answers.Rig;
using SecondShore.Desk.Views;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Rig;

namespace SecondShore.Desk;

/// <summary>What the bench asks, as the command line's <c>rig</c> asks it.</summary>
internal static class RigAsks
{
    // Enough for the page's whole digits, and quick on a phone.
    private static readonly int Samples = 60;

    /// <summary>The request of an ask by hand.</summary>
    /// <exception cref="RefusedException">A word or number that cannot be worked with.</exception>
    public static RigRequest Request(RigAsk ask, Tackle tackle, UnitSystem units)
    {
        RigMore more = ask.More ?? new RigMore();
        bool kind = more.Head.Length + more.Trailer.Length + more.Material.Length > 0;
        return new RigRequest
        {
            DepthM = ask.DepthM,
            SpeedMps = ask.SpeedMps,
            Tackle = tackle,
            Line = LineFor(ask.LineKg, more.LineKind, tackle),
            LineOutM = more.LineOutM,
            AskedKg = more.WeightG is { } grams ? Math.Clamp(grams, RigMore.LeastWeightG, RigMore.MostWeightG) / 1000 : null,
            Kind = kind ? KindOf(more) : null,
            AnySize = more.AnySize || kind,
            Bottom = Enum.TryParse(more.Bottom, ignoreCase: true, out BottomKind bottom) ? bottom : BottomKind.Unknown,
            Current = more.CurrentMps is null && more.CrossMps is null ? null : CurrentProfile.Uniform(more.CurrentMps ?? 0, more.CrossMps ?? 0),
            TipHeightM = more.TipM,
            Rule = more.Sure is { } sure ? new HoldRule(Math.Clamp(sure, RigMore.LeastSure, RigMore.MostSure), HoldRule.Usual.LeastShare, HoldRule.Usual.FeelShare) : HoldRule.Usual,
            Motion = more.WorkedIn ? TowMotion.WorkedIn : TowMotion.BehindBoat,
            NearTimber = more.Timber,
            Units = units,
            Samples = Samples,
        };
    }

    private static Jig KindOf(RigMore more) => Jig.Usual(0.014, JigMaterial.Find(more.Material) ?? JigMaterial.Lead) with
    {
        Head = TackleMapper.Head(more.Head) ?? HeadShape.Broad,
        Trailer = TackleMapper.TrailerKind(more.Trailer) ?? Trailer.Slim,
    };

    // The user's own line of about that strength, else a usual one.
    private static FishingLine LineFor(double kg, string kind, Tackle tackle) =>
        tackle.Lines.FirstOrDefault(l => Math.Abs(l.StrengthN - (kg * PhysicalConstants.StandardGravityMps2)) < 0.08 * l.StrengthN && (kind.Length == 0 || l.Material.Name == kind))
        ?? FishingLine.OfPoundsWeight(LineMaterial.Find(kind) ?? LineMaterial.Fluorocarbon, Math.Round(kg / Mass.KilogramsPerPound));
}
