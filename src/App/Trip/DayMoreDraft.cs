using System.Text.Json;
using SecondShore.App.Words;
using SecondShore.Desk;
using SecondShore.Desk.Views;
using SecondShore.Engine.Core.Units;

namespace SecondShore.App.Trip;

/// <summary>Boat, breaks and what is kept in hand, as typed in the reader's units. A field left empty takes the usual.</summary>
public sealed class DayMoreDraft
{
    private static readonly double KmhMps = 1 / 3.6, MphMps = Engine.Core.Units.Speed.MpsPerMph, GallonL = Engine.Core.Units.Volume.LitresPerUsGallon;

    /// <summary>Most breaks of a day.</summary>
    public const int MostBreaks = 3;

    /// <summary>Speed of a run, mph or km/h.</summary>
    public double? Cruise { get; set; }

    /// <summary>Draft, ft or m.</summary>
    public double? Draft { get; set; }

    /// <summary>Fuel, US gallons or litres.</summary>
    public double? Fuel { get; set; }

    /// <summary>Mean wind to be off the water at, mph or m/s.</summary>
    public double? Wind { get; set; }

    /// <summary>Minutes in hand.</summary>
    public double? Reserve { get; set; }

    /// <summary>The breaks.</summary>
    public IList<BreakDraft> Breaks { get; } = [];

    /// <summary>What was asked, in the reader's units.</summary>
    public static DayMoreDraft Of(DayMore? more, Wording w)
    {
        bool metric = w.Units.IsMetric;
        DayMoreDraft draft = new()
        {
            Cruise = Shown(more?.CruiseMps, metric ? KmhMps : MphMps),
            Draft = Shown(more?.DraftM, metric ? 1 : Length.MetresPerFoot),
            Fuel = Shown(more?.FuelL, metric ? 1 : GallonL),
            Wind = Shown(more?.WindLimitMps, metric ? 1 : MphMps),
            Reserve = more?.ReserveMin,
        };
        foreach (BreakAsk pause in more?.Breaks ?? []) draft.Breaks.Add(new BreakDraft { From = pause.From, To = pause.To, Minutes = pause.Minutes });
        return draft;
    }

    /// <summary>What is asked, in SI; null where all is as usual.</summary>
    public DayMore? ToMore(Wording w)
    {
        bool metric = w.Units.IsMetric;
        BreakAsk[] breaks = [.. Breaks.Where(b => b.From is not null).Select(b => new BreakAsk(b.From!.Value, b.To ?? b.From.Value, b.Minutes))];
        DayMore more = new(Cruise * (metric ? KmhMps : MphMps), Draft * (metric ? 1 : Length.MetresPerFoot), Fuel * (metric ? 1 : GallonL), Wind * (metric ? 1 : MphMps), Reserve,
            breaks.Length > 0 ? breaks : null);
        return more == new DayMore() ? null : more;
    }

    /// <summary>Why it cannot be, in one sentence; null when it can.</summary>
    public string? Complaint(Wording w)
    {
        DayMore more = ToMore(w) ?? new DayMore();
        if (more.CruiseMps is < 0.89 or > 40.3) return w["more.odd", w["more.cruise", Speed(w)]];
        if (more.DraftM is < 0.06 or > 6.1) return w["more.odd", w["more.draft", w.Units.DepthUnit]];
        if (more.FuelL is < 0.37 or > 1900) return w["more.odd", w["more.fuel", Volume(w)]];
        if (more.WindLimitMps is < 1 or > 40) return w["more.odd", w["more.wind", WindUnit(w)]];
        if (more.ReserveMin is < 0 or > 240) return w["more.odd", w["more.reserve"]];
        return more.Breaks?.Any(b => b.To < b.From || b.Minutes is < 5 or > 240) == true ? w["more.break.odd"] : null;
    }

    /// <summary>The reader's unit of a run's speed.</summary>
    public static string Speed(Wording w) => w.Units.IsMetric ? "km/h" : "mph";

    /// <summary>The reader's unit of wind.</summary>
    public static string WindUnit(Wording w) => w.Units.IsMetric ? "m/s" : "mph";

    /// <summary>The reader's unit of fuel.</summary>
    public static string Volume(Wording w) => w.Units.IsMetric ? "L" : "gal";

    /// <summary>As this device keeps it.</summary>
    public static string ToJson(DayMore? more) => JsonSerializer.Serialize(more ?? new DayMore(), DeskJson.Default.DayMore);

    /// <summary>As this device kept it; null where it cannot be read.</summary>
    public static DayMore? OfJson(string? json)
    {
        if (string.IsNullOrEmpty(json)) return null;
        try
        {
            return JsonSerializer.Deserialize(json, DeskJson.Default.DayMore);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static double? Shown(double? si, double unit) => si is { } v ? Math.Round(v / unit, 2) : null;
}

/// <summary>A break as typed.</summary>
public sealed class BreakDraft
{
    /// <summary>Not begun before.</summary>
    public TimeOnly? From { get; set; }

    /// <summary>Not begun after; null begins it then.</summary>
    public TimeOnly? To { get; set; }

    /// <summary>How long.</summary>
    public int Minutes { get; set; } = 20;
}
