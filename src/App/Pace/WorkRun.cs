using System.Globalization;

namespace SecondShore.App.Pace;

/// <summary>One run of a piece of work to its end: when it was how far.</summary>
/// <remarks>
/// How far is counted in parts: 1.25 is a quarter through the second part. The work's own share of a part need not go evenly with
/// time; what a run tells is at which second it told which place.
/// </remarks>
internal sealed class WorkRun
{
    private const int MostTicks = 48;
    private readonly double[] _place;
    private readonly double[] _secondS;

    /// <summary>A run.</summary>
    /// <param name="ticks">What was told, in the order of time; places never go back.</param>
    /// <param name="tookS">When it was done, s.</param>
    public WorkRun(IReadOnlyList<(double Place, double SecondS)> ticks, double tookS)
    {
        ArgumentNullException.ThrowIfNull(ticks);
        (_place, _secondS, TookS) = ([.. ticks.Select(t => t.Place)], [.. ticks.Select(t => t.SecondS)], tookS);
    }

    /// <summary>How long all of it took, s.</summary>
    public double TookS { get; }

    /// <summary>What was told.</summary>
    public IEnumerable<(double Place, double SecondS)> Ticks => _place.Zip(_secondS);

    /// <summary>When the run was first as far as a place, s; between two ticks in proportion.</summary>
    public double SecondAt(double place)
    {
        double beforePlace = 0, beforeS = 0;
        for (int i = 0; i < _place.Length; i++)
        {
            if (_place[i] >= place)
            {
                double step = _place[i] - beforePlace;
                return step <= 0 ? _secondS[i] : beforeS + ((_secondS[i] - beforeS) * Math.Clamp((place - beforePlace) / step, 0, 1));
            }

            (beforePlace, beforeS) = (_place[i], _secondS[i]);
        }

        return beforeS;
    }

    /// <summary>When the run first told that it was beyond a place, s; its end where it told nothing more.</summary>
    public double SecondBeyond(double place)
    {
        for (int i = 0; i < _place.Length; i++)
            if (_place[i] > place + 1e-6) return _secondS[i];
        return TookS;
    }

    /// <summary>The run as a line of text: <c>place@second ... =end</c>, thinned to what matters: the last word before a silence is kept.</summary>
    public override string ToString()
    {
        List<string> words = [];
        double lastS = double.NegativeInfinity, leastS = TookS / MostTicks;
        for (int i = 0; i < _place.Length; i++)
        {
            double nextS = i + 1 < _place.Length ? _secondS[i + 1] : TookS;
            if (_secondS[i] - lastS < leastS && nextS - _secondS[i] < leastS) continue;
            lastS = _secondS[i];
            words.Add(string.Create(CultureInfo.InvariantCulture, $"{_place[i]:0.###}@{_secondS[i]:0.##}"));
        }

        words.Add(string.Create(CultureInfo.InvariantCulture, $"={TookS:0.##}"));
        return string.Join(' ', words);
    }

    /// <summary>Reads a line of text; null where it is none of a run.</summary>
    public static WorkRun? Parse(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        List<(double, double)> ticks = [];
        double tookS = double.NaN, placeBefore = 0, secondBefore = 0;
        foreach (string word in line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string[] halves = word.Split('@');
            if (word[0] == '=' && Number(word[1..], out tookS)) continue;
            if (halves.Length != 2 || !Number(halves[0], out double place) || !Number(halves[1], out double secondS)
                || place < placeBefore || secondS < secondBefore) return null;
            (placeBefore, secondBefore) = (place, secondS);
            ticks.Add((place, secondS));
        }

        return tookS >= secondBefore ? new WorkRun(ticks, tookS) : null;
    }

    private static bool Number(string text, out double value) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value);
}
