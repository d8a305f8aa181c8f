namespace SecondShore.Formats.Lake;

/// <summary>How clear a water is, in an angler's word.</summary>
public enum WaterClarity
{
    /// <summary>The bottom shows where it is deep.</summary>
    Clear,

    /// <summary>Tea or green: a lure is lost to sight within a few feet.</summary>
    Stained,

    /// <summary>Brown: a lure is lost to sight at once.</summary>
    Muddy,
}

/// <summary>What the words stand for. The depths are the project's own choice, a halving or more from word to word, and wide.</summary>
public static class WaterClarities
{
    /// <summary>Standard error of the logarithm of a Secchi depth taken from a word: two thirds to one and a half times it.</summary>
    public const double LogSd = 0.45;

    /// <summary>The Secchi depth a word stands for, m.</summary>
    public static double SecchiM(WaterClarity clarity) =>
        clarity switch { WaterClarity.Clear => 4.0, WaterClarity.Stained => 1.5, _ => 0.5 };

    /// <summary>A clarity as it is written in lake.json.</summary>
    public static string WordOf(WaterClarity clarity) =>
        clarity switch { WaterClarity.Clear => "clear", WaterClarity.Stained => "stained", _ => "muddy" };

    /// <summary>The clarity of a word; null where it is none.</summary>
    public static WaterClarity? Of(string word) => word?.Trim().ToLowerInvariant() switch
    {
        "clear" => WaterClarity.Clear,
        "stained" => WaterClarity.Stained,
        "muddy" => WaterClarity.Muddy,
        _ => null,
    };
}
