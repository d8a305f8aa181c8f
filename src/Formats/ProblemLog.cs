using System.Globalization;

namespace SecondShore.Formats;

/// <summary>
/// Collects problems while files are read. A fault that repeats in one file is shown a few times and then counted, so
/// that a column of ten thousand bad cells stays readable and is still reported whole.
/// </summary>
public sealed class ProblemLog
{
    private static readonly int ShownOfAKind = 3;
    private readonly List<Problem> _problems = [];
    private readonly Dictionary<(string File, string Kind), Repeat> _repeats = [];

    /// <summary>Adds a fault that stands alone.</summary>
    public void Add(string file, int? line, ProblemSeverity severity, string message) =>
        _problems.Add(new Problem(file, line, severity, message));

    /// <summary>Adds an error of a whole file.</summary>
    public void Error(string file, string message) => Add(file, null, ProblemSeverity.Error, message);

    /// <summary>Adds a warning of a whole file.</summary>
    public void Warn(string file, string message) => Add(file, null, ProblemSeverity.Warning, message);

    /// <summary>Adds something understood or assumed.</summary>
    public void Note(string file, string message) => Add(file, null, ProblemSeverity.Note, message);

    /// <summary>Adds a fault of a row that may repeat; faults of one <paramref name="kind"/> are counted together.</summary>
    public void Row(string file, int line, string kind, string message, ProblemSeverity severity = ProblemSeverity.Warning)
    {
        if (!_repeats.TryGetValue((file, kind), out Repeat? repeat)) _repeats[(file, kind)] = repeat = new Repeat(severity);
        repeat.Count++;
        repeat.LastLine = line;
        if (repeat.Count <= ShownOfAKind) Add(file, line, severity, message);
    }

    /// <summary>Adds problems found elsewhere.</summary>
    public void AddRange(IEnumerable<Problem> problems) => _problems.AddRange(problems);

    /// <summary>Everything found, with the counts of repeated faults.</summary>
    public IReadOnlyList<Problem> ToList()
    {
        List<Problem> all = [.. _problems];
        foreach (((string file, string kind), Repeat repeat) in _repeats)
        {
            int hidden = repeat.Count - ShownOfAKind;
            if (hidden <= 0) continue;
            all.Add(new Problem(file, null, repeat.Severity, string.Create(CultureInfo.InvariantCulture,
                $"{hidden} more of the same ({kind}), the last on line {repeat.LastLine}.")));
        }

        return all;
    }

    private sealed class Repeat(ProblemSeverity severity)
    {
        public ProblemSeverity Severity { get; } = severity;

        public int Count { get; set; }

        public int LastLine { get; set; }
    }
}
