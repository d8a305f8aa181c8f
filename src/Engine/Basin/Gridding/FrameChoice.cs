using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>A box in the plane that grows over points.</summary>
internal struct PlaneBox
{
    private bool _any;

    /// <summary>West edge, m.</summary>
    public double WestM { get; private set; }

    /// <summary>East edge, m.</summary>
    public double EastM { get; private set; }

    /// <summary>South edge, m.</summary>
    public double SouthM { get; private set; }

    /// <summary>North edge, m.</summary>
    public double NorthM { get; private set; }

    /// <summary>Width from west to east, m.</summary>
    public readonly double WidthM => EastM - WestM;

    /// <summary>Height from south to north, m.</summary>
    public readonly double HeightM => NorthM - SouthM;

    /// <summary>Takes a point in.</summary>
    public void Add(double xM, double yM)
    {
        (WestM, EastM) = _any ? (Math.Min(WestM, xM), Math.Max(EastM, xM)) : (xM, xM);
        (SouthM, NorthM) = _any ? (Math.Min(SouthM, yM), Math.Max(NorthM, yM)) : (yM, yM);
        _any = true;
    }
}

/// <summary>Chooses the cells of a lake.</summary>
internal static class FrameChoice
{
    /// <summary>Cells across the square root of the area at least: fewer could not show a form.</summary>
    private const double LeastCellsAcross = 80;

    /// <summary>A frame around a box, with cells as fine as the data deserve and the cap allows.</summary>
    /// <param name="box">What to cover.</param>
    /// <param name="areaM2">Area of water, as far as known.</param>
    /// <param name="dataM">Spacing that the data deserve, m.</param>
    /// <param name="options">Wishes.</param>
    /// <param name="note">What was chosen, in a sentence.</param>
    public static GridFrame Choose(PlaneBox box, double areaM2, double dataM, GridOptions options, out string note)
    {
        double cellM = options.CellM ?? Math.Max(0.25, Math.Min(dataM, Math.Sqrt(areaM2) / LeastCellsAcross));
        if (options.CellM is null) cellM = Nice(cellM);
        double wishedM = cellM;
        double most = options.CellM is null ? options.MaxCells : GridFrame.MaxCells;
        while (CellsAt(box, cellM) > most) cellM = options.CellM is null ? NextNice(cellM) : cellM * 1.1;
        int nx = (int)Math.Ceiling(box.WidthM / cellM) + 3, ny = (int)Math.Ceiling(box.HeightM / cellM) + 3;
        double westM = (Math.Floor(box.WestM / cellM) - 1) * cellM, southM = (Math.Floor(box.SouthM / cellM) - 1) * cellM;
        note = cellM > wishedM
            ? FormattableString.Invariant($"Cells are {cellM:0.##} m wide: the data would bear {wishedM:0.##} m, but the lake is too large for that.")
            : FormattableString.Invariant($"Cells are {cellM:0.##} m wide.");
        return new GridFrame(westM, southM, cellM, nx, ny);
    }

    private static double CellsAt(PlaneBox box, double cellM) => ((box.WidthM / cellM) + 4) * ((box.HeightM / cellM) + 4);

    // 1, 2, 2.5, 4, 5 or 8 times a power of ten, at or below the wish.
    private static double Nice(double wishM)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(wishM)));
        double chosen = power;
        foreach (double step in Steps)
            if (step * power <= wishM * 1.0001) chosen = step * power;
        return chosen;
    }

    private static double NextNice(double cellM)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(cellM * 1.0001)));
        foreach (double step in Steps)
            if (step * power > cellM * 1.0001) return step * power;
        return 10 * power;
    }

    private static readonly double[] Steps = [1, 2, 2.5, 4, 5, 8];
}
