using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Learn;
using SecondShore.App.Shell;
using SecondShore.App.Store;

namespace SecondShore.App.Trip;

/// <summary>What the log of the open lake teaches: the same document that the command line prints, worked out anew when the log changed.</summary>
public sealed class Lessons(Session session)
{
    private IReadOnlyList<RecordRow>? _of;
    private string? _lake;
    private object? _outlook;
    private bool _asking;

    /// <summary>What was learned; null until it is worked out.</summary>
    public LearnDocument? Learned { get; private set; }

    /// <summary>Works it out where the log or the outlook is another than last time. Waits for the lake to be worked out first.</summary>
    public async Task FreshAsync()
    {
        if (session.Lake is not { } lake || session.Outlook is not { } outlook || session.IsFromEarlier || session.Work is not null || _asking) return;
        if (_lake == lake.Id && ReferenceEquals(_of, session.Entries) && ReferenceEquals(_outlook, outlook)) return;
        if (_lake != lake.Id) Learned = null;
        (_of, _lake, _outlook, _asking) = (session.Entries, lake.Id, outlook, true);
        try
        {
            string? json = await session.AskQuietlyAsync("learn");
            if (json is not null && session.Lake?.Id == lake.Id) Learned = JsonSerializer.Deserialize(json, AnswersJson.Default.LearnDocument);
        }
        finally
        {
            _asking = false;
        }

        session.Redraw();
    }
}
