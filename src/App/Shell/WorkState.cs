using SecondShore.App.Pace;
using SecondShore.Desk.Questions;

namespace SecondShore.App.Shell;

/// <summary>Work under way.</summary>
public sealed class WorkState
{
    private readonly DateTimeOffset _began;
    private readonly IReadOnlyList<WorkRun> _former;
    private readonly IReadOnlyList<WorkPart> _parts;
    private readonly WorkPace _pace;
    private int _asked;

    /// <summary>Work that begins.</summary>
    /// <param name="what">What is being found.</param>
    /// <param name="former">Its former runs on this device.</param>
    /// <param name="parts">The questions it puts to the engine, in order.</param>
    /// <param name="began">When it began.</param>
    internal WorkState(string what, IReadOnlyList<WorkRun> former, IReadOnlyList<WorkPart> parts, DateTimeOffset began)
    {
        (What, _former, _parts, _began) = (what, former, parts, began);
        _pace = new WorkPace(former, [.. parts.Select(p => p.Weight)]);
    }

    /// <summary>What is being found.</summary>
    public string What { get; private set; }

    /// <summary>The step at hand, a key of the texts; empty where none was told.</summary>
    public string Step { get; private set; } = "";

    /// <summary>How it stands.</summary>
    internal WorkLeft Left(DateTimeOffset now) => _pace.At((now - _began).TotalSeconds);

    /// <summary>A question is put to the engine; one that was left out before it counts as answered.</summary>
    internal void Ask(Question question, DateTimeOffset now)
    {
        int part = _asked;
        while (part < _parts.Count && _parts[part].Asks != question.GetType()) part++;
        if (part == _parts.Count) return;
        _asked = part + 1;
        _pace.Begin(part, (now - _began).TotalSeconds);
    }

    /// <summary>The engine tells how far it is with the question.</summary>
    internal void Told(double share, string step, DateTimeOffset now)
    {
        if (step.Length > 0) Step = step;
        _pace.Told(share, (now - _began).TotalSeconds);
    }

    /// <summary>Whether all its questions were put: work that was broken off says nothing of how long it takes.</summary>
    internal bool IsWhole => _asked == _parts.Count;

    /// <summary>The work turns to something else.</summary>
    internal void Turn(string what) => What = what;

    /// <summary>The text to keep of this run and those before it.</summary>
    internal string Kept(DateTimeOffset now) => FormerRuns.With(_former, _pace.Done((now - _began).TotalSeconds));
}

/// <summary>A question that a piece of work puts to the engine.</summary>
/// <param name="Asks">Which question.</param>
/// <param name="Weight">What it takes of the work's time, measured on the demo lake in Chromium; any unit.</param>
internal readonly record struct WorkPart(Type Asks, double Weight)
{
    /// <summary>A part of the work.</summary>
    public static WorkPart Of<TQuestion>(double weight)
        where TQuestion : Question => new(typeof(TQuestion), weight);
}
