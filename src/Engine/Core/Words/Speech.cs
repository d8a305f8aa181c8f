using System.Globalization;

namespace SecondShore.Engine.Core.Words;

/// <summary>Names of months, January first, and of days, Sunday first.</summary>
public sealed record SpokenCalendar(IReadOnlyList<string> ShortMonths, IReadOnlyList<string> Months, IReadOnlyList<string> Days);

/// <summary>The language that sentences are said in. English stands in the code; another language has a table of its sentences by the English ones.</summary>
/// <remarks>
/// A sentence is told as its form and its values, never ready made: the form, with <c>{0}</c> where the values go, is what the
/// table is asked for. A sentence that the table lacks is said in English, and can be listened for. Decision 0076.
/// </remarks>
public sealed class Speech
{
    private readonly IReadOnlyDictionary<string, string> _sentences;
    private readonly Action<string>? _missing;

    private Speech(string language, IReadOnlyDictionary<string, string> sentences, string decimalSign, Action<string>? missing, SpokenCalendar? calendar)
    {
        Language = language;
        _sentences = sentences;
        _missing = missing;
        CultureInfo culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = decimalSign;
        if (calendar is not null)
        {
            // Twelve months and the thirteenth that some calendars have.
            string[] shortly = [.. calendar.ShortMonths, ""], months = [.. calendar.Months, ""];
            DateTimeFormatInfo dates = culture.DateTimeFormat;
            (dates.AbbreviatedMonthNames, dates.AbbreviatedMonthGenitiveNames) = (shortly, shortly);
            (dates.MonthNames, dates.MonthGenitiveNames, dates.DayNames) = (months, months, [.. calendar.Days]);
        }

        Culture = CultureInfo.ReadOnly(culture);
    }

    /// <summary>English.</summary>
    public static Speech English { get; } = new("en", new Dictionary<string, string>(), ".", null, null);

    /// <summary>Two letters of the language.</summary>
    public string Language { get; }

    /// <summary>How it writes numbers and short names of months.</summary>
    public CultureInfo Culture { get; }

    /// <summary>Another language.</summary>
    /// <param name="language">Its two letters.</param>
    /// <param name="sentences">Its sentences by the English forms.</param>
    /// <param name="decimalSign">What stands between a number's whole and its parts.</param>
    /// <param name="missing">Told of each form that the table lacks.</param>
    /// <param name="calendar">Names of months and days; null takes English ones.</param>
    public static Speech Of(string language, IReadOnlyDictionary<string, string> sentences, string decimalSign, Action<string>? missing = null,
        SpokenCalendar? calendar = null) =>
        new(Require.NotNull(language), Require.NotNull(sentences), Require.NotNull(decimalSign), missing, calendar);

    /// <summary>A sentence or a part of one.</summary>
    /// <param name="sentence">Its English form with its values; values that are words have been said already.</param>
    public string Say(SpokenForm sentence) => string.Format(Culture, Form(sentence.Form), sentence.Values);

    /// <summary>A word or a sentence without values.</summary>
    public string Plain(string english) => Form(english);

    /// <summary>A number, written as the language does.</summary>
    public string Number(double value, string format) => value.ToString(format, Culture);

    /// <summary>A time of day such as <c>2:40 pm</c> or <c>14:40</c>, in the offset the instant carries.</summary>
    public string Clock(DateTimeOffset at) => Language == "en"
        ? at.ToString("h:mm tt", CultureInfo.InvariantCulture).Replace("AM", "am", StringComparison.Ordinal).Replace("PM", "pm", StringComparison.Ordinal)
        : at.ToString("H:mm", CultureInfo.InvariantCulture);

    /// <summary>Names in a row: <c>A, B and C</c>.</summary>
    public string Join(IReadOnlyList<string> names)
    {
        Require.NotNull(names);
        if (names.Count < 2) return names.Count == 0 ? "" : names[0];
        string first = string.Join(", ", names.Take(names.Count - 1));
        return Say($"{first} and {names[^1]}");
    }

    /// <summary>The form of a sentence in this language; the English one where the table lacks it.</summary>
    public string Form(string english)
    {
        if (Language == "en") return english;
        if (_sentences.TryGetValue(english, out string? said)) return said;
        _missing?.Invoke(english);
        return english;
    }
}
