using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Shape;

/// <summary>A place where a depth would teach most about the second shore.</summary>
/// <param name="Place">Where, in the lake's plane.</param>
/// <param name="LikelyDepthM">Depth believed there now, m.</param>
/// <param name="SdM">Standard error of it, m.</param>
/// <param name="GainShare">Share of the error of the stretch that crosses the thermocline (its variance, as far as it is left after the
/// places before it) that a depth here is expected to take away.</param>
public readonly record struct SoundingWish(PlanePoint Place, double LikelyDepthM, double SdM, double GainShare);

/// <summary>The few places where a depth would change today's second shore most.</summary>
/// <remarks>
/// Value of information: a place's worth is the variance that a depth there is expected to take from the cells that may hold the crossing,
/// each weighed by the density with which its bottom lies at the thermocline. The best is chosen, taken as sounded, and the next one chosen
/// (in the manner of Frazier2008).
/// </remarks>
public static class SoundHere
{
    private const int MostCandidates = 500;
    private const int MostJudged = 1200;

    /// <summary>Chooses places, the best first.</summary>
    /// <param name="bottom">The bottom as it is believed now.</param>
    /// <param name="thermoclineM">Depth of the thermocline today, m.</param>
    /// <param name="thermoclineSdM">Standard error of it, m; 0 or more.</param>
    /// <param name="count">Places wished, 1 to 50.</param>
    /// <param name="soundingSdM">Standard error that a depth will have, m.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>At most as many as wished; fewer where no further one would teach anything, none where no bottom can lie so deep.</returns>
    public static IReadOnlyList<SoundingWish> Best(
        SoundedBottom bottom, double thermoclineM, double thermoclineSdM, int count, double soundingSdM = 0.3,
        CancellationToken cancel = default)
    {
        Require.NotNull(bottom);
        Require.Positive(thermoclineM);
        Require.NotNegative(thermoclineSdM);
        Require.InRange(count, 1, 50);
        Require.Positive(soundingSdM);
        (int[] judged, float[] weight) = Stretch(bottom, thermoclineM, thermoclineSdM);
        if (judged.Length == 0) return [];
        int[] candidates = Candidates(bottom.Model, judged);
        Search search = new(bottom, judged, weight, candidates, soundingSdM * soundingSdM);
        List<SoundingWish> wishes = [];
        for (int wish = 0; wish < count; wish++)
        {
            cancel.ThrowIfCancellationRequested();
            if (search.Next() is not { } found) break;
            wishes.Add(new SoundingWish(bottom.Model.Frame.Centre(bottom.Model.Cells[found.Cell]), bottom.MeanM[found.Cell],
                Math.Sqrt(bottom.VarianceM2[found.Cell]), found.Share));
        }

        return wishes;
    }

    // Cells that may hold the crossing, and how likely each does: a sample of them in their order, heavier for being one of fewer.
    private static (int[] Cells, float[] Weight) Stretch(SoundedBottom bottom, double thermoclineM, double thermoclineSdM)
    {
        List<(int Cell, float Weight)> found = [];
        float most = 0;
        for (int k = 0; k < bottom.MeanM.Length; k++)
        {
            double variance = bottom.VarianceM2[k] + (thermoclineSdM * thermoclineSdM) + 1e-4, off = bottom.MeanM[k] - thermoclineM;
            float weight = (float)(Math.Exp(-0.5 * off * off / variance) / Math.Sqrt(variance));
            found.Add((k, weight));
            most = Math.Max(most, weight);
        }

        found.RemoveAll(f => f.Weight < 0.02f * most || !(f.Weight > 1e-12f));
        int step = Math.Max(1, (found.Count + MostJudged - 1) / MostJudged);
        var sample = found.Where((_, i) => i % step == 0).ToArray();
        return ([.. sample.Select(f => f.Cell)], [.. sample.Select(f => f.Weight)]);
    }

    // Places on a lattice over the whole water, and along the stretch itself.
    private static int[] Candidates(GuessModel model, int[] judged)
    {
        int step = Math.Max(1, (int)Math.Ceiling(Math.Sqrt(2.0 * model.Cells.Length / MostCandidates))), nx = model.Frame.Nx;
        List<int> candidates = [.. Enumerable.Range(0, model.Cells.Length)
            .Where(k => model.Cells[k] % nx % step == step / 2 && model.Cells[k] / nx % step == step / 2)];
        int every = Math.Max(1, judged.Length / (MostCandidates / 2));
        candidates.AddRange(judged.Where((_, i) => i % every == 0));
        return [.. candidates.Distinct()];
    }

    private sealed class Search(SoundedBottom bottom, int[] judged, float[] weight, int[] candidates, double errorM2)
    {
        private readonly List<float[]> _knownM = [.. bottom.ColumnsM];
        private readonly float[][] _covarianceM2 = CovariancesM2(bottom, judged, candidates);
        private readonly double[] _candidateM2 = [.. candidates.Select(c => (double)bottom.VarianceM2[c])];
        private readonly double[] _judgedM2 = [.. judged.Select(k => (double)bottom.VarianceM2[k])];

        public (int Cell, double Share)? Next()
        {
            double left = 0, best = 0;
            for (int q = 0; q < judged.Length; q++) left += weight[q] * _judgedM2[q];
            int chosen = -1;
            for (int c = 0; c < candidates.Length; c++)
            {
                double gain = 0;
                float[] row = _covarianceM2[c];
                for (int q = 0; q < row.Length; q++) gain += weight[q] * row[q] * row[q];
                gain /= _candidateM2[c] + errorM2;
                if (gain > best) (best, chosen) = (gain, c);
            }

            if (chosen < 0 || !(best > 1e-4 * left)) return null;
            Take(chosen);
            return (candidates[chosen], best / left);
        }

        private void Take(int chosen)
        {
            float[] column = bottom.ColumnM2(candidates[chosen], _knownM);
            float scale = (float)(1 / Math.Sqrt(column[candidates[chosen]] + errorM2));
            for (int k = 0; k < column.Length; k++) column[k] *= scale;
            _knownM.Add(column);
            for (int c = 0; c < candidates.Length; c++)
            {
                float at = column[candidates[c]];
                _candidateM2[c] = Math.Max(0, _candidateM2[c] - (at * at));
                if (at == 0) continue;
                float[] row = _covarianceM2[c];
                for (int q = 0; q < row.Length; q++) row[q] -= at * column[judged[q]];
            }

            for (int q = 0; q < judged.Length; q++) _judgedM2[q] = Math.Max(0, _judgedM2[q] - (column[judged[q]] * column[judged[q]]));
        }

        private static float[][] CovariancesM2(SoundedBottom bottom, int[] judged, int[] candidates)
        {
            float[][] rows = new float[candidates.Length][];
            for (int c = 0; c < rows.Length; c++)
            {
                float[] row = rows[c] = new float[judged.Length];
                int at = candidates[c];
                for (int q = 0; q < row.Length; q++)
                    row[q] = judged[q] == at ? (float)bottom.Model.VarianceM2(at) : (float)bottom.Model.CovarianceM2(at, judged[q]);
                foreach (float[] known in bottom.ColumnsM)
                {
                    float factor = known[at];
                    if (factor == 0) continue;
                    for (int q = 0; q < row.Length; q++) row[q] -= factor * known[judged[q]];
                }
            }

            return rows;
        }
    }
}
