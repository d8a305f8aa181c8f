namespace SecondShore.Engine.Basin.Shape;

/// <summary>The likeliest bottom of an outline as a share of its greatest depth, before a depth is known.</summary>
internal static class RelativeShape
{
    /// <summary>Power of the last hollow: so high that it lifts the deepest place to its depth and leaves the rest.</summary>
    private const double HollowPower = 10;

    /// <summary>Least share: water is water.</summary>
    private const double Least = 1e-3;

    /// <summary>Share of the greatest depth by water cell, above 0, 1 where it is deepest.</summary>
    /// <param name="shape">The outline.</param>
    /// <param name="fall">Depth of the stream of each cell as a share of the dam's; null for a natural basin.</param>
    /// <param name="numbers">Numbers of its kind.</param>
    public static float[] Of(ShapeFields shape, float[]? fall, BasinNumbers numbers)
    {
        float[] share = new float[shape.Cells.Length];
        double most = 0;
        for (int k = 0; k < share.Length; k++)
        {
            double cross = Math.Min(1, shape.ShoreM[k] / shape.WidthM[k]), width = shape.WidthM[k] / shape.WidestM;
            double own = Math.Pow(cross, numbers.CrossPower) * Math.Pow(width, numbers.WidthPower);
            double at = ((1 - numbers.SheetShare) * own) + (numbers.SheetShare * Math.Pow(shape.Sheet[k], numbers.SheetPower));
            if (fall is not null) at *= Math.Pow(fall[k], numbers.FallPower);
            share[k] = (float)at;
            most = Math.Max(most, at);
        }

        for (int k = 0; k < share.Length; k++)
        {
            double at = most > 0 ? share[k] / most : 1;
            share[k] = (float)Math.Clamp((numbers.BroadShare * at) + ((1 - numbers.BroadShare) * Math.Pow(at, HollowPower)), Least, 1);
        }

        return share;
    }

    /// <summary>The power to which shares are raised so that their mean is as told: bends a bowl to a funnel or a trough,
    /// and leaves shore and deepest place.</summary>
    /// <param name="share">Shares, above 0, at most 1.</param>
    /// <param name="mean">Wanted mean, 0 to 1; brought into what a bend can give.</param>
    public static double Bend(ReadOnlySpan<float> share, double mean)
    {
        double low = Math.Log(0.05), high = Math.Log(20);
        for (int step = 0; step < 40; step++)
        {
            double middle = 0.5 * (low + high);
            if (MeanOf(share, Math.Exp(middle)) > mean) low = middle; else high = middle;
        }

        return Math.Exp(0.5 * (low + high));
    }

    /// <summary>Mean of shares raised to a power.</summary>
    public static double MeanOf(ReadOnlySpan<float> share, double power)
    {
        double sum = 0;
        foreach (float s in share) sum += Math.Pow(s, power);
        return sum / share.Length;
    }
}
