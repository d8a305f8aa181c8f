namespace SecondShore.Engine.Motion.Layers;

/// <summary>
/// The operator A z = -div(h_r grad z) with no flux through the interface's edge, on the connected pieces of the interface,
/// and its inverse on fields of zero mean by conjugate gradients.
/// </summary>
internal sealed class InterfaceSystem
{
    private readonly int[] _piece;
    private readonly int[] _pieceSizes;
    private readonly int[] _faces;
    private readonly double[] _faceM;
    private readonly double[] _inverseDiagonal;

    /// <summary>Sets up the operator for layers at rest.</summary>
    public InterfaceSystem(InterfaceGrid grid, LayerPair layers)
    {
        InterfaceArrays fields = new(grid.Length);
        new FaceRefresh(grid, layers, InterfaceOptions.Ideal).Thicknesses(fields);
        int[] compact = new int[grid.Length];
        List<int> entries = [];
        for (int i = 0; i < grid.Length; i++)
        {
            compact[i] = grid.Active[i] ? entries.Count : -1;
            if (grid.Active[i]) entries.Add(i);
        }

        Entries = [.. entries];
        List<int> faces = [];
        List<double> faceM = [];
        _inverseDiagonal = new double[Entries.Length];
        foreach (int i in Entries)
        {
            AddFace(i, i + 1, fields.EastRoot[i]);
            AddFace(i, i + grid.Stride, fields.NorthRoot[i]);
        }

        for (int c = 0; c < Entries.Length; c++) _inverseDiagonal[c] = _inverseDiagonal[c] > 0 ? 1.0 / _inverseDiagonal[c] : 0.0;
        _faces = [.. faces];
        _faceM = [.. faceM];
        (_piece, _pieceSizes) = Pieces();

        void AddFace(int a, int b, double root)
        {
            if (!(root > 0)) return;
            faces.Add(compact[a]);
            faces.Add(compact[b]);
            faceM.Add(root * root);
            _inverseDiagonal[compact[a]] += root * root;
            _inverseDiagonal[compact[b]] += root * root;
        }
    }

    /// <summary>Array entry of each compact cell.</summary>
    public int[] Entries { get; }

    /// <summary>Number of faces between cells.</summary>
    public int FaceCount => _faceM.Length;

    /// <summary>The two compact cells of a face and its effective thickness, m. East and north faces go from the lower entry to the higher.</summary>
    public (int A, int B, double EffectiveM) Face(int face) => (_faces[2 * face], _faces[(2 * face) + 1], _faceM[face]);

    /// <summary>Whether a face lies between neighbours of one row.</summary>
    public bool IsEast(int face) => Entries[_faces[(2 * face) + 1]] - Entries[_faces[2 * face]] == 1;

    /// <summary>Keeps the largest piece and sets the rest to 0.</summary>
    public void KeepLargestPiece(double[] z)
    {
        int largest = 0;
        for (int p = 1; p < _pieceSizes.Length; p++)
            if (_pieceSizes[p] > _pieceSizes[largest]) largest = p;
        for (int c = 0; c < z.Length; c++)
            if (_piece[c] != largest) z[c] = 0.0;
    }

    /// <summary>Takes the mean of each piece away.</summary>
    public void Centre(double[] z)
    {
        double[] sums = new double[_pieceSizes.Length];
        for (int c = 0; c < z.Length; c++) sums[_piece[c]] += z[c];
        for (int c = 0; c < z.Length; c++) z[c] -= sums[_piece[c]] / _pieceSizes[_piece[c]];
    }

    /// <summary>A z times the cell's area, m: sums of h_r (z - z of the neighbour).</summary>
    public void Apply(double[] z, double[] result)
    {
        Array.Clear(result);
        for (int face = 0; face < _faceM.Length; face++)
        {
            int a = _faces[2 * face], b = _faces[(2 * face) + 1];
            double flux = _faceM[face] * (z[a] - z[b]);
            result[a] += flux;
            result[b] -= flux;
        }
    }

    /// <summary>Solves A z dx2 = right for a right side of zero mean in each piece; z holds the first guess.</summary>
    /// <returns>Passes taken.</returns>
    public int Solve(double[] right, double[] z, double relative, int maxPasses)
    {
        int n = z.Length;
        double[] r = new double[n], p = new double[n], ap = new double[n];
        Apply(z, ap);
        double target = 0, rho = 0;
        for (int c = 0; c < n; c++)
        {
            r[c] = right[c] - ap[c];
            target += right[c] * right[c] * _inverseDiagonal[c];
            p[c] = _inverseDiagonal[c] * r[c];
            rho += r[c] * p[c];
        }

        target *= relative * relative;
        int pass = 0;
        for (; pass < maxPasses && rho > target; pass++)
        {
            Apply(p, ap);
            double curvature = 0;
            for (int c = 0; c < n; c++) curvature += p[c] * ap[c];
            if (!(curvature > 0)) break;
            double step = rho / curvature, next = 0;
            for (int c = 0; c < n; c++)
            {
                z[c] += step * p[c];
                r[c] -= step * ap[c];
                next += r[c] * r[c] * _inverseDiagonal[c];
            }

            double keep = next / rho;
            rho = next;
            for (int c = 0; c < n; c++) p[c] = (_inverseDiagonal[c] * r[c]) + (keep * p[c]);
        }

        Centre(z);
        return pass;
    }

    /// <summary>Steps from the cell farthest from the middle of the largest piece: the first guess of the gravest mode.</summary>
    public double[] DistanceAlong()
    {
        int n = Entries.Length;
        (int[] starts, int[] neighbours) = Neighbours();
        int largest = Array.IndexOf(_pieceSizes, Max(_pieceSizes)), from = Array.IndexOf(_piece, largest);
        int[] distance = [];
        for (int pass = 0; pass < 2; pass++)
        {
            distance = Walk(from, starts, neighbours);
            for (int c = 0; c < n; c++)
                if (distance[c] > distance[from]) from = c;
        }

        double[] along = new double[n];
        for (int c = 0; c < n; c++) along[c] = Math.Max(0, distance[c]);
        return along;

        static int Max(int[] values)
        {
            int best = 0;
            foreach (int value in values) best = Math.Max(best, value);
            return best;
        }
    }

    private int[] Walk(int from, int[] starts, int[] neighbours)
    {
        int[] distance = new int[Entries.Length];
        Array.Fill(distance, -1);
        Queue<int> queue = new();
        queue.Enqueue(from);
        distance[from] = 0;
        while (queue.TryDequeue(out int c))
        {
            for (int k = starts[c]; k < starts[c + 1]; k++)
            {
                if (distance[neighbours[k]] >= 0) continue;
                distance[neighbours[k]] = distance[c] + 1;
                queue.Enqueue(neighbours[k]);
            }
        }

        return distance;
    }

    private (int[] Starts, int[] Neighbours) Neighbours()
    {
        int[] starts = new int[Entries.Length + 1];
        foreach (int c in _faces) starts[c + 1]++;
        for (int c = 0; c < Entries.Length; c++) starts[c + 1] += starts[c];
        int[] at = [.. starts], neighbours = new int[_faces.Length];
        for (int face = 0; face < _faceM.Length; face++)
        {
            int a = _faces[2 * face], b = _faces[(2 * face) + 1];
            neighbours[at[a]++] = b;
            neighbours[at[b]++] = a;
        }

        return (starts, neighbours);
    }

    private (int[] Piece, int[] Sizes) Pieces()
    {
        (int[] starts, int[] neighbours) = Neighbours();
        int[] piece = new int[Entries.Length];
        Array.Fill(piece, -1);
        List<int> sizes = [];
        Stack<int> open = new();
        for (int c = 0; c < piece.Length; c++)
        {
            if (piece[c] >= 0) continue;
            piece[c] = sizes.Count;
            open.Push(c);
            int size = 0;
            while (open.TryPop(out int at))
            {
                size++;
                for (int k = starts[at]; k < starts[at + 1]; k++)
                {
                    if (piece[neighbours[k]] >= 0) continue;
                    piece[neighbours[k]] = sizes.Count;
                    open.Push(neighbours[k]);
                }
            }

            sizes.Add(size);
        }

        return (piece, [.. sizes]);
    }
}
