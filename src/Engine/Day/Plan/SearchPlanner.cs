using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Day;

/// <summary>
/// Near-best plans for many stops: starts from priced walks, improves by inserting, replacing, dropping, moving and
/// reversing stops, and shakes the order to leave local optima. States a bound that no plan can beat.
/// </summary>
internal sealed class SearchPlanner
{
    /// <summary>Stops it can weigh at once.</summary>
    public static readonly int MostStops = 63;

    /// <summary>Shakes of the order by habit: more is better and slower.</summary>
    public static readonly int UsualRounds = 6;

    /// <summary>Gap to the bound, as a share of it, at which the search rests.</summary>
    public static readonly double GoodEnoughShare = 0.006;

    /// <summary>Rounds of pricing by habit: more tightens the bound.</summary>
    public static readonly int UsualPriceRounds = 30;

    private readonly PlanProblem _problem;
    private readonly DaySequence _day;
    private readonly List<int> _bestOrder = [];
    private readonly int[] _bestBreaks;
    private readonly SeededRandom _random;
    private readonly int[] _stretch = new int[MostStops];
    private readonly List<int> _bestStretch = [];
    private double _bestValue = double.NegativeInfinity, _stretchValue;
    private int _stretchAfter;

    private SearchPlanner(PlanProblem problem, ulong seed)
    {
        _problem = problem;
        _day = new DaySequence(problem);
        _bestBreaks = new int[problem.Breaks.Count];
        _random = new SeededRandom(seed, 8);
    }

    /// <summary>Plans, and bounds what any plan could reach.</summary>
    /// <param name="problem">At most <see cref="MostStops"/> stops and 3 breaks.</param>
    /// <param name="rounds">Shakes of the order: more is better and slower.</param>
    /// <param name="priceRounds">Rounds of pricing: more tightens the bound.</param>
    /// <param name="seed">Seed of the shakes.</param>
    /// <param name="cancel">Ends the work early with an exception.</param>
    public static (PlanSteps Plan, double Bound) Solve(PlanProblem problem, int rounds, int priceRounds, ulong seed, CancellationToken cancel = default)
    {
        Require.InRange(problem.StopCount, 0, MostStops, nameof(problem));
        Require.InRange(problem.Breaks.Count, 0, 3, nameof(problem));
        var search = new SearchPlanner(problem, seed);
        double bound = search.FromPrices(priceRounds, cancel);
        search.Shake(rounds, bound, cancel);
        search._day.Set(search._bestOrder, search._bestBreaks);
        return (search._day.Times(), Math.Max(bound, search._bestValue));
    }

    private double FromPrices(int priceRounds, CancellationToken cancel)
    {
        var prices = new WalkBound(_problem);
        List<int> walk = [];
        prices.Remembering(walk);
        Adopt(walk);
        Improve();
        double pace = 1.5, standing = double.PositiveInfinity;
        int idle = 0;
        for (int round = 0; round < priceRounds; round++)
        {
            cancel.ThrowIfCancellationRequested();
            prices.Round(_bestValue, pace, walk);
            if (prices.Value < standing - (1e-4 * Math.Abs(standing))) { standing = prices.Value; idle = 0; }
            else if (++idle >= 4) { pace *= 0.7; idle = 0; }

            if (prices.Value - _bestValue <= GoodEnoughShare * Math.Abs(prices.Value % PlanProblem.MustReward)) break;
            if (round % 6 != 5) continue;
            Adopt(walk);
            Improve();
        }

        return prices.Value;
    }

    private void Shake(int rounds, double bound, CancellationToken cancel)
    {
        for (int round = 0; round < rounds && _bestValue < bound - (GoodEnoughShare * Math.Abs(bound % PlanProblem.MustReward)); round++)
        {
            cancel.ThrowIfCancellationRequested();
            _day.Set(_bestOrder, _bestBreaks);
            int count = _day.Order.Count;
            HashSet<int> barred = [];
            if (count > 0)
            {
                int drop = Math.Min(count, 1 + _random.NextInt(Math.Max(2, Math.Min(4, count / 2)))), at = _random.NextInt(count - drop + 1);
                for (int i = 0; i < drop; i++)
                {
                    int stop = _day.Order[at];
                    if (i == 0 || _random.NextDouble() < 0.5) barred.Add(stop);
                    Drop(at);
                }
            }

            _day.Refresh();
            Improve(barred);
            if (barred.Count > 0) Improve();
        }
    }

    // A walk's stops in order, each at its first visit, with the breaks where they stood.
    private void Adopt(List<int> walk)
    {
        List<int> order = [];
        int[] breaks = new int[_problem.Breaks.Count];
        Array.Fill(breaks, -1);
        foreach (int item in walk)
        {
            if (item < 0) breaks[-1 - item] = order.Count;
            else if (!order.Contains(item)) order.Add(item);
        }

        _day.Set(order, breaks);
        while (_day.Value == double.NegativeInfinity && _day.Order.Count > 0)
        {
            Drop(_day.Order.Count - 1);
            _day.Refresh();
        }
    }

    private void Drop(int position)
    {
        _day.Order.RemoveAt(position);
        for (int p = 0; p < _day.BreakAfter.Length; p++)
            if (_day.BreakAfter[p] > position) _day.BreakAfter[p]--;
    }

    private void Improve(HashSet<int>? barred = null)
    {
        while (OneStopBetter(barred) || OrderBetter() || BreaksBetter())
        {
        }

        if (_day.Value <= _bestValue + 1e-12) return;
        _bestValue = _day.Value;
        _bestOrder.Clear();
        _bestOrder.AddRange(_day.Order);
        _day.BreakAfter.CopyTo(_bestBreaks, 0);
    }

    // The best single insertion, replacement or omission.
    private bool OneStopBetter(HashSet<int>? barred)
    {
        double best = _day.Value + 1e-9;
        int bestStop = -1, bestAfter = -1, bestInstead = 0;
        List<int> order = _day.Order;
        for (int stop = 0; stop < _problem.StopCount; stop++)
        {
            if (order.Contains(stop) || (barred?.Contains(stop) ?? false)) continue;
            for (int after = 0; after <= order.Count; after++)
            {
                (double inserted, double inPlace) = _day.ValueWith(stop, after);
                if (inserted > best) { best = inserted; bestStop = stop; bestAfter = after; bestInstead = 0; }
                if (inPlace > best) { best = inPlace; bestStop = stop; bestAfter = after; bestInstead = 1; }
            }
        }

        for (int after = 0; after < order.Count; after++)
        {
            double value = _day.ValueWithout(after);
            if (value > best) { best = value; bestStop = -1; bestAfter = after; bestInstead = 1; }
        }

        if (bestAfter < 0) return false;
        if (bestStop < 0)
        {
            Drop(bestAfter);
        }
        else if (bestInstead == 1)
        {
            order[bestAfter] = bestStop;
        }
        else
        {
            order.Insert(bestAfter, bestStop);
            for (int p = 0; p < _day.BreakAfter.Length; p++)
                if (_day.BreakAfter[p] > bestAfter) _day.BreakAfter[p]++;
        }

        _day.Refresh();
        return true;
    }

    // Reversals of a stretch, moves of a stretch of one to three stops, swaps of two stops.
    private bool OrderBetter()
    {
        List<int> order = _day.Order;
        int n = order.Count;
        _bestStretch.Clear();
        _stretchValue = _day.Value + 1e-9;
        for (int i = 0; i < n; i++)
        {
            for (int j = i + 1; j < n; j++)
            {
                Span<int> stretch = Stretch(i, j);
                stretch.Reverse();
                Consider(i, stretch);
                if (j < i + 2) continue;
                stretch = Stretch(i, j);
                (stretch[0], stretch[^1]) = (stretch[^1], stretch[0]);
                Consider(i, stretch);
                for (int length = 1; length <= Math.Min(3, j - i); length++)
                {
                    // The first stops of the stretch go to its end, or the last to its front.
                    Rotate(Stretch(i, j), length);
                    Consider(i, _stretch.AsSpan(0, j - i + 1));
                    if (length == j - i + 1 - length) continue;
                    Rotate(Stretch(i, j), j - i + 1 - length);
                    Consider(i, _stretch.AsSpan(0, j - i + 1));
                }
            }
        }

        if (_bestStretch.Count == 0) return false;
        for (int k = 0; k < _bestStretch.Count; k++) order[_stretchAfter + k] = _bestStretch[k];
        _day.Refresh();
        return true;
    }

    private Span<int> Stretch(int first, int last)
    {
        for (int k = first; k <= last; k++) _stretch[k - first] = _day.Order[k];
        return _stretch.AsSpan(0, last - first + 1);
    }

    private static void Rotate(Span<int> stretch, int count)
    {
        stretch[..count].Reverse();
        stretch[count..].Reverse();
        stretch.Reverse();
    }

    private void Consider(int after, Span<int> stretch)
    {
        double value = _day.ValueWithStretch(after, stretch);
        if (value <= _stretchValue) return;
        _stretchValue = value;
        _stretchAfter = after;
        _bestStretch.Clear();
        foreach (int stop in stretch) _bestStretch.Add(stop);
    }

    private bool BreaksBetter()
    {
        for (int p = 0; p < _day.BreakAfter.Length; p++)
        {
            int[] breaks = [.. _day.BreakAfter];
            for (int position = 0; position <= _day.Order.Count; position++)
            {
                if (position == _day.BreakAfter[p]) continue;
                breaks[p] = position;
                if (_day.ValueOf(_day.Order, breaks) <= _day.Value + 1e-9) continue;
                _day.Set(_day.Order, breaks);
                return true;
            }
        }

        return false;
    }
}
