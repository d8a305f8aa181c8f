using System.Globalization;

namespace SecondShore.App.Store;

/// <summary>Ids of records: unique over all devices without asking anyone, and in order of making.</summary>
public static class RecordId
{
    /// <summary>A new id.</summary>
    /// <param name="at">When the record is made.</param>
    public static string New(DateTimeOffset at) => string.Create(CultureInfo.InvariantCulture,
        $"{Math.Max(0, at.ToUnixTimeMilliseconds()):x12}-{Guid.NewGuid():N}")[..33];
}
