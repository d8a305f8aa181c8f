using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Demo.Terrain;

/// <summary>A height field under work: elevations over full pool, m, positive on land.</summary>
internal sealed class Canvas
{
    public Canvas(GridFrame frame)
    {
        Frame = frame;
        ElevationM = new float[frame.Count];
        Taken = new bool[frame.Count];
        Array.Fill(ElevationM, 90f);
    }

    public GridFrame Frame { get; }

    public float[] ElevationM { get; private set; }

    /// <summary>Cells under a placed form: nothing else is put there.</summary>
    public bool[] Taken { get; }

    public double AtM(PlanePoint place) =>
        Frame.TryCellAt(place, out int ix, out int iy) ? ElevationM[Frame.Index(ix, iy)] : double.NaN;

    /// <summary>Rise per run over the four neighbours.</summary>
    public double SlopeAt(int ix, int iy)
    {
        int x0 = Math.Max(0, ix - 1), x1 = Math.Min(Frame.Nx - 1, ix + 1), y0 = Math.Max(0, iy - 1), y1 = Math.Min(Frame.Ny - 1, iy + 1);
        double dx = (ElevationM[Frame.Index(x1, iy)] - ElevationM[Frame.Index(x0, iy)]) / ((x1 - x0) * Frame.CellM);
        double dy = (ElevationM[Frame.Index(ix, y1)] - ElevationM[Frame.Index(ix, y0)]) / ((y1 - y0) * Frame.CellM);
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    /// <summary>Visits every cell whose centre lies within a distance of a place.</summary>
    public void Within(PlanePoint place, double radiusM, Action<int, int, double> visit)
    {
        int cx = (int)Math.Round(Frame.ColumnAt(place.XM)), cy = (int)Math.Round(Frame.RowAt(place.YM)), n = (int)Math.Ceiling(radiusM / Frame.CellM);
        for (int iy = Math.Max(0, cy - n); iy <= Math.Min(Frame.Ny - 1, cy + n); iy++)
        {
            for (int ix = Math.Max(0, cx - n); ix <= Math.Min(Frame.Nx - 1, cx + n); ix++)
            {
                double d = Frame.Centre(ix, iy).DistanceToM(place);
                if (d <= radiusM) visit(ix, iy, d);
            }
        }
    }

    /// <summary>One pass of the 3 x 3 binomial blur: takes the knife edges off.</summary>
    public void Blur()
    {
        float[] old = ElevationM, next = (float[])old.Clone();
        int nx = Frame.Nx;
        for (int iy = 1; iy < Frame.Ny - 1; iy++)
        {
            for (int ix = 1; ix < nx - 1; ix++)
            {
                int i = (iy * nx) + ix;
                next[i] = ((4 * old[i]) + (2 * (old[i - 1] + old[i + 1] + old[i - nx] + old[i + nx]))
                    + old[i - nx - 1] + old[i - nx + 1] + old[i + nx - 1] + old[i + nx + 1]) / 16f;
            }
        }

        ElevationM = next;
    }

    /// <summary>Adds a smooth dome (or a bowl when the height is negative) on an ellipse.</summary>
    public void AddDome(PlanePoint place, double radiusM, double heightM, double stretch, double alongRad)
    {
        double c = Math.Cos(alongRad), s = Math.Sin(alongRad);
        Within(place, radiusM * Math.Max(1, stretch), (ix, iy, _) =>
        {
            PlanePoint p = Frame.Centre(ix, iy);
            double dx = p.XM - place.XM, dy = p.YM - place.YM;
            double u = ((dx * c) + (dy * s)) / (radiusM * stretch), v = ((dy * c) - (dx * s)) / radiusM;
            double rest = 1 - (u * u) - (v * v);
            if (rest <= 0) return;
            ElevationM[Frame.Index(ix, iy)] += (float)(heightM * rest * rest);
            Taken[Frame.Index(ix, iy)] = true;
        });
    }

    /// <summary>Lays a nose of land along a line: a rounded crest that falls off to both sides.</summary>
    /// <param name="crest">Places down the crest.</param>
    /// <param name="crestM">Elevation at each.</param>
    /// <param name="sideTan">Fall to the sides.</param>
    /// <param name="roundM">Half-width over which the top is rounded.</param>
    public void AddSpur(IReadOnlyList<PlanePoint> crest, IReadOnlyList<double> crestM, double sideTan, double roundM)
    {
        for (int k = 0; k < crest.Count; k++)
        {
            double topM = crestM[k];
            Within(crest[k], ((60 + Math.Abs(topM)) / sideTan) + roundM, (ix, iy, d) =>
            {
                int i = Frame.Index(ix, iy);
                double spurM = topM - (sideTan * (Math.Sqrt((d * d) + (roundM * roundM)) - roundM));
                if (spurM <= ElevationM[i]) return;
                if (spurM > ElevationM[i] + 0.3) Taken[i] = true;
                ElevationM[i] = (float)spurM;
            });
        }
    }
}
