using Microsoft.AspNetCore.Components;
using SecondShore.App.Parts;
using SecondShore.App.Shell;

namespace SecondShore.App.Places;

/// <summary>What every place has: the session, followed, and the browser.</summary>
public abstract class PlaceBase : PartBase
{
    /// <summary>The browser.</summary>
    [Inject]
    public Browser Browser { get; set; } = null!;
}
