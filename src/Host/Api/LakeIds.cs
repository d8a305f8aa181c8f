using System.Buffers;

namespace SecondShore.Host.Api;

/// <summary>Ids of lakes at the host: made by the device that adds the lake. Never a path, never part of one.</summary>
internal static class LakeIds
{
    private static readonly SearchValues<char> Letters = SearchValues.Create("abcdefghijklmnopqrstuvwxyz0123456789-");

    public static bool IsWellFormed(string id) => id.Length is >= 8 and <= 64 && !id.AsSpan().ContainsAnyExcept(Letters);
}
