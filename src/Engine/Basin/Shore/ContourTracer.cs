using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Shore;

/// <summary>Follows lines of one value through a field of cell centres (marching squares, linear along the sides).</summary>
/// <remarks>
/// A node at or above the level is inside. Where a square's diagonals disagree the mean of its corners decides which pair
/// is joined. Lines keep the inside on their left; they end where the field is not known. Source: LorensenCline1987 in
/// two dimensions.
/// </remarks>
internal sealed class ContourTracer(ContourField field)
{
    // Sides of a square: 0 south, 1 east, 2 north, 3 west. By case (SW 1, SE 2, NE 4, NW 8 inside) the side a line leaves
    // through for each side it enters by; -1 where none enters. Saddles (5, 10) are resolved apart.
    private static readonly sbyte[] LeavesBy = MakeTable();
    private const int StretchLength = 16;

    private readonly byte[] _seen = new byte[field.Width * field.Height];
    private readonly List<PlanePoint> _line = [];
    // Least and greatest value by row and stretch of squares, found once a second level is asked for: most stretches carry no line.
    private (float Least, float Most)[]? _stretches;
    private bool _again;

    /// <summary>Adds all lines of a level.</summary>
    public void Trace(double level, List<DepthContour> lines, double? levelName = null)
    {
        Array.Clear(_seen);
        ReadOnlySpan<float> values = field.Values;
        if (_again) _stretches ??= Stretches(values);
        _again = true;
        int perRow = (field.Width + StretchLength - 1) / StretchLength;
        for (int y = 0; y < field.Height - 1; y++)
        {
            int row = y * field.Width;
            for (int x = 0; x < field.Width - 1; x++)
            {
                if (_stretches is not null && x % StretchLength == 0)
                {
                    (float least, float most) = _stretches[(y * perRow) + (x / StretchLength)];
                    if (!(most >= level) || least >= level)
                    {
                        x += StretchLength - 1;
                        continue;
                    }
                }

                int kind = Case(values, row + x, level);
                if (kind <= 0) continue;
                for (int side = 0; side < 4; side++)
                {
                    if ((_seen[row + x] & (1 << side)) == 0 && Exit(values, row + x, kind, side, level) >= 0)
                        Follow(x, y, side, level, lines, levelName ?? level);
                }
            }
        }
    }

    // Of the squares that begin in a stretch, with all their corners; what is not known counts for neither.
    private (float Least, float Most)[] Stretches(ReadOnlySpan<float> values)
    {
        int perRow = (field.Width + StretchLength - 1) / StretchLength;
        var stretches = new (float Least, float Most)[perRow * field.Height];
        for (int y = 0; y < field.Height - 1; y++)
        {
            for (int b = 0; b < perRow; b++)
            {
                float least = float.PositiveInfinity, most = float.NegativeInfinity;
                int end = Math.Min((b + 1) * StretchLength, field.Width - 1);
                for (int x = b * StretchLength; x <= end; x++)
                {
                    float south = values[(y * field.Width) + x], north = values[((y + 1) * field.Width) + x];
                    if (south < least) least = south;
                    if (south > most) most = south;
                    if (north < least) least = north;
                    if (north > most) most = north;
                }

                stretches[(y * perRow) + b] = (least, most);
            }
        }

        return stretches;
    }

    // Follows back to where the line begins (or comes round), then forward through it.
    private void Follow(int x, int y, int side, double level, List<DepthContour> lines, double levelName)
    {
        ReadOnlySpan<float> values = field.Values;
        (int X, int Y, int Side) start = (x, y, side);
        (int X, int Y, int Side) at = start;
        while (Back(values, at, level) is { } before)
        {
            at = before;
            if (at == start) break;
        }

        start = at;
        _line.Clear();
        Append(values, at, level);
        bool closed = false;
        while (true)
        {
            int square = (at.Y * field.Width) + at.X;
            _seen[square] |= (byte)(1 << at.Side);
            int leave = Exit(values, square, Case(values, square, level), at.Side, level);
            Append(values, (at.X, at.Y, leave), level);
            (int X, int Y, int Side) next = Across(at.X, at.Y, leave);
            if (next == start) { closed = true; break; }
            if (!Known(next.X, next.Y) || Case(values, (next.Y * field.Width) + next.X, level) < 0) break;
            at = next;
        }

        Emit(closed, lines, levelName);
    }

    private void Emit(bool closed, List<DepthContour> lines, double levelName)
    {
        if (closed && _line.Count > 1 && _line[^1].SquaredDistanceToM2(_line[0]) < 1e-18 * field.Frame.CellAreaM2) _line.RemoveAt(_line.Count - 1);
        if (_line.Count < 2 || (closed && _line.Count < 3)) return;
        lines.Add(new DepthContour(levelName, [.. _line], closed));
    }

    // The square and side by which a line came into the square that it now enters by a side.
    private (int X, int Y, int Side)? Back(ReadOnlySpan<float> values, (int X, int Y, int Side) at, double level)
    {
        (int px, int py, int leave) = Across(at.X, at.Y, at.Side);
        if (!Known(px, py)) return null;
        int square = (py * field.Width) + px, kind = Case(values, square, level);
        if (kind <= 0) return null;
        for (int side = 0; side < 4; side++)
            if (Exit(values, square, kind, side, level) == leave) return (px, py, side);
        return null;
    }

    private bool Known(int x, int y) => (uint)x < (uint)(field.Width - 1) && (uint)y < (uint)(field.Height - 1);

    private static (int X, int Y, int Side) Across(int x, int y, int side) => side switch
    {
        0 => (x, y - 1, 2),
        1 => (x + 1, y, 3),
        2 => (x, y + 1, 0),
        _ => (x - 1, y, 1),
    };

    // 0 and 15 carry no line and are told as 0; -1 where a corner is not known.
    private int Case(ReadOnlySpan<float> values, int square, double level)
    {
        float sw = values[square], se = values[square + 1], nw = values[square + field.Width], ne = values[square + field.Width + 1];
        int kind = (sw >= level ? 1 : 0) | (se >= level ? 2 : 0) | (ne >= level ? 4 : 0) | (nw >= level ? 8 : 0);
        if (kind == 0) return float.IsNaN(sw + se + nw + ne) ? -1 : 0;
        return float.IsNaN(sw + se + nw + ne) ? -1 : kind == 15 ? 0 : kind;
    }

    private int Exit(ReadOnlySpan<float> values, int square, int kind, int side, double level)
    {
        if (kind is 5 or 10)
        {
            double mean = 0.25 * ((double)values[square] + values[square + 1] + values[square + field.Width] + values[square + field.Width + 1]);
            if (mean < level) kind = kind == 5 ? 16 : 17;
        }

        return LeavesBy[(kind * 4) + side];
    }

    private void Append(ReadOnlySpan<float> values, (int X, int Y, int Side) at, double level)
    {
        int x0 = at.Side == 1 ? at.X + 1 : at.X, y0 = at.Side == 2 ? at.Y + 1 : at.Y;
        bool along = at.Side is 0 or 2;
        int node = (y0 * field.Width) + x0;
        double a = values[node], b = values[along ? node + 1 : node + field.Width];
        double t = Math.Clamp((level - a) / (b - a), 0, 1);
        GridFrame frame = field.Frame;
        double column = x0 - 1 + (along ? t : 0), row = y0 - 1 + (along ? 0 : t);
        PlanePoint point = new(frame.WestM + ((column + 0.5) * frame.CellM), frame.SouthM + ((row + 0.5) * frame.CellM));
        if (_line.Count == 0 || _line[^1].SquaredDistanceToM2(point) > 1e-18 * frame.CellAreaM2) _line.Add(point);
    }

    private static sbyte[] MakeTable()
    {
        sbyte[] table = new sbyte[18 * 4];
        Array.Fill(table, (sbyte)-1);
        // (case, enters by, leaves by), inside on the left: walking from the entry to the exit.
        ReadOnlySpan<(int Kind, int In, int Out)> moves =
        [
            (1, 0, 3), (2, 1, 0), (3, 1, 3), (4, 2, 1), (6, 2, 0), (7, 2, 3), (8, 3, 2), (9, 0, 2), (11, 1, 2),
            (12, 3, 1), (13, 0, 1), (14, 3, 0),
            (5, 0, 1), (5, 2, 3), (10, 1, 2), (10, 3, 0),
            (16, 0, 3), (16, 2, 1), (17, 1, 0), (17, 3, 2),
        ];
        foreach ((int kind, int enter, int leave) in moves) table[(kind * 4) + enter] = (sbyte)leave;
        return table;
    }
}
