namespace SecondShore.App.Compute;

/// <summary>What the desk refuses.</summary>
internal static class DeskFindings
{
    /// <summary>A question before any lake is open.</summary>
    public static readonly FindingKind NoLakeOpen = new("desk.no-lake-open");

    /// <summary>A sheet before any day is planned.</summary>
    public static readonly FindingKind NoDay = new("desk.no-day");

    /// <summary>Wind before the outlook.</summary>
    public static readonly FindingKind NoOutlook = new("desk.no-outlook");

    /// <summary>A place's hours before the wind is worked out.</summary>
    public static readonly FindingKind NoWind = new("desk.no-wind");

    /// <summary>A host's answer without weather.</summary>
    public static readonly FindingKind NoWeatherInAnswer = new("desk.no-weather-in-answer");

    /// <summary>An address that is none.</summary>
    public static readonly FindingKind NoAddress = new("desk.no-address", "address");

    /// <summary>Nothing was dropped.</summary>
    public static readonly FindingKind NoFile = new("desk.no-file");

    /// <summary>A file that cannot be taken in.</summary>
    public static readonly FindingKind FileRefused = new("desk.file-refused", "file", "why");

    /// <summary>A tackle box told nothing.</summary>
    public static readonly FindingKind NothingToKeep = new("desk.nothing-to-keep");

    /// <summary>A held plan that is not there.</summary>
    public static readonly FindingKind NoPlan = new("desk.no-plan");
}
