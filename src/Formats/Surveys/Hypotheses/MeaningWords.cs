using System.Globalization;

namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>What the values of a survey are taken for, in words: told in a line, or asked.</summary>
internal static class MeaningWords
{
    /// <summary>Log-odds by which a reading may fall behind the first and still be shown as a choice.</summary>
    public const double Shown = 6.5;

    public static SurveyQuestion Ask(string file, ValueFacts values, IReadOnlyList<DepthMeaning> readings) => new(file, SurveyQuestionKind.Meaning,
        $"The file does not say what its values ({values.Low:G6} to {values.High:G6}) are: depths or heights, and in which unit?",
        [.. readings.Select(r => new SurveyChoice(new SurveyOptions { Sense = r.Sense, Unit = r.Unit }, Choice(values, r)))], "sense");

    /// <summary>A reading in a few words.</summary>
    public static Finding Of(DepthMeaning reading) => Finding.Of($"{Sense(reading.Sense)} in {Unit(reading.Unit)}");

    public static void Tell(List<Finding> doubts, ValueFacts values, DepthMeaning best, Knowledge sense, Knowledge unit)
    {
        string range = string.Create(CultureInfo.InvariantCulture, $"{values.Low:G6} to {values.High:G6}");
        if (best.Sense == DepthSense.NegativeDepth && sense is Knowledge.Found)
            doubts.Add($"Nearly all values are negative ({range}): taken as heights against the water surface, negative under water. Set sense if they are something else.");
        else if (best.Sense == DepthSense.Elevation && sense is Knowledge.Found)
            doubts.Add($"Values run from {range}: taken as elevations above sea level, not depths. Set sense if they are depths.");
        else if (best.Sense == DepthSense.Depth && values.ShareNegative > 0.02 && sense != Knowledge.Set)
            doubts.Add($"{values.ShareNegative:P0} of the values are negative; the positive ones are taken as depths. Set sense to be sure.");
        if (unit is Knowledge.Assumed or Knowledge.Found)
            doubts.Add($"The file names no unit; its values ({range}) are taken as {Unit(best.Unit)}. Set unit if they are in another.");
    }

    /// <summary>A unit in words.</summary>
    public static Finding Unit(DepthUnit unit) => Finding.Of(unit switch
    {
        DepthUnit.Feet => "feet",
        DepthUnit.Fathoms => "fathoms",
        DepthUnit.Decimetres => "decimetres",
        DepthUnit.Centimetres => "centimetres",
        DepthUnit.Millimetres => "millimetres",
        _ => "metres",
    });

    private static Finding Sense(DepthSense sense) => Finding.Of(sense switch
    {
        DepthSense.NegativeDepth => "heights against the water surface",
        DepthSense.Elevation => "heights above sea level",
        _ => "depths",
    });

    private static FindingForm Choice(ValueFacts values, DepthMeaning r)
    {
        double metres = DepthMeanings.MetresPer(r.Unit);
        Finding deep = r.Sense switch
        {
            DepthSense.Elevation => Finding.Of($"bed between {values.Low * metres:0.##} and {values.High * metres:0.##} m above the sea"),
            DepthSense.NegativeDepth => Finding.Of($"deepest {-values.Low * metres:0.##} m"),
            _ => Finding.Of($"deepest {values.High * metres:0.##} m"),
        };
        return $"{Of(r)}: {deep}";
    }
}
