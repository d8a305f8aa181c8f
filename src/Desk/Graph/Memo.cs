namespace SecondShore.Desk.Graph;

/// <summary>
/// Answers remembered under the content ids of their inputs. An answer is stale exactly when an input's id is another: nothing is ever
/// cleared by hand.
/// </summary>
/// <typeparam name="T">The answer.</typeparam>
/// <param name="name">The node of the graph; with the id and the engine's version it names the answer wherever it may be kept.</param>
/// <param name="worked">Told of each answer that is worked out.</param>
/// <param name="most">How many are remembered; the one asked for longest ago goes first.</param>
internal sealed class Memo<T>(string name, WorkedOut worked, int most = 1)
    where T : class
{
    private readonly List<(ContentId Inputs, T Answer)> _kept = [];

    /// <summary>The answer for these inputs: remembered, else worked out.</summary>
    public T Of(ContentId inputs, Func<T> work)
    {
        if (Known(inputs) is { } known) return known;
        worked.Tell(name, inputs);
        T answer = work();
        if (_kept.Count == most) _kept.RemoveAt(0);
        _kept.Add((inputs, answer));
        return answer;
    }

    /// <summary>The answer where it is remembered; null works nothing out.</summary>
    public T? Known(ContentId inputs)
    {
        int at = _kept.FindIndex(k => k.Inputs == inputs);
        if (at < 0) return null;
        (ContentId Inputs, T Answer) found = _kept[at];
        _kept.RemoveAt(at);
        _kept.Add(found);
        return found.Answer;
    }
}
