using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys;

/// <summary>A survey in the numbers of its file: not yet placed on the earth, its depths not yet in metres.</summary>
internal sealed class RawSurvey(string format)
{
    public string Format { get; } = format;

    public List<RawPoints> Points { get; } = [];

    public List<RawLine> Lines { get; } = [];

    public List<RawPolygon> Polygons { get; } = [];

    public RawRaster? Raster { get; set; }

    public DepthUnit? Unit { get; set; }

    public Knowledge UnitKnown { get; set; } = Knowledge.Assumed;

    public DepthSense? Sense { get; set; }

    public Knowledge SenseKnown { get; set; } = Knowledge.Assumed;

    public CoordinateSystem? Crs { get; set; }

    public Knowledge CrsKnown { get; set; } = Knowledge.Assumed;

    /// <summary>Whether the file names a measure that is not known here.</summary>
    public bool OddUnit { get; set; }

    /// <summary>Outer rings of separate waters, where there are several: shore, and where it lies.</summary>
    public List<RawLine> Waters { get; } = [];

    /// <summary>Whether x and y may stand for each other, to be decided by where they lie.</summary>
    public bool MayBeSwapped { get; set; }

    /// <summary>Where a written band begins, or its one depth, in the survey's own unit; the first unit written becomes it.</summary>
    public double Written(Text.DepthText depth)
    {
        if (depth.Unit is not DepthUnit unit) return depth.Begin;
        if (Unit is null) (Unit, UnitKnown) = (unit, Knowledge.Stated);
        return depth.Begin * Hypotheses.DepthMeanings.MetresPer(unit) / Hypotheses.DepthMeanings.MetresPer(Unit.Value);
    }

    /// <summary>Exchanges x and y of everything.</summary>
    public void Swap()
    {
        for (int i = 0; i < Points.Count; i++) Points[i] = Points[i] with { X = Points[i].Y, Y = Points[i].X };
        for (int i = 0; i < Lines.Count; i++) Lines[i] = Lines[i] with { X = Lines[i].Y, Y = Lines[i].X };
        for (int i = 0; i < Waters.Count; i++) Waters[i] = Waters[i] with { X = Waters[i].Y, Y = Waters[i].X };
        for (int i = 0; i < Polygons.Count; i++)
            Polygons[i] = new RawPolygon((Polygons[i].Outer.Y, Polygons[i].Outer.X), [.. Polygons[i].Islands.Select(r => (r.Y, r.X))]);
        if (Raster is RawRaster r) Raster = r with { Place = new AffinePlace(r.Place.Y0, r.Place.D, r.Place.E, r.Place.X0, r.Place.A, r.Place.B) };
    }

    /// <summary>Turns longitudes that count to the west into those that count to the east.</summary>
    public void Mirror()
    {
        for (int i = 0; i < Points.Count; i++) Points[i] = Points[i] with { X = West(Points[i].X) };
        for (int i = 0; i < Lines.Count; i++) Lines[i] = Lines[i] with { X = West(Lines[i].X) };
        for (int i = 0; i < Waters.Count; i++) Waters[i] = Waters[i] with { X = West(Waters[i].X) };
        for (int i = 0; i < Polygons.Count; i++)
            Polygons[i] = new RawPolygon((West(Polygons[i].Outer.X), Polygons[i].Outer.Y), [.. Polygons[i].Islands.Select(r => (West(r.X), r.Y))]);
        if (Raster is RawRaster r) Raster = r with { Place = r.Place with { X0 = -r.Place.X0, A = -r.Place.A, B = -r.Place.B } };

        static double[] West(double[] east) => [.. east.Select(x => -x)];
    }

    public List<Finding> Doubts { get; } = [];

    /// <summary>What must be asked before the file can be read on; null when nothing must.</summary>
    public SurveyQuestion? Question { get; set; }

    /// <summary>Rows, and how many of them cannot be used.</summary>
    public (int Of, int Lost) Rows { get; set; }

    /// <summary>Words of the file beside its numbers: headers, lines before the data, the file's name.</summary>
    public string Words { get; set; } = "";

    public List<string> RolesTaken { get; } = [];
}

/// <summary>Points of one kind: parallel arrays; Z is NaN where there is a position without a depth.</summary>
internal sealed record RawPoints(double[] X, double[] Y, double[] Z, IReadOnlyList<int> TrackBreaks);

/// <summary>A line of one filed value; closed lines repeat no point.</summary>
internal sealed record RawLine(double[] X, double[] Y, double Z, bool Closed);

/// <summary>A polygon without a depth: outer ring and islands, no point repeated.</summary>
internal sealed record RawPolygon((double[] X, double[] Y) Outer, IReadOnlyList<(double[] X, double[] Y)> Islands);

/// <summary>A raster of filed values, NaN without data; pixel (column, row) centres lie at the affine place.</summary>
internal sealed record RawRaster(int Columns, int Rows, float[] Values, AffinePlace Place);

/// <summary>x = X0 + A column + B row, y = Y0 + D column + E row, of pixel centres.</summary>
internal sealed record AffinePlace(double X0, double A, double B, double Y0, double D, double E)
{
    public (double X, double Y) At(double column, double row) => (X0 + (A * column) + (B * row), Y0 + (D * column) + (E * row));

    public bool IsUsable => double.IsFinite(X0) && double.IsFinite(Y0) && double.IsFinite(A) && double.IsFinite(B)
        && double.IsFinite(D) && double.IsFinite(E) && Math.Abs((A * E) - (B * D)) > 1e-30;

    public (double Column, double Row) Inverse(double x, double y)
    {
        double determinant = (A * E) - (B * D), dx = x - X0, dy = y - Y0;
        return (((E * dx) - (B * dy)) / determinant, ((A * dy) - (D * dx)) / determinant);
    }
}
