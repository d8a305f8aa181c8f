using SecondShore.Answers.Learn;
using SecondShore.App.Shell;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;

namespace SecondShore.App.Trip;

/// <summary>What the log of the open lake teaches: the same document that the command line prints, worked out anew when the log changed.</summary>
public sealed class Lessons(Session session)
{
    private IReadOnlyList<RecordRow>? _of;
    private string? _lake;
    private object? _outlook;
    private LearnAsk? _asked;
    private bool _asking;

    /// <summary>What was learned; null until it is worked out.</summary>
    public LearnDocument? Learned { get; private set; }

    /// <summary>What is asked of it, for the lake at hand.</summary>
    public LearnAsk Wish { get; private set; } = new();

    /// <summary>Asks it otherwise.</summary>
    public Task AskAsync(LearnAsk wish)
    {
        Wish = wish;
        return FreshAsync();
    }

    /// <summary>Works it out where the log, the outlook or what is asked is another than last time. Waits for the lake to be worked out first.</summary>
    public async Task FreshAsync()
    {
        if (session.Lake is not { } lake || session.Outlook is not { } outlook || session.IsFromEarlier || session.Work is not null || _asking) return;
        // What fish eat there is one lake's.
        if (_lake != lake.Id) (Learned, Wish) = (null, new LearnAsk());
        if (_lake == lake.Id && ReferenceEquals(_of, session.Entries) && ReferenceEquals(_outlook, outlook) && _asked == Wish) return;
        (_of, _lake, _outlook, _asked, _asking) = (session.Entries, lake.Id, outlook, Wish, true);
        try
        {
            LearnDocument? learned = await session.AskQuietlyAsync(new LearnFrom(Wish, session.AllRecords));
            if (learned is not null && session.Lake?.Id == lake.Id) Learned = learned;
        }
        finally
        {
            _asking = false;
        }

        session.Redraw();
        // Asked otherwise meanwhile.
        if (_asked != Wish) await FreshAsync();
    }
}
