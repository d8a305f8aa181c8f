namespace SecondShore.Desk;

/// <summary>What the desk refuses.</summary>
internal static class DeskFindings
{
    /// <summary>A question before any lake is open.</summary>
    public static readonly FindingKind NoLakeOpen = new("desk.no-lake-open");

    /// <summary>A host's answer without weather.</summary>
    public static readonly FindingKind NoWeatherInAnswer = new("desk.no-weather-in-answer");

    /// <summary>An address that is none.</summary>
    public static readonly FindingKind NoAddress = new("desk.no-address", "address");

    /// <summary>Nothing was dropped.</summary>
    public static readonly FindingKind NoFile = new("desk.no-file");

    /// <summary>A file that cannot be taken in.</summary>
    public static readonly FindingKind FileRefused = new("desk.file-refused", "file", "why");
}
