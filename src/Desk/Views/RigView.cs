using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Desk.Views;

/// <summary>What to rig for.</summary>
/// <param name="DepthM">Depth of the bottom, m.</param>
/// <param name="SpeedMps">Drag speed over ground, m/s.</param>
/// <param name="LineKg">Strength of the line, kg.</param>
/// <param name="Stop">Id of a planned stop's spot: its own water, bottom and pass are taken, as the plan took them; null asks of the numbers alone.</param>
/// <param name="More">What it is asked with beside; null takes the usual.</param>
public sealed record RigAsk(double DepthM, double SpeedMps, double LineKg, string? Stop = null, RigMore? More = null);

/// <summary>What to tie on. SI throughout.</summary>
public sealed record RigView
{
    /// <summary>What it was asked for.</summary>
    public required RigAsk Asked { get; init; }

    /// <summary>What to tie on, in one line.</summary>
    public required string Short { get; init; }

    /// <summary>Share of its weight that the jig leaves on the bottom.</summary>
    public required Spread OnBottomShare { get; init; }

    /// <summary>Mass of the jig chosen, kg.</summary>
    public required double MassKg { get; init; }

    /// <summary>Least mass that holds the bottom, kg.</summary>
    public required Spread LeastKg { get; init; }

    /// <summary>Whether anything at hand holds the bottom.</summary>
    public required bool Holds { get; init; }

    /// <summary>Speed up to which it stays down, m/s.</summary>
    public required Spread FastestMps { get; init; }

    /// <summary>Line out, m.</summary>
    public required double LineOutM { get; init; }

    /// <summary>Fall to the bottom, s.</summary>
    public required Spread FallS { get; init; }

    /// <summary>Line's angle below level at the rod, radians.</summary>
    public required Spread LineAngleRad { get; init; }

    /// <summary>The line: behind the boat and above the bottom, m, from the jig.</summary>
    public required IReadOnlyList<LinePoint> Shape { get; init; }

    /// <summary>The line where it hangs steepest.</summary>
    public required IReadOnlyList<LinePoint> Steep { get; init; }

    /// <summary>The line where it hangs flattest.</summary>
    public required IReadOnlyList<LinePoint> Flat { get; init; }

    /// <summary>Depths of the table, m.</summary>
    public required IReadOnlyList<double> DepthsM { get; init; }

    /// <summary>Speeds of the table, m/s.</summary>
    public required IReadOnlyList<double> SpeedsMps { get; init; }

    /// <summary>Size by depth and speed, row by row; null where nothing holds.</summary>
    public required IReadOnlyList<string?> Sizes { get; init; }

    /// <summary>Why that weight, without 'because'.</summary>
    public required string Why { get; init; }

    /// <summary>The answer in words.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>Cautions that bear on it.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }
}

/// <summary>A point of the line: behind the boat and above the bottom, m, or in the user's unit on a chart.</summary>
public sealed record LinePoint(double X, double Z);
