using SecondShore.Engine.Core;

namespace SecondShore.Engine.Day;

/// <summary>Bites an hour by time of day: even steps, each holding from its start to the next. Immutable.</summary>
public sealed class RateTable
{
    private readonly double[] _perH;

    /// <summary>Makes a table.</summary>
    /// <param name="start">Start of the first step.</param>
    /// <param name="stepS">Length of a step, s; half an hour by habit.</param>
    /// <param name="perH">Expected bites per hour in each step, 0 or more; at least one. Copied.</param>
    /// <exception cref="ArgumentException">No step is given, or a rate is negative or not finite.</exception>
    public RateTable(DateTimeOffset start, double stepS, IReadOnlyList<double> perH)
    {
        Require.NotNull(perH);
        if (perH.Count == 0) throw new ArgumentException("A table of rates needs at least one step.", nameof(perH));
        foreach (double rate in perH) Require.NotNegative(rate, nameof(perH));
        Start = start;
        StepS = Require.Positive(stepS);
        _perH = [.. perH];
    }

    /// <summary>Start of the first step.</summary>
    public DateTimeOffset Start { get; }

    /// <summary>Length of a step, s.</summary>
    public double StepS { get; }

    /// <summary>The rates, bites per hour.</summary>
    public ReadOnlySpan<double> RatesPerH => _perH;

    /// <summary>One rate for the whole day.</summary>
    public static RateTable Constant(DateTimeOffset start, double perH) => new(start, 86400.0, [perH]);

    /// <summary>The rate at an instant; before the first and after the last step, theirs.</summary>
    public double AtPerH(DateTimeOffset instant) =>
        _perH[(int)Math.Clamp(Math.Floor((instant - Start).TotalSeconds / StepS), 0, _perH.Length - 1)];

    /// <summary>Mean rate between two instants, bites per hour.</summary>
    public double MeanPerH(DateTimeOffset from, DateTimeOffset to)
    {
        if (to <= from) return AtPerH(from);
        double sum = 0, totalS = (to - from).TotalSeconds;
        for (double atS = 0; atS < totalS;)
        {
            DateTimeOffset at = from.AddSeconds(atS);
            double intoS = (at - Start).TotalSeconds, leftS = StepS - (intoS - (Math.Floor(intoS / StepS) * StepS));
            double spanS = Math.Min(Math.Max(leftS, 1e-3), totalS - atS);
            sum += AtPerH(at) * spanS;
            atS += spanS;
        }

        return sum / totalS;
    }

    /// <summary>The table with every rate passed through a map of (step start, rate).</summary>
    public RateTable Map(Func<DateTimeOffset, double, double> map)
    {
        Require.NotNull(map);
        double[] perH = new double[_perH.Length];
        for (int i = 0; i < perH.Length; i++) perH[i] = map(Start.AddSeconds(i * StepS), _perH[i]);
        return new RateTable(Start, StepS, perH);
    }
}
