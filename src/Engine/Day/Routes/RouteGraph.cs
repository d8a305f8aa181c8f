using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Day;

/// <summary>
/// Waypoints over navigable water: one for each block of cells and piece of water in it, joined to neighbours it can be
/// seen from. Shortest times over it are the first guess of a route; <see cref="RouteSmoother"/> pulls them straight.
/// </summary>
internal sealed class RouteGraph
{
    // Neighbours one block away and a knight's move away: 16 directions keep the first guess within 3 % of any angle.
    private static readonly (int Dx, int Dy)[] Half = [(1, 0), (1, 1), (0, 1), (-1, 1), (2, 1), (1, 2), (-1, 2), (-2, 1)];
    private readonly NavigableWater _water;
    private readonly List<PlanePoint> _nodes = [];
    private readonly int[] _edgeStart;
    private readonly int[] _edgeTo;
    private readonly float[] _edgeS;

    /// <summary>Builds the graph.</summary>
    /// <param name="water">The water.</param>
    /// <param name="block">Side of a block, cells.</param>
    public RouteGraph(NavigableWater water, int block)
    {
        _water = water;
        Block = block;
        GridFrame frame = water.Frame;
        BlocksX = ((frame.Nx - 1) / block) + 1;
        BlocksY = ((frame.Ny - 1) / block) + 1;
        NodeOfCell = new int[frame.Count];
        Array.Fill(NodeOfCell, -1);
        List<int>[] nodesOfBlock = MakeNodes();
        (_edgeStart, _edgeTo, _edgeS) = MakeEdges(nodesOfBlock);
    }

    /// <summary>Side of a block, cells.</summary>
    public int Block { get; }

    /// <summary>Blocks in a row.</summary>
    public int BlocksX { get; }

    /// <summary>Rows of blocks.</summary>
    public int BlocksY { get; }

    /// <summary>[Ny*Nx] the node that stands for an open cell; -1 for a blocked one.</summary>
    public int[] NodeOfCell { get; }

    /// <summary>Number of nodes.</summary>
    public int Count => _nodes.Count;

    /// <summary>Place of a node.</summary>
    public PlanePoint Node(int index) => _nodes[index];

    /// <summary>Shortest times from a node to all others.</summary>
    /// <param name="source">The node.</param>
    /// <param name="slowness">[BlocksX*BlocksY] factor on times, or empty.</param>
    /// <param name="timeS">[Count] times, s, written; infinite where there is no way.</param>
    /// <param name="previous">[Count] the node before, written; -1 at the source.</param>
    public void ShortestS(int source, ReadOnlySpan<float> slowness, float[] timeS, int[] previous)
    {
        Array.Fill(timeS, float.PositiveInfinity);
        Array.Fill(previous, -1);
        timeS[source] = 0;
        var queue = new PriorityQueue<int, float>();
        queue.Enqueue(source, 0);
        while (queue.TryDequeue(out int node, out float atS))
        {
            if (atS > timeS[node]) continue;
            float own = slowness.IsEmpty ? 1f : slowness[BlockOf(node)];
            for (int e = _edgeStart[node]; e < _edgeStart[node + 1]; e++)
            {
                int to = _edgeTo[e];
                float factor = slowness.IsEmpty ? 1f : 0.5f * (own + slowness[BlockOf(to)]);
                float arriveS = atS + (_edgeS[e] * factor);
                if (arriveS >= timeS[to]) continue;
                timeS[to] = arriveS;
                previous[to] = node;
                queue.Enqueue(to, arriveS);
            }
        }
    }

    /// <summary>The block a node lies in.</summary>
    public int BlockOf(int node)
    {
        _water.Frame.TryCellAt(_nodes[node], out int ix, out int iy);
        return ((iy / Block) * BlocksX) + (ix / Block);
    }

    // In each block, each connected piece of open cells gets a node at its cell nearest to the piece's middle.
    private List<int>[] MakeNodes()
    {
        var nodesOfBlock = new List<int>[BlocksX * BlocksY];
        List<int> piece = [];
        for (int by = 0; by < BlocksY; by++)
        {
            for (int bx = 0; bx < BlocksX; bx++)
            {
                List<int> own = nodesOfBlock[(by * BlocksX) + bx] = [];
                for (int iy = by * Block; iy < Math.Min(_water.Frame.Ny, (by + 1) * Block); iy++)
                {
                    for (int ix = bx * Block; ix < Math.Min(_water.Frame.Nx, (bx + 1) * Block); ix++)
                    {
                        if (!_water.IsOpen(ix, iy) || NodeOfCell[_water.Frame.Index(ix, iy)] >= 0) continue;
                        int node = _nodes.Count;
                        Flood(bx, by, ix, iy, node, piece);
                        _nodes.Add(MiddleOf(piece));
                        own.Add(node);
                    }
                }
            }
        }

        return nodesOfBlock;
    }

    private void Flood(int bx, int by, int ix, int iy, int node, List<int> piece)
    {
        GridFrame frame = _water.Frame;
        piece.Clear();
        piece.Add(frame.Index(ix, iy));
        NodeOfCell[piece[0]] = node;
        for (int k = 0; k < piece.Count; k++)
        {
            int x = piece[k] % frame.Nx, y = piece[k] / frame.Nx;
            Visit(x + 1, y);
            Visit(x - 1, y);
            Visit(x, y + 1);
            Visit(x, y - 1);
        }

        void Visit(int x, int y)
        {
            if (x / Block != bx || y / Block != by || !_water.IsOpen(x, y) || NodeOfCell[frame.Index(x, y)] >= 0) return;
            NodeOfCell[frame.Index(x, y)] = node;
            piece.Add(frame.Index(x, y));
        }
    }

    private PlanePoint MiddleOf(List<int> piece)
    {
        double x = 0, y = 0;
        foreach (int cell in piece)
        {
            PlanePoint centre = _water.Frame.Centre(cell);
            x += centre.XM;
            y += centre.YM;
        }

        var middle = new PlanePoint(x / piece.Count, y / piece.Count);
        PlanePoint best = _water.Frame.Centre(piece[0]);
        foreach (int cell in piece)
        {
            PlanePoint centre = _water.Frame.Centre(cell);
            if (centre.SquaredDistanceToM2(middle) < best.SquaredDistanceToM2(middle)) best = centre;
        }

        return best;
    }

    private (int[] Start, int[] To, float[] S) MakeEdges(List<int>[] nodesOfBlock)
    {
        List<(int A, int B, float S)> edges = [];
        for (int by = 0; by < BlocksY; by++)
        {
            for (int bx = 0; bx < BlocksX; bx++)
            {
                foreach ((int dx, int dy) in Half)
                {
                    int ox = bx + dx, oy = by + dy;
                    if (ox < 0 || ox >= BlocksX || oy < 0 || oy >= BlocksY) continue;
                    foreach (int a in nodesOfBlock[(by * BlocksX) + bx])
                    {
                        foreach (int b in nodesOfBlock[(oy * BlocksX) + ox])
                        {
                            double s = _water.StraightS(_nodes[a], _nodes[b], [], 1, 1);
                            if (double.IsPositiveInfinity(s) && Math.Abs(dx) + Math.Abs(dy) == 1) s = AroundS(a, b);
                            if (s < double.PositiveInfinity) edges.Add((a, b, (float)s));
                        }
                    }
                }
            }
        }

        int[] start = new int[_nodes.Count + 1];
        foreach ((int a, int b, _) in edges) { start[a + 1]++; start[b + 1]++; }
        for (int i = 0; i < _nodes.Count; i++) start[i + 1] += start[i];
        int[] fill = [.. start], to = new int[2 * edges.Count];
        float[] timeS = new float[2 * edges.Count];
        foreach ((int a, int b, float s) in edges)
        {
            (to[fill[a]], timeS[fill[a]++]) = (b, s);
            (to[fill[b]], timeS[fill[b]++]) = (a, s);
        }

        return (start, to, timeS);
    }

    // Pieces that touch but do not see each other are joined by their way over cells, so that no strait is lost.
    private double AroundS(int a, int b)
    {
        IReadOnlyList<PlanePoint>? way = CellWay(a, b);
        if (way is null) return double.PositiveInfinity;
        double s = 0;
        for (int i = 1; i < way.Count; i++) s += _water.StraightS(way[i - 1], way[i], [], 1, 1);
        return s;
    }

    /// <summary>The way from a node's place to another's over the cells of the two pieces; null when they do not touch.</summary>
    public IReadOnlyList<PlanePoint>? CellWay(int a, int b) => CellWay(_nodes[a], _nodes[b], a, b);

    /// <summary>The way between two points over the cells of the pieces of two nodes (which may be one); null when they do not touch.</summary>
    public IReadOnlyList<PlanePoint>? CellWay(PlanePoint from, PlanePoint to, int a, int b)
    {
        GridFrame frame = _water.Frame;
        if (!frame.TryCellAt(from, out int fx, out int fy) || !frame.TryCellAt(to, out int tx, out int ty)) return null;
        int start = frame.Index(fx, fy), goal = frame.Index(tx, ty);
        Dictionary<int, int> cameFrom = new() { [start] = start };
        Queue<int> queue = new();
        queue.Enqueue(start);
        while (queue.Count > 0 && !cameFrom.ContainsKey(goal))
        {
            int cell = queue.Dequeue(), x = cell % frame.Nx, y = cell / frame.Nx;
            Visit(cell, x + 1, y);
            Visit(cell, x - 1, y);
            Visit(cell, x, y + 1);
            Visit(cell, x, y - 1);
        }

        if (!cameFrom.ContainsKey(goal)) return null;
        List<PlanePoint> way = [to];
        for (int cell = goal; cell != start; cell = cameFrom[cell]) way.Add(frame.Centre(cell));
        way.Add(frame.Centre(start));
        way.Add(from);
        way.Reverse();
        return way;

        void Visit(int cell, int x, int y)
        {
            if (!frame.Contains(x, y)) return;
            int index = frame.Index(x, y), node = NodeOfCell[index];
            if ((node == a || node == b) && node >= 0 && cameFrom.TryAdd(index, cell)) queue.Enqueue(index);
        }
    }
}
