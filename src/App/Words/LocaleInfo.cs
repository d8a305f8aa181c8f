namespace SecondShore.App.Words;

/// <summary>How the user's browser writes dates and numbers.</summary>
public sealed record LocaleInfo
{
    /// <summary>Language tag such as <c>de-AT</c>.</summary>
    public string Language { get; init; } = "en";

    /// <summary>Decimal sign.</summary>
    public string Decimal { get; init; } = ".";

    /// <summary>Whether hours run to 12.</summary>
    public bool Hour12 { get; init; } = true;

    /// <summary>Sign of the morning.</summary>
    public string Am { get; init; } = "AM";

    /// <summary>Sign of the afternoon.</summary>
    public string Pm { get; init; } = "PM";

    /// <summary>Whether the day stands before the month.</summary>
    public bool DayFirst { get; init; }

    /// <summary>Short names of the months, January first.</summary>
    public IReadOnlyList<string> Months { get; init; } = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

    /// <summary>Short names of the days, Sunday first.</summary>
    public IReadOnlyList<string> Weekdays { get; init; } = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];

    /// <summary>Long names of the days, Sunday first.</summary>
    public IReadOnlyList<string> LongWeekdays { get; init; } = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];
}
