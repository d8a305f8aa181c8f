using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using SecondShore.Engine.Core.Findings;
using SecondShore.Engine.Core.Words;

namespace SecondShore.Words;

/// <summary>Every sentence that the engine, the readers of files and the answers have for people, by language.</summary>
public static partial class Sentences
{
    private static readonly ConcurrentDictionary<string, IReadOnlyDictionary<string, string>> Books = new(StringComparer.Ordinal);
    private static readonly ConcurrentDictionary<(string Language, string Key), string> Forms = new();

    private static readonly Lazy<Speech> German = new(() => Speech.Of("de", SaidIn("de"), ",",
        calendar: new SpokenCalendar(["Jan.", "Feb.", "März", "Apr.", "Mai", "Juni", "Juli", "Aug.", "Sept.", "Okt.", "Nov.", "Dez."],
            ["Januar", "Februar", "März", "April", "Mai", "Juni", "Juli", "August", "September", "Oktober", "November", "Dezember"],
            ["Sonntag", "Montag", "Dienstag", "Mittwoch", "Donnerstag", "Freitag", "Samstag"])));

    /// <summary>Languages that everything is said in, by two letters.</summary>
    public static IReadOnlyList<string> Languages { get; } = ["en", "de"];

    /// <summary>A language; English where there is none of those letters.</summary>
    public static Speech SpeechFor(string language) => language == "de" ? German.Value : Speech.English;

    /// <summary>Sentences of another language by their English forms.</summary>
    public static IReadOnlyDictionary<string, string> SaidIn(string language) => Book($"said.{language}");

    /// <summary>Sentences of findings by their kind's key, with named places; a key with <c>@app</c> or <c>@terminal</c> is said there alone.</summary>
    public static IReadOnlyDictionary<string, string> FoundIn(string language) => Book($"findings.{language}");

    // The sentence with its places numbered in the order of the kind's values.
    internal static string FormOf(FindingKind kind, Speech speech, ReadIn place)
    {
        if (kind.IsForm) return speech.Form(kind.Key);
        IReadOnlyDictionary<string, string> book = FoundIn(speech.Language);
        string placed = kind.Key + (place == ReadIn.App ? "@app" : "@terminal");
        string key = book.ContainsKey(placed) ? placed : kind.Key;
        return Forms.GetOrAdd((speech.Language, key), _ => Numbered(book.TryGetValue(key, out string? sentence)
            ? sentence
            : throw new InvalidOperationException($"No sentence in '{speech.Language}' for the finding '{kind.Key}'."), kind));
    }

    private static string Numbered(string sentence, FindingKind kind) => Place().Replace(sentence, match =>
    {
        int index = kind.Places.ToList().IndexOf(match.Groups[1].Value);
        if (index < 0) throw new InvalidOperationException($"The finding '{kind.Key}' has no value called '{match.Groups[1].Value}'.");
        return "{" + index.ToString(CultureInfo.InvariantCulture);
    });

    private static IReadOnlyDictionary<string, string> Book(string name) => Books.GetOrAdd(name, Load);

    private static Dictionary<string, string> Load(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"Text.{name}")
            ?? throw new InvalidOperationException($"The sentences '{name}' are not in the program.");
        using JsonDocument document = JsonDocument.Parse(stream);
        Dictionary<string, string> texts = new(StringComparer.Ordinal);
        foreach (JsonProperty text in document.RootElement.EnumerateObject()) texts.Add(text.Name, text.Value.GetString() ?? "");
        return texts;
    }

    [GeneratedRegex(@"\{([a-z][A-Za-z0-9]*)")]
    private static partial Regex Place();
}
