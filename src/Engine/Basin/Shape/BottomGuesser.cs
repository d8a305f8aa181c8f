using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Shape;

/// <summary>From an outline to the likeliest bottom, with the error of each cell.</summary>
public static class BottomGuesser
{
    /// <summary>Cells of a frame at most, land with them: a winding valley fills little of its box.</summary>
    private const int MostCells = 800_000;

    /// <summary>Spread of a mean depth that was told: as a share of it.</summary>
    private const double ToldMeanSd = 0.1;

    private const double NormalP90 = 1.2816;

    /// <summary>Guesses a bottom. Never throws for what the outline holds: where it holds no water the result says why.</summary>
    /// <param name="sketch">What is known.</param>
    /// <param name="numbers">What is believed; null takes what was learned.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentOutOfRangeException">A depth is not above 0, or the wished number of cells is out of range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static GuessedBottom Guess(LakeSketch sketch, ShapeNumbers? numbers = null, CancellationToken cancel = default)
    {
        Require.NotNull(sketch);
        if (sketch.DeepestM is double deepest) Require.Positive(deepest, nameof(sketch));
        if (sketch.MeanM is double mean) Require.Positive(mean, nameof(sketch));
        Require.InRange(sketch.WaterCells, 100, 200_000, nameof(sketch));
        if (OutlineMask.Of(sketch, MostCells) is not { } outline) return new GuessedBottom { Refusal = BasinFindings.EmptyOutline.Of() };
        return OnCells(outline, sketch, numbers ?? ShapeNumbers.Learned, cancel);
    }

    /// <summary>Guesses the bottom of given water cells, one at least.</summary>
    private static GuessedBottom OnCells(OutlineMask outline, LakeSketch sketch, ShapeNumbers learned, CancellationToken cancel)
    {
        ShapeFields shape = new(outline.Frame, outline.Water, cancel);
        BasinNumbers numbers = learned.Of(sketch.Kind);
        List<Finding> assumed = [];
        (float[]? fall, PlanePoint? dam) = Streams(shape, outline.Projection, sketch, numbers, assumed, cancel);
        return OnShape(outline.Projection, shape, fall, sketch, numbers, assumed) with { Dam = dam };
    }

    /// <summary>Guesses the bottom of a measured outline.</summary>
    internal static GuessedBottom OnShape(
        LocalProjection plane, ShapeFields shape, float[]? fall, LakeSketch sketch, BasinNumbers numbers, List<Finding> assumed)
    {
        float[] share = RelativeShape.Of(shape, fall, numbers);
        Depths depths = DepthsOf(share, shape.Cells.Length * shape.Frame.CellAreaM2, sketch, numbers, assumed);
        GuessModel model = Model(shape, share, depths, numbers);
        return new GuessedBottom
        {
            Grid = GridOf(plane, model),
            Assumed = assumed,
            DeepestM = depths.DeepestM,
            DeepestLogSd = depths.LogSd,
            Model = model,
        };
    }

    private static (float[]? Fall, PlanePoint? Dam) Streams(
        ShapeFields shape, LocalProjection plane, LakeSketch sketch, BasinNumbers numbers, List<Finding> assumed, CancellationToken cancel)
    {
        if (sketch.Kind != BasinKind.Dammed) return (null, null);
        int root = sketch.Dam is { } told ? StreamTree.Nearest(shape, plane.ToPlane(told)) : StreamTree.LikelyDam(shape, cancel);
        if (sketch.Dam is null) assumed.Add(BasinFindings.GuessedDam.Of());
        return (new StreamTree(shape, root, cancel).Fall(numbers.BranchFactor), shape.Frame.Centre(shape.Cells[root]));
    }

    /// <summary>What is taken of the depths.</summary>
    /// <param name="DeepestM">Greatest depth, m.</param>
    /// <param name="LogSd">Spread of its logarithm.</param>
    /// <param name="Bend">Power on the shares.</param>
    /// <param name="BendSd">Spread of the bend's logarithm.</param>
    private readonly record struct Depths(double DeepestM, double LogSd, double Bend, double BendSd);

    private static Depths DepthsOf(float[] share, double areaM2, LakeSketch sketch, BasinNumbers numbers, List<Finding> assumed)
    {
        double mean = RelativeShape.MeanOf(share, 1);
        if (sketch.DeepestM is double deepestM)
        {
            if (sketch.MeanM is not double meanM) return new Depths(deepestM, 0, 1, numbers.BendSd);
            double bend = RelativeShape.Bend(share, meanM / deepestM);
            return new Depths(deepestM, 0, bend, Math.Min(numbers.BendSd, ToldMeanSd * BendPerMean(share, bend)));
        }

        if (sketch.MeanM is double onlyMeanM)
        {
            // The bend that spreads the mean spreads the depth that goes with it.
            double logSd = numbers.BendSd / BendPerMean(share, 1);
            assumed.Add(BasinFindings.DeepestFromMean.Of(Told.Depth(onlyMeanM / mean)));
            return new Depths(onlyMeanM / mean, Math.Sqrt((logSd * logSd) + (ToldMeanSd * ToldMeanSd)), 1, 0);
        }

        double likelyM = Math.Exp(numbers.DeepestLogValue + (numbers.DeepestAreaPower * Math.Log(areaM2 / 1e6)));
        double spread = Math.Exp(NormalP90 * numbers.DeepestLogSd);
        assumed.Add(BasinFindings.DeepestFromArea.Of(Told.Depth(likelyM), Told.Depth(likelyM / spread), Told.Depth(likelyM * spread)));
        return new Depths(likelyM, numbers.UnknownFactor * numbers.DeepestLogSd, 1, numbers.BendSd);
    }

    // By how much the logarithm of the bend moves where that of the mean does.
    private static double BendPerMean(float[] share, double bend)
    {
        double up = Math.Log(RelativeShape.MeanOf(share, bend * 1.1)), down = Math.Log(RelativeShape.MeanOf(share, bend / 1.1));
        return 2 * Math.Log(1.1) / Math.Max(1e-3, down - up);
    }

    private static GuessModel Model(ShapeFields shape, float[] share, Depths depths, BasinNumbers numbers)
    {
        int n = share.Length;
        float[] meanM = new float[n], localSdM = new float[n], scaleM = new float[n], bendM = new float[n];
        for (int k = 0; k < n; k++)
        {
            double u = Math.Max(1e-4, Math.Pow(share[k], depths.Bend));
            meanM[k] = (float)(depths.DeepestM * u);
            scaleM[k] = (float)(depths.DeepestM * u * depths.LogSd);
            bendM[k] = (float)(depths.DeepestM * u * -Math.Log(u) * depths.BendSd);
            localSdM[k] = (float)(depths.DeepestM * LocalShare(u, numbers));
        }

        float[][] modesM = depths.LogSd > 0 ? [bendM, scaleM] : [bendM];
        return new GuessModel
        {
            Frame = shape.Frame,
            Cells = shape.Cells,
            IndexOf = shape.IndexOf,
            MeanM = meanM,
            ModesM = modesM,
            LocalSdM = localSdM,
            RangeM = Math.Max(2 * shape.Frame.CellM, numbers.RangeFactor * shape.WidestM),
            RoughShare = numbers.RoughShare,
        };
    }

    /// <summary>Local error as a share of the greatest depth, where the guess is a share of it.</summary>
    internal static double LocalShare(double share, BasinNumbers numbers) =>
        Math.Sqrt((numbers.ShoreSd * numbers.ShoreSd * Math.Min(1, 4 * share)) + (numbers.DeepSd * numbers.DeepSd * share));

    private static DepthGrid GridOf(LocalProjection plane, GuessModel model)
    {
        float[] depthM = new float[model.Frame.Count], sdM = new float[model.Frame.Count];
        Array.Fill(depthM, float.NaN);
        for (int k = 0; k < model.Cells.Length; k++)
        {
            depthM[model.Cells[k]] = model.MeanM[k];
            sdM[model.Cells[k]] = (float)Math.Sqrt(model.VarianceM2(k));
        }

        return new DepthGrid(plane, model.Frame, depthM, sdM);
    }
}
