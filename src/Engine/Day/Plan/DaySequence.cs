namespace SecondShore.Engine.Day;

/// <summary>
/// An order of stops with, for every place in it, the best value up to leaving and from arriving on, by time step: so that
/// one change of the order is judged in the time of one stay.
/// </summary>
internal sealed class DaySequence
{
    private readonly PlanProblem _problem;
    private readonly StayKernel _kernel;
    private readonly int _steps;
    private readonly List<double[]> _leave = [];
    private readonly List<double[]> _arrive = [];
    private readonly double[] _scratchA, _scratchB, _zeros;

    public DaySequence(PlanProblem problem)
    {
        _problem = problem;
        _steps = problem.LastStep + 1;
        _kernel = new StayKernel(problem.LastStep);
        _scratchA = new double[_steps];
        _scratchB = new double[_steps];
        _zeros = new double[_steps];
        BreakAfter = new int[problem.Breaks.Count];
    }

    /// <summary>Stops in order.</summary>
    public List<int> Order { get; } = [];

    /// <summary>For each break, the number of stops made before it; -1 when it is not taken.</summary>
    public int[] BreakAfter { get; }

    /// <summary>Value of the order with the best times; minus infinity when it cannot be done.</summary>
    public double Value { get; private set; }

    /// <summary>Times the order anew: forward and backward.</summary>
    public void Refresh()
    {
        while (_leave.Count <= Order.Count) { _leave.Add(new double[_steps]); _arrive.Add(new double[_steps]); }
        Value = Forward(Order, BreakAfter, 0);
        for (int k = Order.Count; k >= 1; k--)
        {
            AfterLeaving(k, _scratchA);
            for (int p = _problem.Breaks.Count - 1; p >= 0; p--)
                if (BreakAfter[p] == k) PauseBackward(_problem.Breaks[p], _scratchA);
            _kernel.Backward(_problem.Stops[Order[k - 1]], _scratchA, _arrive[k]);
        }
    }

    /// <summary>Value if a stop were made after the first <paramref name="after"/> stops, and if it were made there in place of the next one.</summary>
    public (double Inserted, double InPlace) ValueWith(int stop, int after)
    {
        int from = after == 0 ? _problem.StartNode : Order[after - 1];
        RunForward(_leave[after], from, stop, _scratchA);
        _kernel.Forward(_problem.Stops[stop], _scratchA, _scratchB, []);
        double inserted = Join(_scratchB, stop, after + 1);
        if (after >= Order.Count) return (inserted, double.NegativeInfinity);
        for (int p = 0; p < _problem.Breaks.Count; p++)
            if (BreakAfter[p] == after + 1) PauseForward(_problem.Breaks[p], _scratchB, false);
        return (inserted, Join(_scratchB, stop, after + 2));
    }

    /// <summary>Value if the stop after the first <paramref name="after"/> were left out; breaks taken there are taken before it.</summary>
    public double ValueWithout(int after)
    {
        int from = after == 0 ? _problem.StartNode : Order[after - 1];
        _leave[after].CopyTo(_scratchB, 0);
        for (int p = 0; p < _problem.Breaks.Count; p++)
            if (BreakAfter[p] == after + 1) PauseForward(_problem.Breaks[p], _scratchB, after == 0);
        return Join(_scratchB, from, after + 2);
    }

    /// <summary>
    /// Value if the stops from the first <paramref name="after"/> on were replaced by as many others; breaks keep their places.
    /// </summary>
    public double ValueWithStretch(int after, ReadOnlySpan<int> stretch)
    {
        double[] current = _leave[after], next = _scratchB;
        int at = after == 0 ? _problem.StartNode : Order[after - 1];
        for (int k = 0; k < stretch.Length; k++)
        {
            RunForward(current, at, stretch[k], _scratchA);
            at = stretch[k];
            _kernel.Forward(_problem.Stops[at], _scratchA, next, []);
            Pauses(BreakAfter, after + k + 1, next, false);
            current = next;
        }

        return Join(current, at, after + stretch.Length + 1);
    }

    /// <summary>Value of another order, timed from scratch. Spoils nothing.</summary>
    public double ValueOf(IReadOnlyList<int> order, int[] breakAfter)
    {
        double[] current = new double[_steps], next = new double[_steps];
        Pauses(breakAfter, 0, current, true);
        int at = _problem.StartNode;
        for (int k = 0; k < order.Count; k++)
        {
            RunForward(current, at, order[k], _scratchA);
            at = order[k];
            _kernel.Forward(_problem.Stops[at], _scratchA, next, []);
            Pauses(breakAfter, k + 1, next, false);
            (current, next) = (next, current);
        }

        return order.Count == 0 ? 0 : Home(current, at).Value;
    }

    /// <summary>Takes another order over as this one.</summary>
    public void Set(IReadOnlyList<int> order, int[] breakAfter)
    {
        if (!ReferenceEquals(order, Order)) { Order.Clear(); Order.AddRange(order); }
        if (!ReferenceEquals(breakAfter, BreakAfter)) breakAfter.CopyTo(BreakAfter, 0);
        Refresh();
    }

    /// <summary>The order with its best times.</summary>
    public PlanSteps Times()
    {
        if (Order.Count == 0) return PlanSteps.Nothing;
        List<int[]> cameAt = [];
        double[] leave = new double[_steps];
        for (int k = 0; k < Order.Count; k++)
        {
            int[] came = new int[_steps];
            RunForward(_leave[k], k == 0 ? _problem.StartNode : Order[k - 1], Order[k], _scratchA);
            _kernel.Forward(_problem.Stops[Order[k]], _scratchA, leave, came);
            cameAt.Add(came);
        }

        (double value, int step) = Home(_leave[Order.Count], Order[^1]);
        int homeStep = step + _problem.RunSteps(Order[^1], _problem.HomeNode, step);
        List<PlanMove> moves = [];
        for (int k = Order.Count; k >= 1; k--)
        {
            step = BeforePauses(k, step, cameAt, moves);
            int arrived = cameAt[k - 1][step], left = LeftAt(k, arrived);
            moves.Add(new PlanMove(false, Order[k - 1], arrived, step, arrived - left));
            step = left;
        }

        step = BeforePauses(0, step, cameAt, moves);
        moves.Reverse();
        return new PlanSteps(moves, step, homeStep, value);
    }

    private double Forward(List<int> order, int[] breakAfter, int from)
    {
        if (from == 0)
        {
            Array.Clear(_leave[0]);
            Pauses(breakAfter, 0, _leave[0], true);
        }

        for (int k = from; k < order.Count; k++)
        {
            RunForward(_leave[k], k == 0 ? _problem.StartNode : order[k - 1], order[k], _scratchA);
            _kernel.Forward(_problem.Stops[order[k]], _scratchA, _leave[k + 1], []);
            Pauses(breakAfter, k + 1, _leave[k + 1], false);
        }

        return order.Count == 0 ? 0 : Home(_leave[order.Count], order[^1]).Value;
    }

    private void Pauses(int[] breakAfter, int position, double[] leave, bool mayWait)
    {
        for (int p = 0; p < breakAfter.Length; p++)
            if (breakAfter[p] == position) PauseForward(_problem.Breaks[p], leave, mayWait);
    }

    private void RunForward(double[] leave, int from, int to, double[] arrive)
    {
        Array.Fill(arrive, double.NegativeInfinity);
        double cost = _problem.RunCostPerStep;
        ReadOnlySpan<int> runs = _problem.Runs(from, to);
        for (int t = 0; t < runs.Length; t++)
        {
            if (leave[t] == double.NegativeInfinity) continue;
            int run = runs[t];
            if (run >= runs.Length - t) continue;
            double value = leave[t] - (cost * run);
            if (value > arrive[t + run]) arrive[t + run] = value;
        }
    }

    // Value to come when leaving the k-th stop (from 1), its breaks not yet taken.
    private void AfterLeaving(int k, double[] after)
    {
        bool isLast = k == Order.Count;
        int to = isLast ? _problem.HomeNode : Order[k];
        double[] arrive = isLast ? _zeros : _arrive[k + 1];
        double cost = _problem.RunCostPerStep;
        for (int t = 0; t < _steps; t++)
        {
            int run = _problem.RunSteps(Order[k - 1], to, t);
            after[t] = run >= _steps - t ? double.NegativeInfinity : arrive[t + run] - (cost * run);
        }
    }

    private double Join(double[] leave, int from, int next)
    {
        bool isLast = next > Order.Count;
        if (isLast && from == _problem.StartNode) return 0;
        int to = isLast ? _problem.HomeNode : Order[next - 1];
        double[] arrive = isLast ? _zeros : _arrive[next];
        double best = double.NegativeInfinity, cost = _problem.RunCostPerStep;
        ReadOnlySpan<int> runs = _problem.Runs(from, to);
        for (int t = 0; t < runs.Length; t++)
        {
            int run = runs[t];
            if (run >= runs.Length - t) continue;
            double value = leave[t] + arrive[t + run] - (cost * run);
            if (value > best) best = value;
        }

        return best;
    }

    private (double Value, int Step) Home(double[] leave, int from)
    {
        double best = double.NegativeInfinity;
        int bestStep = 0;
        for (int t = 0; t < _steps; t++)
        {
            int run = _problem.RunSteps(from, _problem.HomeNode, t);
            if (run >= _steps - t) continue;
            double value = leave[t] - (_problem.RunCostPerStep * run);
            if (value > best + 1e-12) { best = value; bestStep = t; }
        }

        return (best, bestStep);
    }

    private void PauseForward(BreakOnSteps pause, double[] leave, bool mayWait)
    {
        for (int t = _steps - 1; t >= 0; t--)
        {
            int began = t - pause.Steps;
            leave[t] = began >= pause.EarliestStart && began <= pause.LatestStart
                ? leave[began] + PlanProblem.MustReward
                : double.NegativeInfinity;
        }

        if (!mayWait) return;
        for (int t = 1; t < _steps; t++) leave[t] = Math.Max(leave[t], leave[t - 1]);
    }

    private void PauseBackward(BreakOnSteps pause, double[] after)
    {
        for (int t = 0; t < _steps; t++)
        {
            int ends = t + pause.Steps;
            after[t] = t >= pause.EarliestStart && t <= pause.LatestStart && ends < _steps
                ? after[ends] + PlanProblem.MustReward
                : double.NegativeInfinity;
        }
    }

    // Steps back over the breaks taken after the k-th stop; breaks of one place are taken in their given order.
    private int BeforePauses(int k, int step, List<int[]> cameAt, List<PlanMove> moves)
    {
        for (int p = _problem.Breaks.Count - 1; p >= 0; p--)
        {
            if (BreakAfter[p] != k) continue;
            BreakOnSteps pause = _problem.Breaks[p];
            int began = Math.Min(step - pause.Steps, pause.LatestStart);
            moves.Add(new PlanMove(true, p, began, began + pause.Steps, 0));
            step = began;
        }

        return step;
    }

    private int LeftAt(int k, int arrived)
    {
        int from = k == 1 ? _problem.StartNode : Order[k - 2], best = -1;
        double bestValue = double.NegativeInfinity;
        for (int t = arrived; t >= 0; t--)
        {
            if (_leave[k - 1][t] == double.NegativeInfinity || t + _problem.RunSteps(from, Order[k - 1], t) != arrived) continue;
            double value = _leave[k - 1][t] - (_problem.RunCostPerStep * (arrived - t));
            if (value > bestValue) { bestValue = value; best = t; }
        }

        return best;
    }
}
