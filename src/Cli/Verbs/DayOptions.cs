using System.CommandLine;
using System.Globalization;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Day;
using SecondShore.Formats.Lake;

namespace SecondShore.Cli.Verbs;

/// <summary>The options of <c>day</c> and the wish they make.</summary>
internal sealed class DayOptions
{
    private readonly Option<string?> _date = SharedOptions.Date();
    private readonly Option<string?> _ramp = new("--ramp") { Description = "Ramp by its name in lake.json; left out, the first that reaches the water." };
    private readonly Option<string?> _launch = new("--launch") { Description = "Local time from which the boat may leave, such as 06:30; left out, sunrise." };
    private readonly Option<string?> _home = new("--home") { Description = "Local time to be back by (check-in); left out, 15:00, or dark if that is earlier." };
    private readonly Option<string[]> _must = new("--must") { Description = "Spots that must be stops, by id, letter or name, besides lake.json's must_visit marks.", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _never = new("--never") { Description = "Spots to leave out, by id, letter or name, besides lake.json's never_visit marks.", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _breaks = new("--break") { Description = "A break wherever the boat is: earliest and latest start and minutes, such as 11:30-12:30/20; up to three.", AllowMultipleArgumentsPerToken = true };
    private readonly Option<double> _reserve = new("--reserve") { Description = "Minutes kept in hand before dark, check-in and the wind limit.", DefaultValueFactory = _ => 20 };
    private readonly Option<double?> _windLimit = new("--wind-limit") { Description = "Mean wind, m/s, at which you want to be off the water; left out, the small-craft wind of the cautions." };
    private readonly Option<double?> _cruise = new("--cruise") { Description = "Speed under way, mph." };
    private readonly Option<double?> _draft = new("--draft") { Description = "Draft of the boat, ft; as much again is kept under the keel, at least 2 ft." };
    private readonly Option<double?> _fuel = new("--fuel") { Description = "Fuel that may be burnt, US gallons; left out, no limit." };
    private readonly Option<string?> _from = new("--from") { Description = "Plan the rest of a day from the boat's place, LAT,LON; with --now." };
    private readonly Option<string?> _now = new("--now") { Description = "Local time of such a replan, such as 10:20." };
    private readonly Option<string[]> _fished = new("--fished") { Description = "Spots fished already that day with their minutes, such as A=40.", AllowMultipleArgumentsPerToken = true };
    private readonly Option<int> _spots = new("--spots") { Description = "Most spots to weigh.", DefaultValueFactory = _ => 16 };
    private readonly Option<int> _members = SharedOptions.Members();
    private readonly Option<ulong> _seed = SharedOptions.Seed();

    public void AddTo(Command command)
    {
        foreach (Option option in (Option[])[_date, _ramp, _launch, _home, _must, _never, _breaks, _reserve, _windLimit, _cruise, _draft, _fuel, _from, _now, _fished, _spots, _members, _seed])
            command.Options.Add(option);
    }

    /// <summary>The wish as given.</summary>
    /// <exception cref="BadUsageException">An option cannot be read or is out of range.</exception>
    public DayWish Wish(ParseResult parsed, PreparedLake lake, TimeProvider clock)
    {
        DateOnly date = SharedOptions.Day(parsed.GetValue(_date), lake.Folder, clock);
        DayWish usual = new() { Date = date };
        return usual with
        {
            Ramp = Ramp(parsed.GetValue(_ramp), lake),
            Launch = Time("--launch", parsed.GetValue(_launch)),
            HomeBy = Time("--home", parsed.GetValue(_home)),
            MaxSpots = (int)Between("--spots", parsed.GetValue(_spots), 1, 60),
            Boat = BoatOf(parsed),
            Must = parsed.GetValue(_must) ?? [],
            Never = parsed.GetValue(_never) ?? [],
            Breaks = [.. (parsed.GetValue(_breaks) ?? []).Select(Break)],
            Reserve = TimeSpan.FromMinutes(Between("--reserve", parsed.GetValue(_reserve), 0, 240)),
            WindLimitMps = parsed.GetValue(_windLimit) is { } limit ? Between("--wind-limit", limit, 1, 40) : null,
            Here = Here(parsed, date, lake),
            StandsAt = AnswerTime.Default(lake.Folder, clock),
            Ensemble = SharedOptions.Ensemble(parsed, _members, _seed),
        };
    }

    /// <summary>Reads what can be read before the lake is, so that a slip is told at once.</summary>
    public void Check(ParseResult parsed)
    {
        Time("--launch", parsed.GetValue(_launch));
        Time("--home", parsed.GetValue(_home));
        Time("--now", parsed.GetValue(_now));
        string[] breaks = parsed.GetValue(_breaks) ?? [];
        if (breaks.Length > 3) throw new BadUsageException($"--break is given {breaks.Length} times; a day takes up to three breaks.");
        foreach (string text in breaks) Break(text);
        foreach (string text in parsed.GetValue(_fished) ?? []) Fished(text);
        if (parsed.GetValue(_from) is { } from) Place(from);
        if (parsed.GetValue(_from) is null != parsed.GetValue(_now) is null) throw new BadUsageException("--from and --now go together: a replan needs the boat's place and the time.");
    }

    private static string? Ramp(string? name, PreparedLake lake)
    {
        IReadOnlyList<RampMark> ramps = lake.Folder.Ramps;
        return name is null || ramps.Any(r => string.Equals(r.Name, name, StringComparison.OrdinalIgnoreCase))
            ? name
            : throw new BadUsageException($"--ramp '{name}' is not in lake.json; it knows {(ramps.Count == 0 ? "none" : string.Join(", ", ramps.Select(r => r.Name)))}.");
    }

    private Boat BoatOf(ParseResult parsed) => BoatWish.Of(
        parsed.GetValue(_cruise) is { } mph ? Speed.FromMilesPerHour(Between("--cruise", mph, 2, 90)).MetresPerSecond : null,
        parsed.GetValue(_draft) is { } feet ? Length.FromFeet(Between("--draft", feet, 0.2, 20)).Metres : null,
        parsed.GetValue(_fuel) is { } gallons ? Volume.LitresPerUsGallon * Between("--fuel", gallons, 0.1, 500) : null);

    private BoatNow? Here(ParseResult parsed, DateOnly date, PreparedLake lake)
    {
        if (parsed.GetValue(_from) is not { } from || Time("--now", parsed.GetValue(_now)) is not { } now) return null;
        Dictionary<string, double> fished = [];
        foreach ((string spot, double hoursH) in (parsed.GetValue(_fished) ?? []).Select(Fished)) fished[spot] = fished.GetValueOrDefault(spot) + hoursH;
        return new BoatNow(AnswerTime.At(date, now, lake.Folder), Place(from), fished);
    }

    private static GeoPoint Place(string text)
    {
        string[] parts = text.Split(',', StringSplitOptions.TrimEntries);
        if (parts.Length == 2 && double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out double latDeg) && double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double lonDeg)
            && latDeg is >= -90 and <= 90 && lonDeg is >= -180 and <= 180) return new GeoPoint(latDeg, lonDeg);
        throw new BadUsageException($"--from {text} is not a place; write it like 41.503,-81.246.");
    }

    private static (string Spot, double HoursH) Fished(string text)
    {
        int at = text.LastIndexOf('=');
        if (at > 0 && double.TryParse(text[(at + 1)..], NumberStyles.Float, CultureInfo.InvariantCulture, out double minutes) && minutes is >= 0 and <= 1440) return (text[..at].Trim(), minutes / 60);
        throw new BadUsageException($"--fished {text} is not a spot and minutes; write it like A=40.");
    }

    private static BreakWish Break(string text)
    {
        string[] parts = text.Split('-', '/');
        if (parts.Length == 3 && TryTime(parts[0], out TimeOnly from) && TryTime(parts[1], out TimeOnly to) && to >= from
            && int.TryParse(parts[2], NumberStyles.None, CultureInfo.InvariantCulture, out int minutes) && minutes is >= 5 and <= 240) return new BreakWish(from, to, minutes);
        throw new BadUsageException($"--break {text} is not a break; write earliest and latest start and 5 to 240 minutes like 11:30-12:30/20.");
    }

    private static TimeOnly? Time(string option, string? text)
    {
        if (text is null) return null;
        return TryTime(text, out TimeOnly time) ? time : throw new BadUsageException($"{option} {text} is not a time of day; write it like 06:30.");
    }

    private static bool TryTime(string text, out TimeOnly time) => TimeOnly.TryParseExact(text, ["H:mm", "HH:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out time);

    private static double Between(string option, double value, double low, double high) => value >= low && value <= high
        ? value
        : throw new BadUsageException(string.Create(CultureInfo.InvariantCulture, $"{option} {value} is out of range; use {low} to {high}."));
}
