using System.Globalization;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.App.Words;

/// <summary>Numbers, dates and sentences as this user reads them: language, units and clock chosen once.</summary>
/// <param name="Text">The language's sentences.</param>
/// <param name="Locale">The browser's way with dates and numbers.</param>
/// <param name="Units">Feet or metric.</param>
/// <param name="Zone">The lake's time zone: all times are shown in it.</param>
public sealed record Wording(TextBook Text, LocaleInfo Locale, UnitSystem Units, TimeZoneInfo Zone)
{
    private static readonly string[] Points = ["north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest"];

    /// <summary>A sentence.</summary>
    public string this[string key] => Text[key];

    /// <summary>A sentence with values.</summary>
    public string this[string key, params object?[] values] => Text[key, values];

    /// <summary>A depth as a number for large type: feet to a half, metres to a tenth.</summary>
    public string DepthFine(double depthM)
    {
        double value = Units.DepthFrom(depthM);
        return Local((Units.IsMetric ? Math.Round(value, 1) : Math.Round(value * 2) / 2).ToString(Units.IsMetric ? "0.0" : "0.#", CultureInfo.InvariantCulture));
    }

    /// <summary>A depth as a number: whole feet, or metres to a tenth.</summary>
    public string DepthNumber(double depthM) => Local(Units.DepthNumber(depthM));

    /// <summary>A depth with its unit.</summary>
    public string Depth(double depthM) => Local(Units.Depth(depthM));

    /// <summary>A range such as <c>24 to 31 ft</c>.</summary>
    public string DepthRange(double shallowM, double deepM)
    {
        string shallow = DepthNumber(shallowM), deep = DepthNumber(deepM);
        return shallow == deep ? $"{deep} {Units.DepthUnit}" : Text["number.range", shallow, deep] + " " + Units.DepthUnit;
    }

    /// <summary>A temperature as a number in the user's unit.</summary>
    public string TempNumber(double tempC) =>
        Local(Units.TemperatureFrom(tempC).ToString(Units.IsMetric ? "0.0" : "0", CultureInfo.InvariantCulture));

    /// <summary>A distance on the water.</summary>
    public string Distance(double distanceM) => Local(Units.Distance(distanceM));

    /// <summary>A boat's or drag speed.</summary>
    public string Pace(double speedMps) => Local(Units.Pace(speedMps));

    /// <summary>A wind.</summary>
    public string Wind(double windMps) => Local(Units.Wind(windMps));

    /// <summary>A wind as a number in the user's unit.</summary>
    public double WindFrom(double windMps) => Math.Round(Units.IsMetric ? windMps : windMps / 0.44704, 1);

    /// <summary>A number in the browser's writing.</summary>
    public string Number(double value, string format) => Local(value.ToString(format, CultureInfo.InvariantCulture));

    /// <summary>A chance from 0 to 1 in percent, never shown as certain.</summary>
    public static string Percent(double chance) =>
        Math.Clamp(Math.Round(chance * 100), 1, 99).ToString("0", CultureInfo.InvariantCulture);

    /// <summary>The lake's clock for an instant.</summary>
    public DateTimeOffset AtLake(DateTimeOffset at) => TimeZoneInfo.ConvertTime(at, Zone);

    /// <summary>The lake's clock for an instant, to the minute, as it stands in a field.</summary>
    public DateTime FieldTime(DateTimeOffset at)
    {
        DateTime local = AtLake(at).DateTime;
        return new DateTime(local.Year, local.Month, local.Day, local.Hour, local.Minute, 0, DateTimeKind.Unspecified);
    }

    /// <summary>The instant of a time in a field; the first of a doubled hour, the next that there is in a left-out one.</summary>
    public DateTimeOffset FromField(DateTime time)
    {
        DateTime local = DateTime.SpecifyKind(time, DateTimeKind.Unspecified);
        while (Zone.IsInvalidTime(local)) local = local.AddMinutes(15);
        return new DateTimeOffset(local, Zone.IsAmbiguousTime(local) ? Zone.GetAmbiguousTimeOffsets(local).Max() : Zone.GetUtcOffset(local));
    }

    /// <summary>A date such as <c>10 Oct</c> or <c>Oct 10</c>.</summary>
    public string Date(DateOnly date) => Locale.DayFirst
        ? $"{date.Day} {Locale.Months[date.Month - 1].TrimEnd('.')}"
        : $"{Locale.Months[date.Month - 1].TrimEnd('.')} {date.Day}";

    /// <summary>A date with its weekday, such as <c>Fri 10 Oct</c>.</summary>
    public string WeekdayDate(DateTimeOffset at) => WeekdayDate(DateOnly.FromDateTime(AtLake(at).DateTime));

    /// <summary>A date with its weekday, such as <c>Fri 10 Oct</c>.</summary>
    public string WeekdayDate(DateOnly date) => $"{Locale.Weekdays[(int)date.DayOfWeek].TrimEnd('.')} {Date(date)}";

    /// <summary>The weekday's long name.</summary>
    public string Weekday(DateTimeOffset at) => Locale.LongWeekdays[(int)AtLake(at).DayOfWeek];

    /// <summary>A time of day at the lake, such as <c>7:40 pm</c>, <c>7 pm</c> on the hour, or <c>19:40</c>.</summary>
    public string Time(DateTimeOffset at)
    {
        (string clock, string half) = TimeParts(at);
        return half.Length == 0 ? clock : $"{(clock.EndsWith(":00", StringComparison.Ordinal) ? clock[..^3] : clock)} {half}";
    }

    /// <summary>A time of day as the clock's digits and the half of the day, empty on a 24 hour clock.</summary>
    public (string Clock, string Half) TimeParts(DateTimeOffset at)
    {
        DateTimeOffset local = AtLake(at);
        if (!Locale.Hour12) return (local.ToString("H:mm", CultureInfo.InvariantCulture), "");
        int hour = local.Hour % 12 == 0 ? 12 : local.Hour % 12;
        return (string.Create(CultureInfo.InvariantCulture, $"{hour}:{local.Minute:00}"), (local.Hour < 12 ? Locale.Am : Locale.Pm).ToLowerInvariant());
    }

    /// <summary>An hour for an axis: <c>5 am</c>, <c>6</c>, or <c>17</c>.</summary>
    public string Hour(DateTimeOffset at, bool withHalf)
    {
        DateTimeOffset local = AtLake(at);
        if (!Locale.Hour12) return local.Hour.ToString(CultureInfo.InvariantCulture);
        int hour = local.Hour % 12 == 0 ? 12 : local.Hour % 12;
        return withHalf ? $"{hour} {(local.Hour < 12 ? Locale.Am : Locale.Pm).ToLowerInvariant()}" : hour.ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>A compass point in words, such as <c>northeast</c>.</summary>
    public string Point(double bearingDeg) => Text["point." + Points[(int)Math.Round(bearingDeg / 45.0) % 8]];

    /// <summary>Half a spread's width in words fit for a screen reader: <c>between 24 and 31 feet</c>.</summary>
    public string SpokenDepths(Spread depthM) => Text[Units.IsMetric ? "spoken.depth.m" : "spoken.depth.ft",
        DepthFine(depthM.P50), DepthNumber(depthM.P10), DepthNumber(depthM.P90)];

    private string Local(string number) => Locale.Decimal == "." ? number : number.Replace(".", Locale.Decimal, StringComparison.Ordinal);
}
