using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Shape;

/// <summary>A depth that somebody read off a sounder.</summary>
/// <param name="Place">Where, in the lake's plane.</param>
/// <param name="DepthM">Depth below full pool, m, above 0.</param>
/// <param name="SdM">Standard error of it with that of the place, m, above 0.</param>
public readonly record struct Sounding(PlanePoint Place, double DepthM, double SdM);

/// <summary>What a sounding did.</summary>
/// <param name="IsTaken">False where the place is land by the outline: then nothing changed.</param>
/// <param name="SurpriseSd">How far the depth lay from what was believed there, in standard errors;
/// beyond 4 it is worth asking whether it is right.</param>
public readonly record struct SoundingEffect(bool IsTaken, double SurpriseSd);

/// <summary>
/// A guessed bottom drawn toward soundings, one by one: kriging of the difference to the guess, so that the error shrinks near them
/// and what they say of the lake as a whole goes everywhere. Not for two threads at once.
/// </summary>
/// <remarks>
/// Each sounding keeps one column over the water cells, so that the next one costs cells times soundings multiplications and nothing
/// is solved again (the columns of a Cholesky factor: RasmussenWilliams2006, appendix A). The nearest-neighbour kriging of the gridder
/// has one variogram for a whole lake and knows no error of a sounding; here both change from place to place.
/// </remarks>
public sealed class SoundedBottom
{
    /// <summary>Soundings that are taken one by one; more of them are drawn together (<see cref="AddAll"/>).</summary>
    public static readonly int MostSoundings = 400;

    private const float LeastDepthM = 0.1f;

    private readonly GuessedBottom _guess;
    private readonly float[] _meanM;
    private readonly float[] _varianceM2;
    private readonly List<float[]> _columnsM = [];

    internal SoundedBottom(GuessedBottom guess)
    {
        _guess = guess;
        Model = guess.Model ?? throw new InvalidOperationException("There is no bottom to draw: ask Refusal why.");
        _meanM = (float[])Model.MeanM.Clone();
        _varianceM2 = new float[_meanM.Length];
        for (int k = 0; k < _varianceM2.Length; k++) _varianceM2[k] = (float)Model.VarianceM2(k);
    }

    /// <summary>Soundings taken.</summary>
    public int Count => _columnsM.Count;

    /// <summary>Cells that the next sounding will work through: water cells, once for itself and once for each
    /// sounding before it.</summary>
    public long NextCellsCount => (long)_meanM.Length * (_columnsM.Count + 1);

    internal GuessModel Model { get; }

    internal ReadOnlySpan<float> MeanM => _meanM;

    internal ReadOnlySpan<float> VarianceM2 => _varianceM2;

    internal IReadOnlyList<float[]> ColumnsM => _columnsM;

    /// <summary>Takes a sounding.</summary>
    /// <param name="sounding">Where, how deep, how sure.</param>
    /// <returns>Whether it was taken, and how far it lay from what was believed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The depth or its error is not above 0.</exception>
    /// <exception cref="InvalidOperationException">There are <see cref="MostSoundings"/> already:
    /// begin anew and add all of them together.</exception>
    public SoundingEffect Add(Sounding sounding)
    {
        Require.Positive(sounding.DepthM, nameof(sounding));
        Require.Positive(sounding.SdM, nameof(sounding));
        int at = CellAt(sounding.Place);
        if (at < 0) return new SoundingEffect(false, 0);
        if (_columnsM.Count >= MostSoundings)
            throw new InvalidOperationException(
                FormattableString.Invariant($"{MostSoundings} soundings are the most that are taken one by one: begin anew with AddAll."));
        return Take(at, sounding.DepthM, sounding.SdM * sounding.SdM);
    }

    /// <summary>Takes a whole log: soundings closer to each other than the guess can tell apart are drawn together first.</summary>
    /// <param name="soundings">Soundings in any order; those on land are left out.</param>
    /// <param name="cancel">Stops the work between soundings.</param>
    /// <returns>Soundings that lay on water.</returns>
    public int AddAll(IReadOnlyList<Sounding> soundings, CancellationToken cancel = default)
    {
        Require.NotNull(soundings);
        foreach (Sounding sounding in soundings)
        {
            Require.Positive(sounding.DepthM, nameof(soundings));
            Require.Positive(sounding.SdM, nameof(soundings));
        }

        SoundingGroups groups = new(this, soundings);
        foreach (SoundingGroups.Group group in groups.Within(MostSoundings - _columnsM.Count))
        {
            cancel.ThrowIfCancellationRequested();
            Take(group.Cell, Model.MeanM[group.Cell] + group.OffM, group.VarianceM2);
        }

        return groups.OnWater;
    }

    /// <summary>The bottom as it is believed now.</summary>
    public DepthGrid Grid()
    {
        DepthGrid guess = _guess.Grid!;
        float[] depthM = new float[guess.DepthM.Length], sdM = new float[guess.DepthM.Length];
        Array.Fill(depthM, float.NaN);
        for (int k = 0; k < _meanM.Length; k++)
        {
            // Water stays water, however steep a difference was carried to the shore.
            depthM[Model.Cells[k]] = Math.Max(_meanM[k], Math.Min(LeastDepthM, Model.MeanM[k]));
            sdM[Model.Cells[k]] = MathF.Sqrt(_varianceM2[k]);
        }

        return new DepthGrid(guess.Projection, guess.Frame, depthM, sdM);
    }

    /// <summary>The water cell of a place, -1 on land.</summary>
    internal int CellAt(PlanePoint place) =>
        Model.Frame.TryCellAt(place, out int ix, out int iy) ? Model.IndexOf[Model.Frame.Index(ix, iy)] : -1;

    private SoundingEffect Take(int at, double depthM, double errorM2)
    {
        float[] column = ColumnM2(at, _columnsM);
        double sum = column[at] + errorM2, off = depthM - _meanM[at], root = Math.Sqrt(sum);
        float scale = (float)(1 / root), move = (float)(off / root);
        for (int k = 0; k < column.Length; k++)
        {
            float c = column[k] *= scale;
            _meanM[k] += c * move;
            _varianceM2[k] = Math.Max(0, _varianceM2[k] - (c * c));
        }

        _columnsM.Add(column);
        return new SoundingEffect(true, off / root);
    }

    /// <summary>Covariances of a water cell with all of them after what is known, m2.</summary>
    internal float[] ColumnM2(int at, IReadOnlyList<float[]> knownM)
    {
        float[] column = new float[_meanM.Length];
        Model.CovariancesM2(at, column);
        column[at] = (float)Model.VarianceM2(at);
        foreach (float[] known in knownM)
        {
            float factor = known[at];
            if (factor == 0) continue;
            for (int k = 0; k < column.Length; k++) column[k] -= factor * known[k];
        }

        column[at] = Math.Max(column[at], 1e-9f);
        return column;
    }
}
