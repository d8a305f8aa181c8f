namespace SecondShore.App.Store;

/// <summary>A lake kept on this device.</summary>
public sealed record LakeRow(string Id, string Name, string AddedAt);

/// <summary>Storage used on this device.</summary>
public sealed record StorageUse(double UsedBytes, double QuotaBytes, bool Persistent);
