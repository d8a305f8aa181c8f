namespace SecondShore.Answers.Documents;

/// <summary>The document that <c>outlook --json</c> prints.</summary>
public sealed record OutlookDocument
{
    /// <summary>The lake's name.</summary>
    public required string Lake { get; init; }

    /// <summary>The instant the state stands for, local to the lake.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary><c>stratified</c>, <c>turning</c> or <c>mixed</c>.</summary>
    public required string State { get; init; }

    /// <summary>Share of members in which a thermocline stands.</summary>
    public required double ChanceStratified { get; init; }

    /// <summary>Thermocline depth below today's surface, m.</summary>
    public required SpreadDocument? ThermoclineM { get; init; }

    /// <summary>The warm skin of the day above it; null without a strong one.</summary>
    public required SkinRow? WarmSkin { get; init; }

    /// <summary>Depth below which oxygen is likely short, m.</summary>
    public required SpreadDocument? OxygenFloorM { get; init; }

    /// <summary>Date of turnover.</summary>
    public required DateSpreadDocument? Turnover { get; init; }

    /// <summary>Temperature and oxygen by depth.</summary>
    public required IReadOnlyList<ProfileRow> Profile { get; init; }

    /// <summary>Each arm.</summary>
    public required IReadOnlyList<ArmRow> Arms { get; init; }

    /// <summary>The answer in words, feet or metres as the lake folder asks.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }

    /// <summary>Readings not followed, and why.</summary>
    public required IReadOnlyList<string> Doubted { get; init; }

    /// <summary>Readings that play no part by their date; empty where every one does.</summary>
    public required IReadOnlyList<UnusedRow> Unused { get; init; }

    /// <summary>A reading that plays no part.</summary>
    /// <param name="At">When it was made, by its own date.</param>
    /// <param name="Kind">What was read, with its unit: <c>haze_depth_m</c>, <c>surface_temp_c</c>, <c>temp_c</c>, <c>secchi_m</c>, <c>oxygen_mg_l</c>; <c>profile</c> for a cast.</param>
    /// <param name="Value">The value; null for a cast.</param>
    /// <param name="Source">File and line, or the entry's id.</param>
    /// <param name="Why"><c>after_the_answer</c> or <c>earlier_season</c>.</param>
    public sealed record UnusedRow(DateTimeOffset At, string Kind, double? Value, string Source, string Why);

    /// <summary>A warm skin of the day.</summary>
    /// <param name="DepthM">Depth where half of the day's warming is left, m.</param>
    /// <param name="WarmerK">How much warmer the surface is than at its coolest within a day, K.</param>
    public sealed record SkinRow(SpreadDocument DepthM, SpreadDocument WarmerK);

    /// <summary>One depth of the profile.</summary>
    /// <param name="DepthM">Depth, m.</param>
    /// <param name="TempC">Temperature, degC.</param>
    /// <param name="OxygenMgPerL">Oxygen, mg/L.</param>
    public sealed record ProfileRow(double DepthM, SpreadDocument TempC, SpreadDocument? OxygenMgPerL);

    /// <summary>One arm.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="State">Its state.</param>
    /// <param name="ThermoclineM">Its thermocline depth, m.</param>
    /// <param name="Turnover">Its turnover date.</param>
    public sealed record ArmRow(string Name, string State, SpreadDocument? ThermoclineM, DateSpreadDocument? Turnover);
}
