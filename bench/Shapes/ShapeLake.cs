using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Basin.Shape;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Bench.Shapes;

/// <summary>A lake whose bottom is known: its water cells, what the outline says of them, and the truth.</summary>
internal sealed class ShapeLake
{
    /// <summary>Water cells about which a truth is drawn: as many as the product guesses with.</summary>
    private const int WaterCells = 12_000;

    private readonly Dictionary<double, float[]> _falls = [];
    private StreamTree? _tree;

    private ShapeLake(string name, BasinKind kind, LocalProjection plane, GridFrame frame, bool[] water, float[] depthM, Survey? survey)
    {
        (Name, Kind, Plane, Frame) = (name, kind, plane, frame);
        Shape = new ShapeFields(frame, water, default);
        TruthM = [.. Shape.Cells.Select(i => depthM[i])];
        DeepestM = TruthM.Max();
        MeanM = TruthM.Average();
        // A dam stands where the water is deepest beside the shore: that is where its owner would point.
        if (kind == BasinKind.Dammed)
            Dam = Enumerable.Range(0, TruthM.Length).Where(k => Shape.ShoreM[k] < 1.6 * frame.CellM).MaxBy(k => TruthM[k]);
        Judged = JudgedBy(survey);
        Sample = [.. Judged.Where((_, q) => q % Math.Max(1, Judged.Length / 1500) == 0)];
        ConeRmse = Rmse(k => DeepestM * Shape.ShoreM[k] / Shape.WidestM) / DeepestM;
    }

    public string Name { get; }

    public BasinKind Kind { get; }

    public LocalProjection Plane { get; }

    public GridFrame Frame { get; }

    public ShapeFields Shape { get; }

    /// <summary>True depth by water cell, m.</summary>
    public float[] TruthM { get; }

    public double DeepestM { get; }

    public double MeanM { get; }

    public double AreaM2 => TruthM.Length * Frame.CellAreaM2;

    /// <summary>Water cell at the dam; -1 for a natural lake.</summary>
    public int Dam { get; } = -1;

    /// <summary>Water cells whose truth was measured: where a part of a lake was sounded, the rest says nothing.</summary>
    public int[] Judged { get; }

    /// <summary>Cells that learning looks at.</summary>
    public int[] Sample { get; }

    /// <summary>Error of a cone of the same outline and greatest depth, as a share of that depth.</summary>
    public double ConeRmse { get; }

    public static ShapeLake? Of(string name, BasinKind kind, DepthGrid grid, Survey? survey = null)
    {
        // The largest water of a file is the lake.
        WaterPieces pieces = WaterPieces.Of(grid.DepthM, grid.Frame);
        if (pieces.Count == 0) return null;
        int largest = pieces.Largest, step = Math.Max(1, (int)Math.Round(Math.Sqrt((double)pieces.Cells[largest] / WaterCells)));
        GridFrame fine = grid.Frame;
        GridFrame frame = new(fine.WestM, fine.SouthM, fine.CellM * step, (fine.Nx + step - 1) / step, (fine.Ny + step - 1) / step);
        float[] sum = new float[frame.Count];
        int[] count = new int[frame.Count];
        for (int i = 0; i < grid.DepthM.Length; i++)
        {
            if (pieces.Label[i] != largest) continue;
            int c = frame.Index(i % fine.Nx / step, i / fine.Nx / step);
            sum[c] += grid.DepthM[i];
            count[c]++;
        }

        bool[] water = new bool[frame.Count];
        for (int c = 0; c < water.Length; c++)
        {
            water[c] = 2 * count[c] >= step * step;
            sum[c] = water[c] ? sum[c] / count[c] : float.NaN;
        }

        return water.Count(w => w) < 200 ? null : new ShapeLake(name, kind, grid.Projection, frame, water, sum, survey);
    }

    /// <summary>Depth of the streams; null for a natural lake.</summary>
    public float[]? Fall(double branchFactor)
    {
        if (Kind != BasinKind.Dammed) return null;
        _tree ??= new StreamTree(Shape, Dam, default);
        lock (_falls)
        {
            if (!_falls.TryGetValue(branchFactor, out float[]? fall)) _falls[branchFactor] = fall = _tree.Fall(branchFactor);
            return fall;
        }
    }

    /// <summary>What a user knows of it.</summary>
    public LakeSketch Sketch(bool deepest, bool mean) => new(new Shoreline([]))
    {
        Kind = Kind,
        Dam = Dam >= 0 ? Plane.ToGeo(Frame.Centre(Shape.Cells[Dam])) : null,
        DeepestM = deepest ? DeepestM : null,
        MeanM = mean ? MeanM : null,
    };

    public GuessedBottom Guess(ShapeNumbers numbers, bool deepest = true, bool mean = false) =>
        BottomGuesser.OnShape(Plane, Shape, Fall(numbers.Of(Kind).BranchFactor), Sketch(deepest, mean), numbers.Of(Kind), []);

    public double Rmse(Func<int, double> depthM) => Math.Sqrt(Judged.Average(k => Math.Pow(depthM(k) - TruthM[k], 2)));

    private int[] JudgedBy(Survey? survey)
    {
        int[] all = [.. Enumerable.Range(0, TruthM.Length)];
        if (survey is null || survey.Soundings.Count == 0 || survey.Contours.Count + survey.Rasters.Count > 0) return all;
        bool[] sounded = new bool[Frame.Count];
        foreach (SoundingSet set in survey.Soundings)
            for (int i = 0; i < set.DepthM.Length; i++)
                if (set.DepthM[i] > 0 && Frame.TryCellAt(Plane.ToPlane(set.LatDeg[i], set.LonDeg[i]), out int x, out int y))
                    sounded[Frame.Index(x, y)] = true;
        float[] squared = NearestCell.Of(sounded, Frame.Nx, Frame.Ny).SquaredCells;
        double reach = 0.3 * Shape.WidestM / Frame.CellM;
        return [.. all.Where(k => squared[Shape.Cells[k]] <= reach * reach)];
    }
}
