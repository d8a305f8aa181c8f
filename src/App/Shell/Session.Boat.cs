using Microsoft.JSInterop;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.App.Shell;

/// <summary>Where the boat is.</summary>
public sealed partial class Session
{
    /// <summary>Whether the position is followed.</summary>
    public bool IsFollowing { get; private set; }

    /// <summary>The last fix; null without one.</summary>
    public BoatFix? Fix { get; private set; }

    /// <summary>Depth of the bottom under the boat by the chart, m; null on land, off the lake or without a fix.</summary>
    public double? DepthHereM { get; private set; }

    /// <summary>Why there is no fix: <c>none</c>, <c>denied</c> or <c>lost</c>; null when there is one or none was wanted.</summary>
    public string? NoFix { get; private set; }

    /// <summary>Raised when the phone found its position.</summary>
    internal event Action<BoatFix>? FixCame;

    /// <summary>Depth of the bottom at a place by the chart, m; null on land or off the lake.</summary>
    internal async Task<double?> DepthAtAsync(PlanePoint place)
    {
        double depthM = await browser.Number("depthHere", place.XM, place.YM);
        return depthM > 0 ? Math.Round(depthM, 2) : null;
    }

    /// <summary>Starts or ends following; the browser asks for consent.</summary>
    public async Task FollowAsync(bool on)
    {
        IsFollowing = on;
        NoFix = null;
        if (on) await browser.Do("follow", _self ??= DotNetObjectReference.Create(this)); else await browser.Do("leave");
        Tell();
    }

    /// <summary>The phone found its position.</summary>
    [JSInvokable]
    public async Task OnFix(double latDeg, double lonDeg, double accuracyM, double? speedMps, double? headingDeg, double at)
    {
        NoFix = null;
        GeoPoint place = new(latDeg, lonDeg);
        PlanePoint? point = Plane?.ToPlane(place);
        Fix = new BoatFix(place, point, accuracyM, speedMps, headingDeg, DateTimeOffset.FromUnixTimeMilliseconds((long)at));
        Speeds.Add(Fix);
        FixCame?.Invoke(Fix);
        if (point is { } p)
        {
            await browser.Do("setPosition", p.XM, p.YM, headingDeg, accuracyM);
            DepthHereM = await DepthAtAsync(p);
        }

        Tell();
    }

    /// <summary>The phone cannot tell its position.</summary>
    [JSInvokable]
    public void OnNoFix(string why)
    {
        NoFix = why;
        if (why != "lost") IsFollowing = false;
        Tell();
    }

    /// <summary>Speeds of the last minute.</summary>
    public SpeedTrack Speeds { get; } = new();
}

/// <summary>One position of the boat.</summary>
public sealed record BoatFix(GeoPoint Place, PlanePoint? Point, double AccuracyM, double? SpeedMps, double? HeadingDeg, DateTimeOffset At);
