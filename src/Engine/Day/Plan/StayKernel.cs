using System.Runtime.CompilerServices;

namespace SecondShore.Engine.Day;

/// <summary>
/// The two kernels of planning on steps. Both find, for every step, the best of all stays in linear time: the gain of a
/// stay is a line in a quantity that only grows with time, so the best line is found on an upper envelope.
/// </summary>
internal sealed class StayKernel
{
    private readonly double[] _slopes;
    private readonly double[] _intercepts;
    private readonly int[] _origins;

    public StayKernel(int lastStep)
    {
        _slopes = new double[lastStep + 1];
        _intercepts = new double[lastStep + 1];
        _origins = new int[lastStep + 1];
    }

    /// <summary>From values of arriving to values of leaving.</summary>
    /// <param name="stop">The stop.</param>
    /// <param name="arrive">[T+1] best value of arriving at a step; minus infinity where impossible.</param>
    /// <param name="leave">[T+1] best value of leaving at a step, written.</param>
    /// <param name="cameAt">[T+1] the arrival that gave it, written; -1 where impossible. May be empty.</param>
    public void Forward(StopOnSteps stop, ReadOnlySpan<double> arrive, Span<double> leave, Span<int> cameAt)
    {
        double[] growth = stop.Growth, rest = stop.Rest;
        int last = arrive.Length - 1, least = stop.LeastStay, head = 0, tail = 0;
        for (int b = 0; b <= last; b++)
        {
            int a = b - least;
            if (a >= 0 && arrive[a] > double.NegativeInfinity)
                Push(growth[a], arrive[a] + stop.Reward + (growth[a] * rest[a]), a, head, ref tail);
            if (head == tail)
            {
                leave[b] = double.NegativeInfinity;
                if (!cameAt.IsEmpty) cameAt[b] = -1;
                continue;
            }

            double x = -rest[b];
            while (tail - head > 1 && At(head + 1, x) >= At(head, x)) head++;
            leave[b] = At(head, x);
            if (!cameAt.IsEmpty) cameAt[b] = _origins[head];
        }
    }

    /// <summary>From values of leaving to values of arriving: the mirror of <see cref="Forward"/>.</summary>
    /// <param name="stop">The stop.</param>
    /// <param name="afterLeaving">[T+1] best value to come when leaving at a step.</param>
    /// <param name="fromArriving">[T+1] best value to come when arriving at a step, written.</param>
    public void Backward(StopOnSteps stop, ReadOnlySpan<double> afterLeaving, Span<double> fromArriving)
    {
        double[] growth = stop.Growth, rest = stop.Rest;
        int last = afterLeaving.Length - 1, least = stop.LeastStay, head = 0, tail = 0;
        // Going back in time, lines -rest[b] x + value[b] come with falling slopes and are asked at falling x = growth[a]:
        // mirrored in both, the envelope is the same as in Forward.
        for (int a = last; a >= 0; a--)
        {
            int b = a + least;
            if (b <= last && afterLeaving[b] > double.NegativeInfinity) Push(rest[b], afterLeaving[b], b, head, ref tail);
            if (head == tail) { fromArriving[a] = double.NegativeInfinity; continue; }
            double x = -growth[a];
            while (tail - head > 1 && At(head + 1, x) >= At(head, x)) head++;
            fromArriving[a] = At(head, x) + stop.Reward + (growth[a] * rest[a]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private double At(int line, double x) => _intercepts[line] + (_slopes[line] * x);

    // Lines come with slopes that do not fall; those that can never be best again are dropped from the back.
    private void Push(double slope, double intercept, int origin, int head, ref int tail)
    {
        while (tail > head)
        {
            int top = tail - 1;
            if (_slopes[top] == slope)
            {
                if (_intercepts[top] >= intercept) return;
                tail--;
                continue;
            }

            if (tail - head < 2) break;
            double atNew = (_intercepts[top] - intercept) / (slope - _slopes[top]);
            double atTop = (_intercepts[top - 1] - _intercepts[top]) / (_slopes[top] - _slopes[top - 1]);
            if (atNew > atTop) break;
            tail--;
        }

        _slopes[tail] = slope;
        _intercepts[tail] = intercept;
        _origins[tail++] = origin;
    }
}
