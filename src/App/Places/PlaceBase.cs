using Microsoft.AspNetCore.Components;
using SecondShore.App.Shell;
using SecondShore.App.Words;

namespace SecondShore.App.Places;

/// <summary>What every place has: the session, and a redraw when it changes.</summary>
public abstract class PlaceBase : ComponentBase, IDisposable
{
    /// <summary>The session.</summary>
    [Inject]
    public Session Session { get; set; } = null!;

    /// <summary>The browser.</summary>
    [Inject]
    public Browser Browser { get; set; } = null!;

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
