using System.Globalization;

namespace SecondShore.App.Store;

/// <summary>Ids of lakes: unique over all devices without asking anyone, and in order of making.</summary>
public static class LakeId
{
    /// <summary>A new id.</summary>
    /// <param name="at">When the lake is made or taken in.</param>
    public static string New(DateTimeOffset at) => string.Create(CultureInfo.InvariantCulture,
        $"{Math.Max(0, at.ToUnixTimeMilliseconds()):x12}-{Guid.NewGuid():N}")[..33];
}
