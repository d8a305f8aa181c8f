using Microsoft.AspNetCore.Components;
using SecondShore.App.Shell;
using SecondShore.App.Words;

namespace SecondShore.App.Parts;

/// <summary>
/// What shows the session and must follow it: a redraw when it changes. A part whose parameters stay the same is not drawn anew
/// with its page, so one that reads the session has to ask for it.
/// </summary>
public abstract class PartBase : ComponentBase, IDisposable
{
    /// <summary>The session.</summary>
    [Inject]
    public Session Session { get; set; } = null!;

    /// <summary>The user's words, units and clock.</summary>
    protected Wording W => Session.Words;

    /// <inheritdoc/>
    protected override void OnInitialized() => Session.Changed += OnChanged;

    /// <summary>Called when the session changed, before the redraw.</summary>
    protected virtual void OnSession()
    {
    }

    private void OnChanged() => _ = InvokeAsync(() =>
    {
        OnSession();
        StateHasChanged();
    });

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Leaves the session.</summary>
    protected virtual void Dispose(bool disposing) => Session.Changed -= OnChanged;
}
