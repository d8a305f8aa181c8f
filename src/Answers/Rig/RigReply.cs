using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Rig;

/// <summary>What to tie on at a place: the choice alone.</summary>
public record RigPick
{
    /// <summary>What was asked.</summary>
    public required RigRequest Request { get; init; }

    /// <summary>Conditions, with what was assumed filled in.</summary>
    public required RigConditions Conditions { get; init; }

    /// <summary>Line.</summary>
    public required FishingLine Line { get; init; }

    /// <summary>The weight, and in a whole answer its neighbours.</summary>
    public required RigChoice Choice { get; init; }

    /// <summary>What had to be assumed, in words.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }
}

/// <summary>What to tie on and how to drag it, worked out. Words, cautions and cards are made from it.</summary>
public sealed record RigReply : RigPick
{
    /// <summary>The weight that was asked about, or null.</summary>
    public required WeightOutlook? Asked { get; init; }

    /// <summary>Shape of the line in the middle case.</summary>
    public required TowShape Shape { get; init; }

    /// <summary>Shape of the line when drag and speed are low (one in ten).</summary>
    public required TowShape SteepShape { get; init; }

    /// <summary>Shape of the line when drag and speed are high (one in ten).</summary>
    public required TowShape FlatShape { get; init; }

    /// <summary>How fast the pull of a quick sweep of the rod (3 m/s, 10 N) reaches the jig.</summary>
    public required SweepResult Sweep { get; init; }

    /// <summary>The same question on other lines, thinnest first, the present one among them.</summary>
    public required IReadOnlyList<LineTrade> Lines { get; init; }

    /// <summary>What each size of the chosen kind does at this depth and speed, lightest first.</summary>
    public required IReadOnlyList<SizeRow> Sizes { get; init; }

    /// <summary>Depths of the table, m.</summary>
    public required IReadOnlyList<double> TableDepthsM { get; init; }

    /// <summary>Speeds of the table, m s-1.</summary>
    public required IReadOnlyList<double> TableSpeedsMps { get; init; }

    /// <summary>Weight by depth (rows) and speed (columns), row by row.</summary>
    public required IReadOnlyList<WeightCell> Table { get; init; }

    /// <summary>What the chosen rig itself does by depth and speed, row by row.</summary>
    public required IReadOnlyList<TowCell> Tows { get; init; }
}

/// <summary>One line compared with the present one.</summary>
/// <param name="Line">The line.</param>
/// <param name="NeededKg">Mass that the rule asks for, kg; infinity when none does.</param>
/// <param name="Size">Lightest size that suffices; null when none does.</param>
/// <param name="FallS">Time to the bottom of the chosen jig, s, middle case.</param>
/// <param name="BowM">Bow of the line with the chosen jig, m, middle case.</param>
/// <param name="StretchM">Stretch of the line under a pull of 10 N, m.</param>
public sealed record LineTrade(FishingLine Line, double NeededKg, StandardWeight? Size, double FallS, double BowM, double StretchM);
