namespace SecondShore.Desk.Graph;

/// <summary>What was worked out so far, node by node.</summary>
internal sealed class WorkedOut
{
    private readonly List<(string Node, ContentId Inputs)> _all = [];

    /// <summary>Everything in order.</summary>
    public IReadOnlyList<(string Node, ContentId Inputs)> All => _all;

    /// <summary>A node works an answer out.</summary>
    public void Tell(string node, ContentId inputs) => _all.Add((node, inputs));
}
