using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;

namespace SecondShore.Answers.Sheet;

/// <summary>Everything the printed day says. Words come ready; numbers in SI are said in the reader's units.</summary>
public sealed record DaySheetModel
{
    /// <summary>The lake's name.</summary>
    public required string LakeName { get; init; }

    /// <summary>Whether the lake is invented: the sheet then says so.</summary>
    public bool Invented { get; init; }

    /// <summary>Units to print.</summary>
    public required UnitSystem Units { get; init; }

    /// <summary>The plan; its times carry the lake's offset.</summary>
    public required DayPlan Plan { get; init; }

    /// <summary>Name of the ramp.</summary>
    public required string RampName { get; init; }

    /// <summary>Thermocline depth, m; null when there is none.</summary>
    public Spread? ThermoclineM { get; init; }

    /// <summary>Depth from which oxygen is out, m; null when it is not.</summary>
    public Spread? OxygenOutM { get; init; }

    /// <summary>Why the depths are what they are, in words without 'because'.</summary>
    public string Because { get; init; } = "";

    /// <summary>The map.</summary>
    public required SheetMap Map { get; init; }

    /// <summary>Wind by hour, to draw.</summary>
    public IReadOnlyList<SheetWind> Wind { get; init; } = [];

    /// <summary>First light; null leaves the strip unhatched.</summary>
    public DateTimeOffset? LightAt { get; init; }

    /// <summary>Dark; null leaves the strip unhatched.</summary>
    public DateTimeOffset? DarkAt { get; init; }

    /// <summary>Stops in order.</summary>
    public required IReadOnlyList<SheetStop> Stops { get; init; }

    /// <summary>What to do when the haze is at another depth: depth and advice.</summary>
    public IReadOnlyList<SheetRow> IfHazeElsewhere { get; init; } = [];

    /// <summary>What to tie the evening before: count and rig.</summary>
    public IReadOnlyList<SheetRow> Tie { get; init; } = [];

    /// <summary>Cautions, strongest first.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>By which program and how: two sheets that differ then tell whether they should.</summary>
    public string MadeBy { get; init; } = "";

    /// <summary>What the map's heavy line and its frame mean, in few words.</summary>
    public string MapKey => (Map.SecondShore.Count > 0 ? Units.Speech.Plain("Heavy line: second shore.") + " " : "")
        + Units.Speech.Say($"Frame bar: {(Units.IsMetric ? "500 m" : Units.Speech.Plain("a quarter mile"))}.");
}

/// <summary>A stop on the sheet.</summary>
/// <param name="Letter">Letter on the map.</param>
/// <param name="Name">Name.</param>
/// <param name="Arrive">When.</param>
/// <param name="Leave">Until when.</param>
/// <param name="Rig">What to fish with.</param>
/// <param name="How">How: depth, pass, speed.</param>
/// <param name="Why">Why, without 'because'.</param>
public sealed record SheetStop(string Letter, string Name, DateTimeOffset Arrive, DateTimeOffset Leave, string Rig, string How, string Why);

/// <summary>A bold word and a sentence.</summary>
public sealed record SheetRow(string Head, string Text);

/// <summary>Wind of an hour.</summary>
/// <param name="At">Start of the hour.</param>
/// <param name="WindMps">Mean wind, m/s.</param>
/// <param name="GustMps">Gust, m/s.</param>
/// <param name="FromDeg">Where it comes from, degrees clockwise from north.</param>
public readonly record struct SheetWind(DateTimeOffset At, double WindMps, double GustMps, double FromDeg);
