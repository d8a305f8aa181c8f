using System.Text.Json;
using SecondShore.TestKit;

namespace SecondShore.Browser.Tests;

/// <summary>The app's own words, by their key.</summary>
internal static class Said
{
    private static readonly Dictionary<string, Dictionary<string, string>> Books = [];

    /// <summary>A text of the app in the language of a locale such as de-DE.</summary>
    public static string In(string locale, string key, params object[] parts)
    {
        string language = locale[..2];
        lock (Books)
        {
            if (!Books.TryGetValue(language, out Dictionary<string, string>? book))
                Books[language] = book = JsonSerializer.Deserialize<Dictionary<string, string>>(File.ReadAllText(Path.Combine(SharedData.RepositoryRoot, "src", "App", "Text", language + ".json")))!;
            return string.Format(System.Globalization.CultureInfo.GetCultureInfo(locale), book[key], parts);
        }
    }
}
