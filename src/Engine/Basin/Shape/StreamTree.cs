using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Shape;

/// <summary>The drowned streams of a dammed valley: a tree along the middle of the water, rooted at the dam (cheapest ways:
/// Dijkstra1959).</summary>
internal sealed class StreamTree
{
    private readonly ShapeFields _shape;
    private readonly int[] _down;
    private readonly int[] _order;
    private readonly float[] _stepM;

    /// <summary>Grows the tree.</summary>
    /// <param name="shape">The outline.</param>
    /// <param name="dam">Water cell at the dam, as an index into the shape's cells.</param>
    /// <param name="cancel">Stops the work.</param>
    public StreamTree(ShapeFields shape, int dam, CancellationToken cancel)
    {
        _shape = shape;
        (_down, _order, _stepM) = Drain(shape, dam, cancel);
        FromDamM = new float[_down.Length];
        foreach (int k in _order) if (_down[k] >= 0) FromDamM[k] = FromDamM[_down[k]] + _stepM[k];
    }

    /// <summary>Way to the dam along the streams by water cell, m; 0 where no water leads there.</summary>
    public float[] FromDamM { get; }

    /// <summary>How deep the stream lies that a cell drains to, as a share of the depth at the dam, falling evenly along each
    /// stream from its tail.</summary>
    /// <param name="branchWidths">How many half widths of the water it joins a side valley must be long to be one.</param>
    public float[] Fall(double branchWidths)
    {
        int n = _down.Length;
        float[] up = new float[n], fall = new float[n];
        int[] main = new int[n];
        Array.Fill(main, -1);
        for (int q = n - 1; q >= 0; q--)
        {
            int k = _order[q], d = _down[k];
            if (d < 0 || up[k] + _stepM[k] <= up[d]) continue;
            (up[d], main[d]) = (up[k] + _stepM[k], k);
        }

        bool[] stream = new bool[n];
        foreach (int k in _order)
        {
            int d = _down[k];
            if (d < 0)
            {
                (fall[k], stream[k]) = (1, true);
                continue;
            }

            // Banks drain to their stream, and lie at its height; a side valley falls from its own tail.
            stream[k] = stream[d] && (main[d] == k || up[k] + _stepM[k] > branchWidths * Math.Max(_shape.WidthM[d], _shape.ShoreM[d]));
            fall[k] = stream[k] ? fall[d] * up[k] / Math.Max(up[k] + _stepM[k], 1e-3f) : fall[d];
        }

        return fall;
    }

    /// <summary>The water cell nearest to a place.</summary>
    public static int Nearest(ShapeFields shape, PlanePoint place)
    {
        int best = 0;
        double least = double.PositiveInfinity;
        for (int k = 0; k < shape.Cells.Length; k++)
        {
            double apart = shape.Frame.Centre(shape.Cells[k]).DistanceToM(place);
            if (apart < least) (least, best) = (apart, k);
        }

        return best;
    }

    /// <summary>Where a dam nobody has shown most likely stands: of the two ends of the longest way over the water,
    /// the one with the wider water before it.</summary>
    public static int LikelyDam(ShapeFields shape, CancellationToken cancel)
    {
        int widest = Array.IndexOf(shape.ShoreM, shape.ShoreM.Max());
        int one = Furthest(new StreamTree(shape, widest, cancel));
        StreamTree fromOne = new(shape, one, cancel);
        int other = Furthest(fromOne);
        float longestM = fromOne.FromDamM[other];
        double near = 0, far = 0, nearCount = 1e-9, farCount = 1e-9;
        for (int k = 0; k < shape.Cells.Length; k++)
        {
            if (fromOne.FromDamM[k] < 0.25f * longestM) (near, nearCount) = (near + shape.WidthM[k], nearCount + 1);
            else if (fromOne.FromDamM[k] > 0.75f * longestM) (far, farCount) = (far + shape.WidthM[k], farCount + 1);
        }

        return near / nearCount >= far / farCount ? one : other;
    }

    private static int Furthest(StreamTree tree)
    {
        int best = 0;
        for (int k = 0; k < tree.FromDamM.Length; k++) if (tree.FromDamM[k] > tree.FromDamM[best]) best = k;
        return best;
    }

    // The cheapest ways to the dam, dear near the shore: they run to the middle of the water and along it. Waters that do not
    // join the dam's hang on their own widest cell.
    private static (int[] Down, int[] Order, float[] StepM) Drain(ShapeFields shape, int dam, CancellationToken cancel)
    {
        int n = shape.Cells.Length, nx = shape.Frame.Nx;
        int[] down = new int[n], order = new int[n];
        float[] stepM = new float[n];
        double[] cost = new double[n];
        bool[] done = new bool[n];
        Array.Fill(cost, double.PositiveInfinity);
        Array.Fill(down, -1);
        PriorityQueue<int, double> open = new();
        int count = 0;
        double cellM = shape.Frame.CellM;
        foreach (int root in new[] { dam }.Concat(Enumerable.Range(0, n).OrderByDescending(k => shape.ShoreM[k])))
        {
            if (done[root]) continue;
            cost[root] = 0;
            open.Enqueue(root, 0);
            while (open.TryDequeue(out int k, out _))
            {
                if (done[k]) continue;
                if (count % 4096 == 0) cancel.ThrowIfCancellationRequested();
                (done[k], order[count++]) = (true, k);
                int x = shape.Cells[k] % nx, y = shape.Cells[k] / nx;
                for (int side = 0; side < 9; side++)
                {
                    int dx = (side % 3) - 1, dy = (side / 3) - 1;
                    if (!shape.Frame.Contains(x + dx, y + dy)) continue;
                    int j = shape.IndexOf[shape.Frame.Index(x + dx, y + dy)];
                    if (j < 0 || done[j]) continue;
                    double lengthM = cellM * (dx != 0 && dy != 0 ? 1.41421356 : 1), mid = (shape.ShoreM[j] + shape.ShoreM[k]) / cellM;
                    double reached = cost[k] + (lengthM / (mid * mid));
                    if (reached >= cost[j]) continue;
                    (cost[j], down[j], stepM[j]) = (reached, k, (float)lengthM);
                    open.Enqueue(j, reached);
                }
            }
        }

        return (down, order, stepM);
    }
}
