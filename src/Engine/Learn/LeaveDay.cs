using SecondShore.Engine.Core;

namespace SecondShore.Engine.Learn;

/// <summary>
/// When to leave with the rest of the day in view: stays and runs are weighed against what the time left can still bring at
/// stops like the next one, solved backwards over time left, time fished and bites (dynamic programming on five minutes).
/// </summary>
/// <remarks>
/// No rule that knows only the same beliefs can do better on its steps: with like stops this is the best policy. The rule of
/// <see cref="LeaveRule"/> is its limit for a long day. Immutable after it is made; making it takes some milliseconds.
/// </remarks>
public sealed class LeaveDay
{
    private static readonly double StepH = 1.0 / 12.0;
    private static readonly int MostBites = 30;
    private static readonly int MostSteps = 90;
    private readonly double _travelSteps;
    private readonly double[] _arriving;
    private readonly double[][,] _staying;

    /// <summary>Makes the rule for a day.</summary>
    /// <param name="belief">What is believed of each stop on arrival.</param>
    /// <param name="travelH">Time from one to the next, H.</param>
    /// <param name="dayH">Longest time left that is asked about, H, at most 16.</param>
    public LeaveDay(StopBelief belief, double travelH, double dayH)
    {
        Belief = Require.NotNull(belief);
        _travelSteps = Require.InRange(travelH, 0, 8) / StepH;
        int steps = (int)Math.Ceiling(Require.InRange(dayH, 0, 16) / StepH);
        _arriving = new double[steps + 2];
        _staying = new double[steps + 2][,];
        Step[] gains = [.. Enumerable.Range(0, MostSteps + 1).Select(t => new Step(belief, t))];
        for (int left = 0; left <= steps + 1; left++)
        {
            double[,] now = new double[MostSteps + 1, MostBites + 1];
            _staying[left] = now;
            if (left == 0) continue;
            double leave = ArrivingWith(left - _travelSteps);
            double[,] next = _staying[left - 1];
            for (int t = 0; t <= MostSteps; t++)
                for (int n = 0; n <= MostBites; n++) now[t, n] = Math.Max(leave, gains[t].Stay(belief.Shape + n, next, Math.Min(t + 1, MostSteps), n));
            _arriving[left] = now[0, 0];
        }
    }

    /// <summary>What is believed of each stop on arrival.</summary>
    public StopBelief Belief { get; }

    /// <summary>Bites that a time left is worth on arrival at a new stop.</summary>
    public double ArrivingBitesCount(double leftH) => ArrivingWith(leftH / StepH);

    /// <summary>Whether to leave a stop.</summary>
    /// <param name="fishedH">Time fished at it, H.</param>
    /// <param name="bites">Bites there.</param>
    /// <param name="leftH">Time left of the day, H, up to the one this was made for.</param>
    public bool Leaves(double fishedH, int bites, double leftH)
    {
        Require.NotNegative(fishedH);
        Require.InRange(bites, 0, 100_000);
        double left = Math.Min(leftH / StepH, _staying.Length - 2);
        if (left < 1) return false;
        int t = Math.Min((int)Math.Round(fishedH / StepH), MostSteps), n = Math.Min(bites, MostBites), low = (int)(left - 1);
        double part = left - 1 - low, leave = ArrivingWith(left - _travelSteps);
        Step gain = new(Belief, t);
        int then = Math.Min(t + 1, MostSteps);
        double stay = ((1 - part) * gain.Stay(Belief.Shape + n, _staying[low], then, n)) + (part * gain.Stay(Belief.Shape + n, _staying[low + 1], then, n));
        return leave > stay;
    }

    private double ArrivingWith(double steps)
    {
        if (steps <= 0) return 0;
        int low = Math.Min((int)steps, _arriving.Length - 1), high = Math.Min(low + 1, _arriving.Length - 1);
        return _arriving[low] + ((steps - low) * Math.Max(0, _arriving[high] - _arriving[low]));
    }

    // Five minutes at a stop: the exposure before them and what they add to it.
    private readonly struct Step
    {
        private readonly double _beforeH, _gainedH, _logNone;

        public Step(StopBelief belief, int step)
        {
            double from = LeaveRule.ExposureH(belief, step * StepH);
            _beforeH = belief.EffortH + from;
            _gainedH = LeaveRule.ExposureH(belief, (step + 1) * StepH) - from;
            _logNone = Math.Log(_beforeH / (_beforeH + _gainedH));
        }

        public double Stay(double shape, double[,] next, int then, int bites)
        {
            double none = Math.Exp(shape * _logNone), one = none * shape * _gainedH / (_beforeH + _gainedH), many = Math.Max(0, 1 - none - one);
            return (shape / _beforeH * _gainedH) + (none * next[then, bites]) + (one * next[then, Math.Min(bites + 1, MostBites)]) + (many * next[then, Math.Min(bites + 2, MostBites)]);
        }
    }
}
