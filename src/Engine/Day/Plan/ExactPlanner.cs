namespace SecondShore.Engine.Day;

/// <summary>
/// The best plan of all, by dynamic programming over sets of stops, last stop and time of leaving (HeldKarp1962,
/// with time as in the orienteering problem of Vansteenwegen2011). Work grows as 2^n n^2 T.
/// </summary>
internal sealed class ExactPlanner
{
    /// <summary>Stops and breaks together, at most: beyond it memory and time outgrow a phone.</summary>
    public static readonly int MostItems = 12;

    private readonly PlanProblem _problem;
    private readonly StayKernel _kernel;
    private readonly double[] _leave;
    private readonly double[] _arrive;
    private readonly int _steps, _stops, _items, _ends;

    private ExactPlanner(PlanProblem problem)
    {
        _problem = problem;
        _steps = problem.LastStep + 1;
        _stops = problem.StopCount;
        _items = _stops + problem.Breaks.Count;
        _ends = _stops + 1;
        _kernel = new StayKernel(problem.LastStep);
        _leave = new double[(1 << _items) * _ends * _steps];
        _arrive = new double[_steps];
    }

    /// <summary>Solves a problem of at most <see cref="MostItems"/> stops and breaks.</summary>
    public static PlanSteps Solve(PlanProblem problem, CancellationToken cancel = default)
    {
        Core.Require.InRange(problem.StopCount + problem.Breaks.Count, 0, MostItems, nameof(problem));
        var planner = new ExactPlanner(problem);
        planner.Fill(cancel);
        return planner.Best();
    }

    private Span<double> Leave(int set, int end) => _leave.AsSpan(((set * _ends) + end) * _steps, _steps);

    private void Fill(CancellationToken cancel)
    {
        Array.Fill(_leave, double.NegativeInfinity);
        Leave(0, _problem.StartNode).Clear();
        for (int set = 0; set < 1 << _items; set++)
        {
            if ((set & 255) == 0) cancel.ThrowIfCancellationRequested();
            for (int end = 0; end < _ends; end++)
            {
                bool isStart = end == _stops;
                if (!isStart && (set >> end & 1) == 0) continue;
                Span<double> leave = Leave(set, end);
                if (!isStart)
                {
                    Arrivals(set, end, _arrive);
                    _kernel.Forward(_problem.Stops[end], _arrive, leave, []);
                }

                TakeBreaks(set, end, leave);
            }
        }
    }

    // Best value of arriving at a stop at each step, over all stops it may be reached from.
    private void Arrivals(int set, int stop, Span<double> arrive)
    {
        arrive.Fill(double.NegativeInfinity);
        int before = set & ~(1 << stop);
        for (int from = 0; from < _ends; from++)
        {
            if (from != _stops && (before >> from & 1) == 0) continue;
            Span<double> leave = Leave(before, from);
            for (int t = 0; t < _steps; t++)
            {
                if (leave[t] == double.NegativeInfinity) continue;
                int run = _problem.RunSteps(from, stop, t);
                if (run >= _steps - t) continue;
                double value = leave[t] - (_problem.RunCostPerStep * run);
                if (value > arrive[t + run]) arrive[t + run] = value;
            }
        }
    }

    // A break may end the time at this place if the set holds it: the value is that of leaving before it.
    private void TakeBreaks(int set, int end, Span<double> leave)
    {
        for (int k = 0; k < _problem.Breaks.Count; k++)
        {
            int bit = 1 << (_stops + k);
            if ((set & bit) == 0) continue;
            BreakOnSteps pause = _problem.Breaks[k];
            Span<double> before = Leave(set & ~bit, end);
            for (int t = pause.EarliestStart; t <= pause.LatestStart && t + pause.Steps < _steps; t++)
            {
                double value = before[t] + PlanProblem.MustReward;
                if (value > leave[t + pause.Steps]) leave[t + pause.Steps] = value;
            }

            // A break delays: what was possible at its end stays possible later only by fishing on, or by waiting at the ramp.
            if (end == _stops)
                for (int t = 1; t < _steps; t++) leave[t] = Math.Max(leave[t], leave[t - 1]);
        }
    }

    private PlanSteps Best()
    {
        double best = 0;
        int bestSet = 0, bestEnd = -1, bestStep = 0;
        for (int set = 1; set < 1 << _items; set++)
        {
            for (int end = 0; end < _stops; end++)
            {
                if ((set >> end & 1) == 0) continue;
                Span<double> leave = Leave(set, end);
                for (int t = 0; t < _steps; t++)
                {
                    if (leave[t] == double.NegativeInfinity) continue;
                    int run = _problem.RunSteps(end, _problem.HomeNode, t);
                    if (run >= _steps - t) continue;
                    double value = leave[t] - (_problem.RunCostPerStep * run);
                    if (value > best + 1e-12) { best = value; bestSet = set; bestEnd = end; bestStep = t; }
                }
            }
        }

        return bestEnd < 0 ? PlanSteps.Nothing : Trace(bestSet, bestEnd, bestStep, best);
    }

    private PlanSteps Trace(int set, int end, int step, double value)
    {
        List<PlanMove> moves = [];
        int homeStep = step + _problem.RunSteps(end, _problem.HomeNode, step);
        int[] cameAt = new int[_steps];
        double[] leave = new double[_steps];
        bool mayBreak = true;
        while (true)
        {
            if (mayBreak && TryTraceBreak(ref set, end, ref step, moves)) continue;
            if (end == _stops) break;
            Arrivals(set, end, _arrive);
            _kernel.Forward(_problem.Stops[end], _arrive, leave, cameAt);
            int arrived = cameAt[step];
            (int from, int left) = CameFrom(set, end, arrived);
            moves.Add(new PlanMove(false, end, arrived, step, arrived - left));
            set &= ~(1 << end);
            end = from;
            step = left;
        }

        moves.Reverse();
        return new PlanSteps(moves, step, homeStep, value);
    }

    private bool TryTraceBreak(ref int set, int end, ref int step, List<PlanMove> moves)
    {
        double here = Leave(set, end)[step];
        for (int k = 0; k < _problem.Breaks.Count; k++)
        {
            int bit = 1 << (_stops + k);
            if ((set & bit) == 0) continue;
            BreakOnSteps pause = _problem.Breaks[k];
            int began = step - pause.Steps;
            // At the ramp one may wait after the break: look for the latest end that gives the value.
            for (int t = began; t >= (end == _stops ? 0 : began); t--)
            {
                if (t < pause.EarliestStart || t > pause.LatestStart || t < 0) continue;
                if (Leave(set & ~bit, end)[t] + PlanProblem.MustReward != here) continue;
                moves.Add(new PlanMove(true, k, t, t + pause.Steps, 0));
                set &= ~bit;
                step = t;
                return true;
            }
        }

        return false;
    }

    private (int From, int Left) CameFrom(int set, int stop, int arrived)
    {
        int before = set & ~(1 << stop);
        for (int from = 0; from < _ends; from++)
        {
            if (from != _stops && (before >> from & 1) == 0) continue;
            Span<double> leave = Leave(before, from);
            for (int t = arrived; t >= 0; t--)
            {
                if (leave[t] == double.NegativeInfinity || t + _problem.RunSteps(from, stop, t) != arrived) continue;
                if (leave[t] - (_problem.RunCostPerStep * (arrived - t)) == _arrive[arrived]) return (from, t);
            }
        }

        throw new InvalidOperationException($"No way leads to stop {stop} at step {arrived}.");
    }
}
