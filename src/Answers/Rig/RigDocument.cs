using SecondShore.Answers.Documents;

namespace SecondShore.Answers.Rig;

/// <summary>The document that <c>rig --json</c> prints.</summary>
public sealed record RigDocument
{
    /// <summary>Mass of the head to tie on, g.</summary>
    public required double WeightG { get; init; }

    /// <summary>The same, oz.</summary>
    public required double WeightOz { get; init; }

    /// <summary>Line out from the rod tip, m.</summary>
    public required double LineOutM { get; init; }

    /// <summary>Time to the bottom on slack line, s, middle of its spread; null where it may not get there.</summary>
    public required double? FallS { get; init; }

    /// <summary>Angle of the line below level at the water, degrees, middle of its spread.</summary>
    public required double LineAngleDeg { get; init; }

    /// <summary>Weight by depth and speed.</summary>
    public required IReadOnlyList<TableRow> Table { get; init; }

    /// <summary>Whether that weight meets the rule.</summary>
    public required bool Holds { get; init; }

    /// <summary>What decided: <c>hold</c>, <c>feel</c>, <c>lightest_owned</c> or <c>nothing_holds</c>.</summary>
    public required string Reason { get; init; }

    /// <summary>Mass that the rule asks for, g; null when more than any in use.</summary>
    public required double? NeededG { get; init; }

    /// <summary>Depth, m.</summary>
    public required double DepthM { get; init; }

    /// <summary>Drag speed, m s-1.</summary>
    public required double SpeedMps { get; init; }

    /// <summary>Name of the jig.</summary>
    public required string Jig { get; init; }

    /// <summary>Its material.</summary>
    public required string Material { get; init; }

    /// <summary>Name of the line.</summary>
    public required string Line { get; init; }

    /// <summary>Its diameter, mm.</summary>
    public required double LineDiameterMm { get; init; }

    /// <summary>The weight, the next lighter and heavier, and the one asked about.</summary>
    public required IReadOnlyList<WeightRow> Weights { get; init; }

    /// <summary>What each size of the chosen kind does here, lightest first.</summary>
    public required IReadOnlyList<SizeRow> Sizes { get; init; }

    /// <summary>Other lines, thinnest first.</summary>
    public required IReadOnlyList<LineRow> Lines { get; init; }

    /// <summary>Tension at the rod, N, middle case.</summary>
    public required double RodTensionN { get; init; }

    /// <summary>How far the jig trails behind the rod tip, m.</summary>
    public required double TrailM { get; init; }

    /// <summary>How far it lies to the left of the track, m.</summary>
    public required double SideM { get; init; }

    /// <summary>Bow of the line, m.</summary>
    public required double BowM { get; init; }

    /// <summary>Line lying on the bottom, m.</summary>
    public required double LineOnBottomM { get; init; }

    /// <summary>Time until a quick sweep of the rod (3 m/s) pulls at the jig with 10 N more, s; null when it does not.</summary>
    public required double? SweepS { get; init; }

    /// <summary>The line from jig to rod tip in the middle case.</summary>
    public required IReadOnlyList<PointRow> Shape { get; init; }

    /// <summary>The same when drag and speed are low, one time in ten.</summary>
    public required IReadOnlyList<PointRow> ShapeSteep { get; init; }

    /// <summary>The same when drag and speed are high, one time in ten.</summary>
    public required IReadOnlyList<PointRow> ShapeFlat { get; init; }

    /// <summary>The answer in words.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>Cautions.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }

    /// <summary>One cell of the table.</summary>
    /// <param name="DepthM">Depth, m.</param>
    /// <param name="SpeedMps">Drag speed, m s-1.</param>
    /// <param name="WeightG">Lightest size that suffices, g; null when none does: too fast.</param>
    /// <param name="Size">Its label.</param>
    /// <param name="NeededG">Mass that the rule asks for, g; null when more than any in use.</param>
    /// <param name="OnBottomShare">Share of the chosen jig's weight on the bottom there, middle case.</param>
    public sealed record TableRow(double DepthM, double SpeedMps, double? WeightG, string? Size, double? NeededG, double OnBottomShare);

    /// <summary>One weight worked out.</summary>
    /// <param name="Role"><c>chosen</c>, <c>lighter</c>, <c>heavier</c> or <c>asked</c>.</param>
    /// <param name="Jig">Name.</param>
    /// <param name="WeightG">Mass, g.</param>
    /// <param name="HoldsChance">Chance that it keeps the bottom.</param>
    /// <param name="OnBottomShare">Share of its weight on the bottom.</param>
    /// <param name="HeightM">Height over the bottom, m.</param>
    /// <param name="FallS">Fall on slack line, s.</param>
    /// <param name="TightFallS">Fall on tight line, s.</param>
    /// <param name="FastestMps">Fastest speed that holds, m s-1.</param>
    /// <param name="LeastLineM">Least line out that holds, m.</param>
    /// <param name="LineAngleDeg">Angle below level, degrees.</param>
    public sealed record WeightRow(string Role, string Jig, double WeightG, double HoldsChance, SpreadDocument OnBottomShare, SpreadDocument HeightM,
        SpreadDocument FallS, double TightFallS, SpreadDocument FastestMps, SpreadDocument LeastLineM, SpreadDocument LineAngleDeg);

    /// <summary>One size at this depth and speed.</summary>
    /// <param name="Size">Its label.</param>
    /// <param name="WeightG">Mass, g.</param>
    /// <param name="HoldsChance">Chance that it keeps the bottom.</param>
    /// <param name="OnBottomShare">Share of its weight on the bottom, middle case.</param>
    /// <param name="HeightM">Height over the bottom, m, middle case.</param>
    /// <param name="FallS">Fall on slack line, s; null where it may not get there.</param>
    /// <param name="FastestMps">Fastest speed that holds, m s-1, middle case.</param>
    public sealed record SizeRow(string Size, double WeightG, double HoldsChance, double OnBottomShare, double HeightM, double? FallS, double FastestMps);

    /// <summary>One line compared.</summary>
    /// <param name="Line">Name.</param>
    /// <param name="DiameterMm">Diameter, mm.</param>
    /// <param name="StrengthN">Rated strength, N.</param>
    /// <param name="NeededG">Mass that the rule asks for, g.</param>
    /// <param name="WeightG">Lightest size that suffices, g.</param>
    /// <param name="FallS">Fall of the chosen jig, s.</param>
    /// <param name="BowM">Bow with the chosen jig, m.</param>
    /// <param name="StretchM">Stretch under 10 N, m.</param>
    public sealed record LineRow(string Line, double DiameterMm, double StrengthN, double? NeededG, double? WeightG, double? FallS, double BowM, double StretchM);

    /// <summary>One point of the line.</summary>
    /// <param name="BehindM">Behind the rod tip, m.</param>
    /// <param name="LeftM">Left of the track, m.</param>
    /// <param name="HeightM">Over the bottom, m.</param>
    public sealed record PointRow(double BehindM, double LeftM, double HeightM);
}
