namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>The language of a file's words, and in which countries it is used: evidence for where its lake lies.</summary>
internal static class Tongue
{
    private static readonly string[] German = ["Germany", "Austria", "Switzerland", "Liechtenstein", "Luxembourg", "Italy", "Belgium", "Poland", "Czechia", "Denmark", "France", "Slovenia", "Hungary"];
    private static readonly string[] Polish = ["Poland", "Germany", "Czechia", "Slovakia", "Lithuania", "Belarus", "Ukraine", "Russia"];
    private static readonly string[] Nordic = ["Sweden", "Norway", "Denmark", "Finland", "Iceland", "Greenland", "Faroe Islands", "Åland", "Aland", "Germany"];
    private static readonly string[] Finnish = ["Finland", "Sweden", "Norway", "Russia", "Estonia"];
    private static readonly string[] Dutch = ["Netherlands", "Belgium", "Germany", "Suriname", "France"];
    private static readonly string[] Czech = ["Czechia", "Slovakia", "Poland", "Germany", "Austria"];

    private static readonly Dictionary<string, string[]> Words = new (string[] Used, string[] Words)[]
    {
        (German, ["tiefe", "wassertiefe", "seetiefe", "breite", "laenge", "rechtswert", "hochwert", "hoehe", "breitengrad"]),
        (Polish, ["glebokosc", "szerokosc", "dlugosc", "rzedna"]),
        (Nordic, ["djup", "vattendjup", "dybde", "dybd", "bredde", "lengde"]),
        (Finnish, ["syvyys", "leveysaste", "pituusaste"]),
        (Dutch, ["diepte", "waterdiepte"]),
        (Czech, ["hloubka"]),
    }.SelectMany(t => t.Words.Select(w => (w, t.Used))).ToDictionary(StringComparer.Ordinal);

    /// <summary>Whether a file's words are of a language that is not used in a country; false where nothing is known.</summary>
    public static bool IsForeign(string words, string country) =>
        country.Length > 0 && HeaderWords.Split(words).Exists(w => Words.TryGetValue(w, out string[]? used) && !used.Contains(country));

    /// <summary>Whether a file's words are of a language that is used in a country.</summary>
    public static bool IsAtHome(string words, string country) =>
        HeaderWords.Split(words).Exists(w => Words.TryGetValue(w, out string[]? used) && used.Contains(country));

    /// <summary>Whether feet are in daily use.</summary>
    public static bool UsesFeet(string country) => country is "United States of America" or "Canada" or "United Kingdom" or "Ireland" or "Puerto Rico" or "Liberia" or "Bahamas"
        or "The Bahamas" or "Jamaica" or "India" or "New Zealand" or "Australia" or "South Africa" or "Belize" or "Guyana" or "Philippines";
}
