using System.Globalization;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Motion;

namespace SecondShore.Answers.Wind;

/// <summary>A wind result in the words of a tired angler.</summary>
public static class WindWords
{
    private const double WorthSayingM = 0.3;
    private static readonly string[] Points = ["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];
    private static readonly string[] ShortPoints = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"];

    /// <summary>The whole answer in a few short sentences.</summary>
    public static IReadOnlyList<string> Say(WindResult result, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(units);
        List<string> words = [Wind(result, units)];
        if (!result.Field.IsLayered)
        {
            words.Add(units.Speech.Plain("The lake has no layers to tip: the wind moves waves and drift only."));
        }
        else
        {
            HourSummary tipped = result.Hours.MaxBy(h => h.TiltM)!;
            words.Add(Tip(result, tipped, units));
            if (Return(result, tipped, units) is { } back) words.Add(back);
            if (Oxygen(result, tipped, units) is { } oxygen) words.Add(oxygen);
        }

        words.Add(Waves(result, units));
        return words;
    }

    /// <summary>Cautions that bear on these hours, with the notice that classes are the tool's own.</summary>
    public static IReadOnlyList<string> Cautions(WindResult result, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(units);
        List<string> cautions = [];
        HourSummary? stay = result.Hours.FirstOrDefault(h => h.Comfort == Comfort.DoNotGo);
        if (stay is not null) cautions.Add(units.Speech.Say($"From {Clock(stay.At, units)} wind or waves pass what your boat is set to bear: do not go, or be off the water by then."));
        HourSummary gusty = result.Hours.MaxBy(h => h.GustMps)!;
        if (gusty.GustMps >= 11) cautions.Add(units.Speech.Say($"Gusts to {units.Wind(gusty.GustMps)} about {Clock(gusty.At, units)}."));
        if (result.SurfaceC is < 15) cautions.Add(units.Speech.Say($"The water is {units.Temp(result.SurfaceC.Value)}: wear the life jacket, clip the kill switch, tell someone your plan."));
        cautions.Add(units.Speech.Plain(BoatLimits.Notice));
        return cautions;
    }

    /// <summary>How far and where the layer tips at an hour.</summary>
    public static string Tip(WindResult result, HourSummary hour, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(hour);
        ArgumentNullException.ThrowIfNull(units);
        if (hour.Deepest is not { } deep || hour.Shallowest is not { } shallow || hour.TiltM < WorthSayingM)
            return units.Speech.Plain("The thermocline stays about level: no end is worth choosing over another for it.");
        return units.Speech.Say($"By {Clock(hour.At, units)} the layer tips {units.Depth(hour.TiltM)}: {With(shallow.DepthM, units)} at the {End(result, shallow.Place, units)} end, {With(deep.DepthM, units)} at the {End(result, deep.Place, units)} end.");
    }

    /// <summary>What rising oxygen-poor water means for fish; null where it does not rise or oxygen is no matter.</summary>
    public static string? Oxygen(WindResult result, HourSummary hour, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(hour);
        ArgumentNullException.ThrowIfNull(units);
        if (result.Outlook.Lake.OxygenFloorM is not { } floor || hour.Shallowest is not { } lifted || lifted.OffsetM > -WorthSayingM) return null;
        double restM = floor.Quantile(0.5), nowM = Math.Max(0.0, restM + lifted.OffsetM);
        return units.Speech.Say($"Water short of oxygen is pushed up to about {units.Depth(nowM)} along the slopes of the {End(result, lifted.Place, units)} end: fish that held there between {units.DepthRange(nowM, restM)} probably move up or leave the bottom until it rocks back.");
    }

    /// <summary>A clock time such as <c>3 pm</c> or <c>15:00</c>.</summary>
    public static string Clock(DateTimeOffset at, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(units);
        if (units.IsMetric || units.Speech.Language != "en") return at.ToString("HH:mm", CultureInfo.InvariantCulture);
        return at.ToString(at.Minute == 0 ? "h tt" : "h:mm tt", CultureInfo.InvariantCulture).ToLowerInvariant();
    }

    private static string Wind(WindResult result, UnitSystem units)
    {
        HourSummary weakest = result.Hours.MinBy(h => h.WindMps)!, strongest = result.Hours.MaxBy(h => h.WindMps)!;
        return units.Speech.Say($"Wind {units.Wind(weakest.WindMps)} to {units.Wind(strongest.WindMps)}, strongest about {Clock(strongest.At, units)} from the {Point(strongest.WindFromDeg, units)}, gusts to {units.Wind(result.Hours.Max(h => h.GustMps))}.");
    }

    private static string? Return(WindResult result, HourSummary tipped, UnitSystem units)
    {
        if (tipped.TiltM < WorthSayingM || result.Field.PeriodS is not { } periodS) return null;
        HourSummary? level = result.Hours.FirstOrDefault(h => h.At > tipped.At && h.TiltM < 0.5 * tipped.TiltM);
        string hours = (periodS / 3600).ToString("0", CultureInfo.InvariantCulture);
        return level is null
            ? units.Speech.Say($"It does not rock back within these hours; once the wind drops it swings with a period of about {hours} hours.")
            : units.Speech.Say($"By {Clock(level.At, units)} half of that is gone; the layer swings with a period of about {hours} hours.");
    }

    private static string Waves(WindResult result, UnitSystem units)
    {
        HourSummary worst = result.Hours.MaxBy(h => h.Waves.HeightM)!;
        if (worst.Waves.HeightM < 0.1) return units.Speech.Plain("The water stays smooth.");
        string height = units.Speech.Say($"{Height(worst.Waves.HeightM, units)} ({Height(worst.Waves.HeightLowM, units)} to {Height(worst.Waves.HeightHighM, units)})");
        string side = End(result, worst.Roughest, units), at = Clock(worst.At, units), boat = units.Speech.Plain(ForBoat(worst.Comfort));
        return worst.Waves.IsChop
            ? units.Speech.Say($"Waves reach {height} on the {side} side about {at}, short and steep, {boat}.")
            : units.Speech.Say($"Waves reach {height} on the {side} side about {at}, {boat}.");
    }

    private static string ForBoat(Comfort comfort) => comfort switch
    {
        Comfort.Good => "comfortable for your boat",
        Comfort.Caution => "where your boat wants care",
        Comfort.Poor => "rough for your boat",
        _ => "more than your boat is set to bear",
    };

    /// <summary>A comfort class in words.</summary>
    public static string Class(Comfort comfort) => comfort switch
    {
        Comfort.Good => "comfortable",
        Comfort.Caution => "take care",
        Comfort.Poor => "rough",
        _ => "do not go",
    };

    /// <summary>A wave height such as <c>1.2 ft</c> or <c>0.4 m</c>.</summary>
    public static string Height(double heightM, UnitSystem units) => units.IsMetric
        ? $"{units.Speech.Number(heightM, "0.0")} m"
        : $"{units.Speech.Number(units.DepthFrom(heightM), "0.0")} ft";

    private static string With(Spread depthM, UnitSystem units) =>
        units.Speech.Say($"{units.Depth(depthM.P50)} ({units.DepthNumber(depthM.P10)} to {units.DepthNumber(depthM.P90)})");

    private static string End(WindResult result, PlanePoint place, UnitSystem units)
    {
        double x = 0, y = 0;
        MotionGrid motion = result.Field.Motion;
        foreach (int cell in motion.Cells)
        {
            PlanePoint centre = motion.Frame.Centre(cell);
            x += centre.XM / motion.Cells.Length;
            y += centre.YM / motion.Cells.Length;
        }

        return Point(new PlanePoint(x, y).BearingToDeg(place), units);
    }

    /// <summary>A compass point such as <c>NW</c>.</summary>
    public static string ShortPoint(double bearingDeg) => ShortPoints[(int)Math.Round(bearingDeg / 45.0) % 8];

    private static string Point(double bearingDeg, UnitSystem units) => units.Speech.Plain(Points[(int)Math.Round(bearingDeg / 45.0) % 8]);
}
