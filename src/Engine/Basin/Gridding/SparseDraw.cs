using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Value of a surface at a place; NaN where it has none. Not for two threads at once.</summary>
internal delegate double AskSurface(double xM, double yM);

/// <summary>Draws a surface onto cells: asked in every cell near data, far from them at the corners of squares and straight between.</summary>
/// <remarks>
/// Between tracks that lie far apart a surface bends slowly, and asking it costs most there, for its neighbours are many. A
/// square is drawn straight where data lie further than it is wide and the middles of it and of its sides say that straight is
/// close enough; else it is cut in four. The limits are our choice.
/// </remarks>
internal static class SparseDraw
{
    /// <summary>Side of the widest square, cells; bands of rows hold whole ones.</summary>
    private const int WidestCells = 16;

    /// <summary>Side of the narrowest square that is drawn straight, cells.</summary>
    private const int NarrowestCells = 4;

    /// <summary>What a middle may differ from straight: in standard errors of a depth drawn there, and in metres.</summary>
    private const float Close = 0.15f, CloseM = 0.25f;

    /// <summary>Distance from the middle of a square to data, in sides.</summary>
    private const float LeastSides = 1;

    /// <summary>Fills the wanted cells; those where the surface has no value are left as they are.</summary>
    /// <param name="surface">Makes what a thread asks.</param>
    /// <param name="wanted">[Ny*Nx] cells to fill.</param>
    /// <param name="squaredCells">[Ny*Nx] squared distance to the nearest datum, cells squared.</param>
    /// <param name="error">Error of a drawn depth by distance to data.</param>
    /// <param name="frame">Frame.</param>
    /// <param name="target">[Ny*Nx] receives values.</param>
    /// <param name="cancel">Stops the work.</param>
    public static void Draw(Func<AskSurface> surface, bool[] wanted, float[] squaredCells, ErrorModel error, GridFrame frame, float[] target, CancellationToken cancel) =>
        SideBySide.Bands(frame.Ny, () => new Band(surface(), wanted, squaredCells, error, frame, target), (band, first, end) => band.Draw(first, end), cancel);

    private sealed class Band(AskSurface ask, bool[] wanted, float[] squaredCells, ErrorModel error, GridFrame frame, float[] target)
    {
        private const float Unasked = float.PositiveInfinity;

        // The first row of the next band is asked here too: its cells are the lower corners of the last squares.
        private readonly float[] _asked = new float[(SideBySide.BandRows + 1) * frame.Nx];
        private int _first;
        private int _end;

        public void Draw(int first, int end)
        {
            (_first, _end) = (first, end);
            Array.Fill(_asked, Unasked);
            for (int y = first; y < end; y += WidestCells)
                for (int x = 0; x < frame.Nx; x += WidestCells) Square(x, y, WidestCells);
        }

        private void Square(int x, int y, int side)
        {
            if (x >= frame.Nx || y >= _end || !IsWanted(x, y, side)) return;
            if (side == 1)
            {
                float value = At(x, y);
                if (!float.IsNaN(value)) target[frame.Index(x, y)] = value;
                return;
            }

            if (side >= NarrowestCells && TryStraight(x, y, side)) return;
            int half = side / 2;
            Square(x, y, half);
            Square(x + half, y, half);
            Square(x, y + half, half);
            Square(x + half, y + half, half);
        }

        private bool IsWanted(int x, int y, int side)
        {
            int endX = Math.Min(frame.Nx, x + side), endY = Math.Min(_end, y + side);
            for (int iy = y; iy < endY; iy++)
                if (wanted.AsSpan(frame.Index(x, iy), endX - x).Contains(true)) return true;
            return false;
        }

        private bool TryStraight(int x, int y, int side)
        {
            int middleX = x + (side / 2), middleY = y + (side / 2);
            if (x + side >= frame.Nx || y + side >= frame.Ny) return false;
            float toDatum = MathF.Sqrt(squaredCells[frame.Index(middleX, middleY)]), closeM = Math.Min(CloseM, Close * error.SdM(toDatum * frame.CellM));
            if (toDatum < LeastSides * side) return false;
            float a = At(x, y), b = At(x + side, y), c = At(x, y + side), d = At(x + side, y + side);
            // Not close either when one of them has no value.
            bool close = IsClose(middleX, middleY, 0.25f * (a + b + c + d)) && IsClose(middleX, y, 0.5f * (a + b)) && IsClose(middleX, y + side, 0.5f * (c + d))
                && IsClose(x, middleY, 0.5f * (a + c)) && IsClose(x + side, middleY, 0.5f * (b + d));
            if (!close) return false;
            for (int iy = 0; iy < side; iy++)
            {
                float down = (float)iy / side, left = a + (down * (c - a)), right = b + (down * (d - b));
                for (int ix = 0, i = frame.Index(x, y + iy); ix < side; ix++, i++)
                    if (wanted[i]) target[i] = left + ((float)ix / side * (right - left));
            }

            return true;

            bool IsClose(int atX, int atY, float straight) => Math.Abs(At(atX, atY) - straight) <= closeM;
        }

        private float At(int x, int y)
        {
            ref float value = ref _asked[((y - _first) * frame.Nx) + x];
            if (value != Unasked) return value;
            PlanePoint at = frame.Centre(x, y);
            return value = (float)ask(at.XM, at.YM);
        }
    }
}
