using System.Globalization;
using System.Reflection;
using System.Text.Json;

namespace SecondShore.App.Words;

/// <summary>The app's sentences in one language, by key. A key without a translation falls back to English.</summary>
public sealed class TextBook
{
    /// <summary>Languages there are texts for.</summary>
    public static IReadOnlyList<string> Languages { get; } = ["en", "de"];

    private readonly Dictionary<string, string> _own;
    private readonly Dictionary<string, string> _english;

    private TextBook(string language)
    {
        Language = language;
        _english = Load("en");
        _own = language == "en" ? _english : Load(language);
    }

    /// <summary>The language's two letters.</summary>
    public string Language { get; }

    /// <summary>Keys of this language's own texts.</summary>
    public IReadOnlyCollection<string> Keys => _own.Keys;

    /// <summary>The texts for a browser's language tag such as <c>de-AT</c>; English where there are none.</summary>
    public static TextBook For(string languageTag)
    {
        string two = languageTag.Length >= 2 ? languageTag[..2].ToLowerInvariant() : "en";
        return new TextBook(Languages.Contains(two) ? two : "en");
    }

    /// <summary>The sentence for a key; the key itself where no language has one, so that a gap is seen and not blank.</summary>
    public string this[string key] => _own.GetValueOrDefault(key) ?? _english.GetValueOrDefault(key) ?? key;

    /// <summary>The sentence for a key with <c>{0}</c>, <c>{1}</c>... filled in.</summary>
    public string this[string key, params object?[] values] => string.Format(CultureInfo.InvariantCulture, this[key], values);

    private static Dictionary<string, string> Load(string language)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"Text.{language}")
            ?? throw new InvalidOperationException($"The texts for '{language}' are not in the app.");
        using JsonDocument document = JsonDocument.Parse(stream);
        Dictionary<string, string> texts = new(StringComparer.Ordinal);
        foreach (JsonProperty text in document.RootElement.EnumerateObject()) texts[text.Name] = text.Value.GetString() ?? "";
        return texts;
    }
}
