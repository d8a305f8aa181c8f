namespace SecondShore.Engine.Basin.Shape;

/// <summary>Soundings of a log drawn together by squares, so that a day's track costs no more than some hundred taps.</summary>
internal sealed class SoundingGroups
{
    private readonly SoundedBottom _bottom;
    private readonly List<(int Cell, double OffM, double VarianceM2)> _wet = [];

    /// <summary>Takes what lies on water.</summary>
    public SoundingGroups(SoundedBottom bottom, IReadOnlyList<Sounding> soundings)
    {
        _bottom = bottom;
        foreach (Sounding s in soundings)
        {
            int cell = bottom.CellAt(s.Place);
            if (cell >= 0) _wet.Add((cell, s.DepthM - bottom.Model.MeanM[cell], s.SdM * s.SdM));
        }
    }

    /// <summary>Soundings on water.</summary>
    public int OnWater => _wet.Count;

    /// <summary>Some soundings as one.</summary>
    /// <param name="Cell">Water cell nearest to their middle that one of them lies in.</param>
    /// <param name="OffM">Mean difference to the guess, m.</param>
    /// <param name="VarianceM2">Variance of it, m2.</param>
    public readonly record struct Group(int Cell, double OffM, double VarianceM2);

    /// <summary>Groups by the smallest squares of whole cells that make no more of them than wished; at least one.</summary>
    public IReadOnlyList<Group> Within(int most)
    {
        if (_wet.Count == 0) return [];
        for (int side = 1; ; side *= 2)
        {
            List<Group> groups = [.. _wet.GroupBy(w => Square(w.Cell, side)).OrderBy(g => g.Key).Select(g => Together([.. g]))];
            if (groups.Count <= Math.Max(1, most)) return groups;
        }
    }

    private long Square(int cell, int side)
    {
        int i = _bottom.Model.Cells[cell], nx = _bottom.Model.Frame.Nx;
        return ((long)(i / nx / side) << 32) | (uint)(i % nx / side);
    }

    // What soundings of one square differ by is bed that the middle does not share, besides their own errors.
    private Group Together((int Cell, double OffM, double VarianceM2)[] of)
    {
        int nx = _bottom.Model.Frame.Nx;
        double x = of.Average(w => _bottom.Model.Cells[w.Cell] % nx), y = of.Average(w => _bottom.Model.Cells[w.Cell] / nx);
        int middle = of.MinBy(w =>
            Math.Pow((_bottom.Model.Cells[w.Cell] % nx) - x, 2) + Math.Pow((_bottom.Model.Cells[w.Cell] / nx) - y, 2)).Cell;
        double mean = of.Average(w => w.OffM), spread = of.Average(w => Math.Pow(w.OffM - mean, 2)), own = of.Average(w => w.VarianceM2);
        // Errors of one sounder and one level go together: a hundred of its pings are not ten times as good as one.
        return new Group(middle, mean, (own * Math.Max(0.25, 1.0 / of.Length)) + (spread / of.Length));
    }
}
