namespace SecondShore.Engine.Basin.Gridding;

/// <content>Building: order of insertion, split and flip.</content>
internal sealed partial class Triangulation
{
    private int[] _stack = new int[256];

    private void Build(CancellationToken cancel)
    {
        int[] order = InsertionOrder();
        if (!TryFirstTriangle(order, out int third)) return;
        for (int k = 0; k < order.Length; k++)
        {
            if ((k & 0xFFFF) == 0) cancel.ThrowIfCancellationRequested();
            int point = order[k];
            if (k != third && point >= 0) Insert(point);
        }

        _stack = [];
    }

    // Marks the first triangle's points as done (-1) and returns the place of its third point.
    private bool TryFirstTriangle(int[] order, out int third)
    {
        third = -1;
        if (order.Length < 3) return false;
        int a = order[0], second = 1;
        while (second < order.Length && _x[order[second]] == _x[a] && _y[order[second]] == _y[a]) second++;
        if (second >= order.Length) return false;
        int b = order[second];
        for (third = second + 1; third < order.Length; third++)
        {
            int c = order[third];
            long turn = Orient(a, b, _x[c], _y[c]);
            if (turn == 0) continue;
            if (turn > 0) FirstTriangle(a, b, c); else FirstTriangle(b, a, c);
            for (int k = 0; k <= second; k++) order[k] = -1;
            return true;
        }

        return false;
    }

    private void FirstTriangle(int a, int b, int c)
    {
        int g = Ghost;
        ReadOnlySpan<int> corners = [a, b, c, b, a, g, c, b, g, a, c, g];
        corners.CopyTo(_origin);
        _edges = 12;
        Link(0, 3);
        Link(1, 6);
        Link(2, 9);
        Link(4, 11);
        Link(5, 7);
        Link(8, 10);
        _last = 0;
    }

    private void Insert(int point)
    {
        int x = _x[point], y = _y[point];
        int triangle = Locate(x, y, _last);
        int e = triangle * 3;
        for (int k = 0; k < 3; k++)
        {
            int v = _origin[e + k];
            if (v == Ghost || _x[v] != x || _y[v] != y) continue;
            _last = triangle;
            return;
        }

        int m = _edges, n = _edges + 3;
        _edges += 6;
        int a = _origin[e], b = _origin[e + 1], c = _origin[e + 2];
        int twinB = _twin[e + 1], twinC = _twin[e + 2];
        _origin[e + 2] = point;
        (_origin[m], _origin[m + 1], _origin[m + 2]) = (b, c, point);
        (_origin[n], _origin[n + 1], _origin[n + 2]) = (c, a, point);
        Link(m, twinB);
        Link(n, twinC);
        Link(e + 1, m + 2);
        Link(m + 1, n + 2);
        Link(n + 1, e + 2);
        _last = triangle;
        Legalise(e, m, n, point);
    }

    // Flips until no triangle across an edge opposite the point has the point in its circle.
    private void Legalise(int first, int second, int third, int point)
    {
        int x = _x[point], y = _y[point], depth = 0;
        _stack[depth++] = first;
        _stack[depth++] = second;
        _stack[depth++] = third;
        while (depth > 0)
        {
            int e = _stack[--depth], f = _twin[e];
            if (!Conflicts(f / 3, x, y)) continue;
            int e1 = Next(e), f1 = Next(f), f2 = Previous(f);
            int outerE = _twin[e1], outerF = _twin[f1];
            _origin[e1] = _origin[f2];
            _origin[f1] = point;
            Link(e, outerF);
            Link(f, outerE);
            Link(e1, f1);
            if (depth + 2 > _stack.Length) Array.Resize(ref _stack, _stack.Length * 2);
            _stack[depth++] = e;
            _stack[depth++] = f2;
        }
    }

    private void Link(int e, int f)
    {
        _twin[e] = f;
        _twin[f] = e;
    }

    // Rounds of doubling size, each along a Hilbert curve: short walks, and few flips whatever the order of the data.
    private int[] InsertionOrder()
    {
        int n = Count;
        ulong[] keys = new ulong[n];
        int[] order = new int[n];
        int rounds = 0;
        while (rounds < 20 && (n >> rounds) > 512) rounds++;
        int shift = CurveShift();
        for (int i = 0; i < n; i++)
        {
            uint bits = (uint)i * 2654435769u;
            bits = (bits ^ (bits >> 15)) * 0x85EBCA6Bu;
            bits ^= bits >> 13;
            int early = Math.Min(rounds, System.Numerics.BitOperations.TrailingZeroCount(bits | 0x80000000u));
            order[i] = i;
            keys[i] = ((ulong)(rounds - early) << 32) | HilbertIndex((uint)_x[i] >> shift, (uint)_y[i] >> shift);
        }

        Array.Sort(keys, order);
        return order;
    }

    // Lattice bits that the curve of 2^16 by 2^16 leaves out.
    private int CurveShift()
    {
        int most = 0;
        for (int i = 0; i < Count; i++) most |= _x[i] | _y[i];
        return Math.Max(0, 16 - System.Numerics.BitOperations.LeadingZeroCount((uint)most));
    }

    // Place along a Hilbert curve of 2^16 by 2^16.
    private static uint HilbertIndex(uint x, uint y)
    {
        uint place = 0;
        x = Math.Min(x, 65535u);
        y = Math.Min(y, 65535u);
        for (uint s = 32768; s > 0; s >>= 1)
        {
            uint rx = (x & s) != 0 ? 1u : 0u, ry = (y & s) != 0 ? 1u : 0u;
            place += s * s * ((3 * rx) ^ ry);
            if (ry != 0) continue;
            if (rx == 1) (x, y) = (65535 - x, 65535 - y);
            (x, y) = (y, x);
        }

        return place;
    }
}
