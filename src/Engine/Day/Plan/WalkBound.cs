namespace SecondShore.Engine.Day;

/// <summary>
/// What no plan can beat: the best walk that may come back to a stop, charged a price for each visit, plus the sum of the
/// prices (Lagrangian relaxation of visit-at-most-once over the state-space relaxation of Christofides1981). Prices are
/// raised where the walk comes back and lowered where it does not come, which also suggests good plans.
/// </summary>
internal sealed class WalkBound
{
    private readonly PlanProblem _problem;
    private readonly int _steps, _stops, _layers;
    private readonly double[] _arrive, _price, _slope, _intercept;
    private readonly int[] _came, _stayedFrom, _lineOrigin, _head, _tail;
    private readonly double[] _leave;
    private readonly ulong[] _seenArriving, _seenLeaving;
    private readonly bool[] _must;

    public WalkBound(PlanProblem problem)
    {
        _problem = problem;
        _steps = problem.LastStep + 1;
        _stops = problem.StopCount;
        _layers = 1 << problem.Breaks.Count;
        int states = _layers * (_stops + 1) * _steps;
        _arrive = new double[states];
        _leave = new double[states];
        _slope = new double[states];
        _intercept = new double[states];
        _lineOrigin = new int[states];
        _came = new int[states];
        _stayedFrom = new int[states];
        _seenArriving = new ulong[states];
        _seenLeaving = new ulong[states];
        _head = new int[_layers * (_stops + 1)];
        _tail = new int[_layers * (_stops + 1)];
        _price = new double[_stops];
        _must = new bool[_stops];
        for (int j = 0; j < _stops; j++) _must[j] = problem.Stops[j].Reward > 0;
        Value = double.PositiveInfinity;
    }

    /// <summary>The lowest bound found so far on the value of any plan.</summary>
    public double Value { get; private set; }

    /// <summary>One round: prices the walk, tightens the bound, moves the prices.</summary>
    /// <param name="best">Value of the best plan known, for the length of the step.</param>
    /// <param name="pace">Share of the way to go, 2 at first, falling.</param>
    /// <param name="walk">The walk's stops in order, written; breaks as -1 - index. It may come back to stops.</param>
    public void Round(double best, double pace, List<int> walk)
    {
        double value = Solve(withMemory: false, walk);
        double bound = value + _problem.Breaks.Count * PlanProblem.MustReward;
        int[] visits = new int[_stops];
        foreach (int item in walk)
            if (item >= 0) visits[item]++;
        double squares = 0;
        for (int j = 0; j < _stops; j++)
        {
            bound += _price[j] + (_must[j] ? _problem.Stops[j].Reward : 0);
            int g = visits[j] - 1;
            if (_must[j] || _price[j] > 0 || g > 0) squares += g * g;
        }

        // Staying at the ramp is a plan too.
        Value = Math.Min(Value, Math.Max(bound, 0));
        if (squares == 0) return;
        double step = pace * Math.Max(bound - best, 0.002 * Math.Abs(best)) / squares;
        for (int j = 0; j < _stops; j++)
        {
            double moved = _price[j] + (step * (visits[j] - 1));
            _price[j] = _must[j] ? moved : Math.Max(0, moved);
        }
    }

    /// <summary>A plan by the same recursion that remembers, with each value, the stops behind it: no bound, a good start.</summary>
    public void Remembering(List<int> walk) => Solve(withMemory: true, walk);

    private int Row(int layer, int stop) => (layer * (_stops + 1)) + stop;

    private double Solve(bool withMemory, List<int> walk)
    {
        Array.Fill(_arrive, double.NegativeInfinity);
        Array.Fill(_leave, double.NegativeInfinity);
        Array.Clear(_head);
        Array.Clear(_tail);
        double best = 0;
        int bestRow = -1, bestStep = 0;
        for (int t = 0; t < _steps; t++)
        {
            for (int layer = 0; layer < _layers; layer++)
            {
                for (int stop = 0; stop <= _stops; stop++)
                {
                    int row = Row(layer, stop), at = (row * _steps) + t;
                    LeaveAt(layer, stop, t, at, withMemory);
                    if (_leave[at] == double.NegativeInfinity) continue;
                    StartBreaks(layer, stop, t, at);
                    Spread(row, stop, t, at, withMemory);
                    if (layer != _layers - 1 || stop == _stops) continue;
                    int run = _problem.RunSteps(stop, _problem.HomeNode, t);
                    if (run >= _steps - t) continue;
                    double value = _leave[at] - (_problem.RunCostPerStep * run);
                    if (value > best) { best = value; bestRow = row; bestStep = t; }
                }
            }
        }

        Trace(bestRow, bestStep, walk);
        return best;
    }

    private void LeaveAt(int layer, int stop, int t, int at, bool withMemory)
    {
        if (stop == _stops)
        {
            if (layer == 0) { _leave[at] = 0; _stayedFrom[at] = -1; _seenLeaving[at] = 0; }
            else if (t > 0 && _leave[at - 1] > _leave[at]) { _leave[at] = _leave[at - 1]; _stayedFrom[at] = -3; }
            return;
        }

        // A break that ends here has already written its value; fishing on may be better.
        StopOnSteps place = _problem.Stops[stop];
        int row = Row(layer, stop), a = t - place.LeastStay;
        if (a >= 0)
        {
            double arrive = _arrive[(row * _steps) + a];
            if (arrive > double.NegativeInfinity)
            {
                double reward = (_must[stop] ? 0 : place.Reward) - (withMemory ? 0 : _price[stop]) + (withMemory && _must[stop] ? place.Reward : 0);
                Push(row, place.Growth[a], arrive + reward + (place.Growth[a] * place.Rest[a]), a);
            }
        }

        int head = _head[row], tail = _tail[row], basis = row * _steps;
        if (head == tail) return;
        double x = -place.Rest[t];
        while (tail - head > 1 && _intercept[basis + head + 1] + (_slope[basis + head + 1] * x) >= _intercept[basis + head] + (_slope[basis + head] * x)) head++;
        _head[row] = head;
        double value = _intercept[basis + head] + (_slope[basis + head] * x);
        if (value <= _leave[at]) return;
        _leave[at] = value;
        _stayedFrom[at] = _lineOrigin[basis + head];
        if (withMemory) _seenLeaving[at] = _seenArriving[basis + _lineOrigin[basis + head]] | 1UL << stop;
    }

    private void StartBreaks(int layer, int stop, int t, int at)
    {
        for (int k = 0; k < _problem.Breaks.Count; k++)
        {
            BreakOnSteps pause = _problem.Breaks[k];
            if ((layer >> k & 1) != 0 || t < pause.EarliestStart || t > pause.LatestStart || t + pause.Steps >= _steps) continue;
            int to = (Row(layer | 1 << k, stop) * _steps) + t + pause.Steps;
            if (_leave[at] <= _leave[to]) continue;
            _leave[to] = _leave[at];
            _stayedFrom[to] = -10 - k;
            _seenLeaving[to] = _seenLeaving[at];
        }
    }

    private void Spread(int row, int stop, int t, int at, bool withMemory)
    {
        ReadOnlySpan<int> runs = _problem.RunRow(stop, t);
        double leave = _leave[at], cost = _problem.RunCostPerStep;
        ulong seen = withMemory ? _seenLeaving[at] : stop < _stops ? 1UL << stop : 0;
        // One word says where a stop was come from and when that was left; fields are held in locals for the browser's sake.
        double[] arrive = _arrive;
        int[] came = _came;
        int steps = _steps, left = steps - t, basis = ((row - stop) * steps) + t, word = (stop << 17) | t;
        for (int next = 0; next < _stops; next++, basis += steps)
        {
            int run = runs[next];
            if (run >= left) continue;
            int to = basis + run;
            double value = leave - (cost * run);
            if (value <= arrive[to] || (seen >> next & 1) != 0) continue;
            arrive[to] = value;
            came[to] = word;
            if (withMemory) _seenArriving[to] = seen;
        }
    }

    private void Push(int row, double slope, double intercept, int origin)
    {
        int basis = row * _steps, head = _head[row], tail = _tail[row];
        while (tail > head)
        {
            int top = basis + tail - 1;
            if (_slope[top] == slope)
            {
                if (_intercept[top] >= intercept) return;
                tail--;
                continue;
            }

            if (tail - head < 2) break;
            double atNew = (_intercept[top] - intercept) / (slope - _slope[top]);
            double atTop = (_intercept[top - 1] - _intercept[top]) / (_slope[top] - _slope[top - 1]);
            if (atNew > atTop) break;
            tail--;
        }

        _slope[basis + tail] = slope;
        _intercept[basis + tail] = intercept;
        _lineOrigin[basis + tail] = origin;
        _tail[row] = tail + 1;
    }

    private void Trace(int row, int step, List<int> walk)
    {
        walk.Clear();
        if (row < 0) return;
        int layer = row / (_stops + 1), stop = row % (_stops + 1);
        while (true)
        {
            int from = _stayedFrom[(Row(layer, stop) * _steps) + step];
            if (from <= -10)
            {
                int k = -10 - from;
                walk.Add(-1 - k);
                layer &= ~(1 << k);
                step -= _problem.Breaks[k].Steps;
            }
            else if (from == -3)
            {
                step--;
            }
            else if (stop == _stops)
            {
                break;
            }
            else
            {
                walk.Add(stop);
                int at = (Row(layer, stop) * _steps) + from;
                step = _came[at] & 0x1FFFF;
                stop = _came[at] >> 17;
            }
        }

        walk.Reverse();
    }
}
