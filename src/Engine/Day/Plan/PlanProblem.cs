using SecondShore.Engine.Core;

namespace SecondShore.Engine.Day;

/// <summary>
/// A day on a grid of equal time steps: what each stop gives between two steps and how long each run takes. All
/// planners, and the brute force of the tests, read the same problem.
/// </summary>
/// <remarks>
/// Nodes 0 to n-1 are stops, n is the start, n+1 home. Fishing a stop from step a to step b gives
/// growth[a] * (rest[a] - rest[b]), where rest[t] is the integral from t to the end of rate * exp(-k (time - first step))
/// and growth[a] is exp(k (time of a - first step)): the tiring of a place with time since arrival, in a form in which
/// arrival and departure separate. Sums run from the end backwards so that late steps keep their digits.
/// </remarks>
internal sealed class PlanProblem
{
    /// <summary>A run that cannot be made.</summary>
    public static readonly int Unreachable = int.MaxValue / 4;

    /// <summary>Reward of a stop that must be visited or a break that must be taken: more than any day can bring.</summary>
    public static readonly double MustReward = 1e4;

    private readonly int[] _runSteps;
    private readonly int[] _slotOfStep;
    private readonly int[]?[] _runsOfPair;

    /// <summary>Makes a problem.</summary>
    /// <param name="stepS">Length of a step, s.</param>
    /// <param name="lastStep">Home must be reached at or before this step.</param>
    /// <param name="stops">The stops.</param>
    /// <param name="breaks">The breaks, in steps.</param>
    /// <param name="runSteps">[slots, n+2, n+2] steps from a node to a node when leaving in a slot of time.</param>
    /// <param name="stepsPerSlot">Steps in a slot of time.</param>
    /// <param name="runCostPerStep">Bites that a step of running must be worth.</param>
    public PlanProblem(double stepS, int lastStep, IReadOnlyList<StopOnSteps> stops, IReadOnlyList<BreakOnSteps> breaks,
        int[] runSteps, int stepsPerSlot, double runCostPerStep = 0)
    {
        StepS = Require.Positive(stepS);
        LastStep = Require.InRange(lastStep, 0, 100_000);
        Stops = stops;
        Breaks = breaks;
        RunCostPerStep = runCostPerStep;
        int nodes = stops.Count + 2, slots = (lastStep / stepsPerSlot) + 1;
        Require.SameLength(runSteps.Length, slots * nodes * nodes, nameof(runSteps));
        _runSteps = runSteps;
        _slotOfStep = new int[lastStep + 1];
        _runsOfPair = new int[nodes * nodes][];
        for (int t = 0; t <= lastStep; t++) _slotOfStep[t] = t / stepsPerSlot;
    }

    public double StepS { get; }

    public int LastStep { get; }

    public IReadOnlyList<StopOnSteps> Stops { get; }

    public IReadOnlyList<BreakOnSteps> Breaks { get; }

    public double RunCostPerStep { get; }

    public int StopCount => Stops.Count;

    public int StartNode => Stops.Count;

    public int HomeNode => Stops.Count + 1;

    public int Nodes => Stops.Count + 2;

    /// <summary>Steps of the run from a node to a node when leaving at a step.</summary>
    public int RunSteps(int from, int to, int step) => _runSteps[(((_slotOfStep[step] * Nodes) + from) * Nodes) + to];

    /// <summary>Steps of the run from a node to a node by the step of leaving: laid out when first asked for, so that loops over steps read one after the other.</summary>
    public ReadOnlySpan<int> Runs(int from, int to)
    {
        ref int[]? runs = ref _runsOfPair[(from * Nodes) + to];
        if (runs is not null) return runs;
        int[] made = new int[LastStep + 1];
        for (int t = 0; t < made.Length; t++) made[t] = RunSteps(from, to, t);
        return runs = made;
    }

    /// <summary>Row of runs from a node at a step, by target node.</summary>
    public ReadOnlySpan<int> RunRow(int from, int step) => _runSteps.AsSpan(((_slotOfStep[step] * Nodes) + from) * Nodes, Nodes);

    /// <summary>Value of a finished plan: bites, less the cost of running, plus rewards of what must be.</summary>
    public double ValueOf(IReadOnlyList<PlanMove> moves, int homeStep)
    {
        double value = 0;
        int at = StartNode, step = moves.Count > 0 ? moves[0].From - (moves[0].IsBreak ? 0 : moves[0].Run) : homeStep;
        foreach (PlanMove move in moves)
        {
            if (move.IsBreak) { value += MustReward; step = move.To; continue; }
            value += Stops[move.Index].Gain(move.From, move.To) - (RunCostPerStep * move.Run);
            at = move.Index;
            step = move.To;
        }

        return at == StartNode && moves.Count == 0 ? 0 : value - (RunCostPerStep * RunSteps(at, HomeNode, step));
    }
}

/// <summary>A stop on the grid of steps.</summary>
internal sealed class StopOnSteps
{
    public StopOnSteps(double[] growth, double[] rest, int leastStay, double reward)
    {
        Growth = growth;
        Rest = rest;
        LeastStay = Math.Max(1, leastStay);
        Reward = reward;
    }

    /// <summary>exp(k time of step a).</summary>
    public double[] Growth { get; }

    /// <summary>Integral from a step to the end of rate * exp(-k time).</summary>
    public double[] Rest { get; }

    /// <summary>Fewest steps of a stay.</summary>
    public int LeastStay { get; }

    /// <summary>Reward for stopping here at all.</summary>
    public double Reward { get; }

    /// <summary>Bites between two steps, with the reward.</summary>
    public double Gain(int from, int to) => Reward + (Growth[from] * (Rest[from] - Rest[to]));

    /// <summary>A stop whose rate holds through each step.</summary>
    /// <param name="ratePerStep">Bites per step when undisturbed, one a step.</param>
    /// <param name="tiringPerStep">Tiring per step, 0 or more.</param>
    /// <param name="fishedSteps">Steps fished before.</param>
    /// <param name="leastStay">Fewest steps of a stay.</param>
    /// <param name="reward">Reward for stopping here at all.</param>
    public static StopOnSteps Of(ReadOnlySpan<double> ratePerStep, double tiringPerStep, double fishedSteps, int leastStay, double reward = 0)
    {
        int n = ratePerStep.Length;
        double[] growth = new double[n + 1], rest = new double[n + 1];
        double share = tiringPerStep > 1e-5 ? (1.0 - Math.Exp(-tiringPerStep)) / tiringPerStep : 1.0 - (0.5 * tiringPerStep);
        double tired = Math.Exp(-tiringPerStep * fishedSteps);
        growth[n] = Math.Exp(tiringPerStep * n) * tired;
        for (int t = n - 1; t >= 0; t--)
        {
            rest[t] = rest[t + 1] + (ratePerStep[t] * share * Math.Exp(-tiringPerStep * t));
            growth[t] = Math.Exp(tiringPerStep * t) * tired;
        }

        return new StopOnSteps(growth, rest, leastStay, reward);
    }
}

/// <summary>A break to be taken wherever the boat is: begun between two steps.</summary>
internal readonly record struct BreakOnSteps(int EarliestStart, int LatestStart, int Steps);

/// <summary>One thing done: a stop fished or a break taken between two steps; a stop's run before it took some steps.</summary>
internal readonly record struct PlanMove(bool IsBreak, int Index, int From, int To, int Run);

/// <summary>A solved day on steps.</summary>
internal sealed record PlanSteps(IReadOnlyList<PlanMove> Moves, int LaunchStep, int HomeStep, double Value)
{
    public static readonly PlanSteps Nothing = new([], 0, 0, 0);
}
