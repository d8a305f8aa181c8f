namespace SecondShore.App.Shell;

/// <summary>The instant that all places answer for.</summary>
public sealed partial class Session
{
    /// <summary>The instant chosen; null takes the lake's own: its newest reading, or the end of its measured weather.</summary>
    public DateTimeOffset? ChosenAt { get; private set; }

    /// <summary>Answers for another instant, in every place; null goes back to the lake's own. It is gone with the page or the lake.</summary>
    public Task AnswerForAsync(DateTimeOffset? at)
    {
        if (at == ChosenAt || Work is not null) return Task.CompletedTask;
        ChosenAt = at;
        return WorkOutAsync();
    }

    // What is said of an instant chosen is not what the lake opens with next time.
    private Keep? KeptAs(string name) => ChosenAt is null ? new Keep(name, Stamp) : null;
}
