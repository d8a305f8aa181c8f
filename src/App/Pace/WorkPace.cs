namespace SecondShore.App.Pace;

/// <summary>How far a piece of work is and how long it still takes, by its former runs on this device.</summary>
/// <remarks>
/// <para>
/// For every former run: how long it still took from the place that the work has told last. What is left is the median of those. It
/// is never less; it is more, in proportion, when this run has been slower up to here than the median.
/// </para>
/// <para>
/// Between two ticks the clock goes on, but no further than the next tick came in the former runs: work that is overdue does not
/// count down to nothing. Where it is long overdue no seconds are given at all. A device's first run gives none either.
/// </para>
/// </remarks>
/// <param name="former">Former runs; empty on a device's first.</param>
/// <param name="weights">Of the work's parts: what each takes of the whole where nothing was measured here yet.</param>
internal sealed class WorkPace(IReadOnlyList<WorkRun> former, params IReadOnlyList<double> weights)
{
    // Of a former run's length: slower by a moment at the very start says nothing about the rest.
    private const double Settling = 0.1;
    // Overdue by half of what a step took before, and by two seconds at least.
    private const double Patience = 1.5, PatienceS = 2;
    private readonly List<(double Place, double SecondS)> _ticks = [];
    private int _part;
    private double _place;
    private double _toldS;
    private double _shown;

    private int Parts => Math.Max(1, weights.Count);

    /// <summary>The work's next part begins.</summary>
    /// <param name="part">Which, from 0.</param>
    /// <param name="elapsedS">Since the work began, s.</param>
    public void Begin(int part, double elapsedS)
    {
        _part = Math.Clamp(part, _part, Math.Max(_part, Parts - 1));
        Tell(_part, elapsedS);
    }

    /// <summary>The part at hand tells how far it is.</summary>
    /// <param name="share">Of the part, 0 to 1.</param>
    /// <param name="elapsedS">Since the work began, s.</param>
    public void Told(double share, double elapsedS) => Tell(_part + Math.Clamp(share, 0, 1), elapsedS);

    /// <summary>How it stands.</summary>
    /// <param name="elapsedS">Since the work began, s.</param>
    public WorkLeft At(double elapsedS)
    {
        if (former.Count == 0) return new WorkLeft(Grown(ByWeights()), null, false);
        double sinceS = Math.Max(0, elapsedS - _toldS);
        double toldPace = Pace(_toldS, Median(former.Select(r => r.SecondAt(_place))));
        double[] nowS = [.. former.Select(r => Math.Min(r.SecondAt(_place) + (sinceS / toldPace), r.SecondBeyond(_place)))];
        double leftS = Median(former.Select((r, i) => r.TookS - nowS[i])) * Pace(elapsedS, Median(nowS));
        double stepS = Median(former.Select(r => r.SecondBeyond(_place) - r.SecondAt(_place)));
        bool overdue = sinceS > (Patience * toldPace * stepS) + PatienceS;
        return new WorkLeft(Grown(elapsedS / Math.Max(1e-3, elapsedS + leftS)), overdue ? null : leftS, overdue);
    }

    /// <summary>This run, done.</summary>
    /// <param name="tookS">All of it, s.</param>
    public WorkRun Done(double tookS) => new(_ticks, tookS);

    private void Tell(double place, double elapsedS)
    {
        if (place < _place || (_ticks.Count > 0 && place <= _place)) return;
        (_place, _toldS) = (place, elapsedS);
        _ticks.Add((place, elapsedS));
    }

    // How much slower this run is than the median of the former ones; never faster, so that never less is promised.
    private double Pace(double elapsedS, double medianS)
    {
        double settlingS = Settling * Median(former.Select(r => r.TookS));
        return Math.Max(1, (elapsedS + settlingS) / Math.Max(1e-3, medianS + settlingS));
    }

    private double ByWeights()
    {
        if (weights.Count == 0) return _place;
        double done = 0;
        for (int part = 0; part < weights.Count; part++) done += weights[part] * Math.Clamp(_place - part, 0, 1);
        return done / weights.Sum();
    }

    private double Grown(double share) => _shown = Math.Max(_shown, Math.Clamp(share, 0, 1));

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        int middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
    }
}

/// <summary>How a piece of work stands.</summary>
/// <param name="Share">Of its time, 0 to 1, as far as known; never goes back.</param>
/// <param name="LeftS">What is left, s; null where nothing is known of it.</param>
/// <param name="Overdue">Whether it takes longer than it did before, so that what is left is not known.</param>
internal readonly record struct WorkLeft(double Share, double? LeftS, bool Overdue);
