using System.Globalization;

namespace SecondShore.Open.Outlines;

/// <summary>A water of the open map, before its outline is asked for. Immutable.</summary>
/// <param name="IsRelation">Whether it is put together of several lines (islands, long shores), not of one.</param>
/// <param name="Id">Its number there.</param>
/// <param name="Name">Its name; empty where it has none.</param>
/// <param name="Box">Its box.</param>
public sealed record FoundWater(bool IsRelation, long Id, string Name, GeoBox Box)
{
    /// <summary>Whether the map says that it is a reservoir.</summary>
    public bool IsReservoir { get; init; }

    /// <summary>How far its box lies from the place that was asked about, m; 0 inside.</summary>
    public double DistanceM { get; init; }

    /// <summary>How well its name fits the one that was asked for: 0 the same, 1 in part, 2 not at all or none was asked for.</summary>
    public int NameRank { get; init; } = 2;

    /// <summary>What it is called at its source, such as <c>way/123</c>.</summary>
    public string Source => (IsRelation ? "relation/" : "way/") + Id.ToString(CultureInfo.InvariantCulture);
}
