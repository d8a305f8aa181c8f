namespace SecondShore.Engine.Basin.Terrain;

/// <summary>The eight neighbours of a cell, counter-clockwise from east.</summary>
internal static class Compass8
{
    /// <summary>Column step by direction: E, NE, N, NW, W, SW, S, SE.</summary>
    public static ReadOnlySpan<int> StepX => [1, 1, 0, -1, -1, -1, 0, 1];

    /// <summary>Row step by direction (row 0 is southmost).</summary>
    public static ReadOnlySpan<int> StepY => [0, 1, 1, 1, 0, -1, -1, -1];

    /// <summary>Length of a step, cells.</summary>
    public static ReadOnlySpan<double> Length => [1, 1.4142135623730951, 1, 1.4142135623730951, 1, 1.4142135623730951, 1, 1.4142135623730951];
}
