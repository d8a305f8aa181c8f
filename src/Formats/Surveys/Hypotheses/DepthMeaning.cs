using SecondShore.Engine.Core.Units;

namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>One reading of what the filed values are.</summary>
/// <param name="Sense">Depths or heights.</param>
/// <param name="Unit">Their unit.</param>
/// <param name="Weight">Log-odds.</param>
internal sealed record DepthMeaning(DepthSense Sense, DepthUnit Unit, double Weight);

/// <summary>Where and how large the survey is, as far as it bears on what its values mean.</summary>
/// <param name="Country">Country; empty at sea, null when not known.</param>
/// <param name="LengthM">Diagonal of the box of its places, m; NaN when not known.</param>
/// <param name="PlaneUnitM">Metres per unit of its plane; 1 for degrees.</param>
/// <param name="IsPlane">Whether its positions are lengths.</param>
internal readonly record struct SurveySetting(string? Country, double LengthM, double PlaneUnitM, bool IsPlane);

/// <summary>Weighs what the filed values of a survey are: depths or heights, in which unit.</summary>
/// <remarks>Log-odds; each weight is stated and reasoned in docs/decisions/0023.</remarks>
internal sealed class DepthMeanings(RawSurvey raw, ValueFacts values, SurveyOptions options, SurveyContext context, SurveySetting setting)
{
    private static readonly DepthUnit[] Units = [DepthUnit.Metres, DepthUnit.Feet, DepthUnit.Centimetres, DepthUnit.Fathoms, DepthUnit.Millimetres, DepthUnit.Decimetres];
    // Some thirty lakes of the world are deeper.
    private const double VeryDeepM = 300;

    private static readonly DepthSense[] Senses = [DepthSense.Depth, DepthSense.NegativeDepth, DepthSense.Elevation];

    /// <summary>Metres per unit.</summary>
    public static double MetresPer(DepthUnit unit) => unit switch
    {
        DepthUnit.Feet => Length.MetresPerFoot,
        DepthUnit.Fathoms => 1.8288,
        DepthUnit.Decimetres => 0.1,
        DepthUnit.Centimetres => 0.01,
        DepthUnit.Millimetres => 0.001,
        _ => 1,
    };

    /// <summary>All readings, likeliest first; what the user set leaves only what agrees with it.</summary>
    public List<DepthMeaning> Weigh()
    {
        List<DepthMeaning> all = [];
        foreach (DepthSense sense in Senses)
        {
            if (options.Sense is DepthSense set && set != sense) continue;
            foreach (DepthUnit unit in Units)
            {
                if (options.Unit is DepthUnit chosen && chosen != unit) continue;
                all.Add(new DepthMeaning(sense, unit, OfSense(sense) + OfUnit(unit) + Fit(sense, unit)));
            }
        }

        return [.. all.OrderByDescending(m => m.Weight)];
    }

    /// <summary>Log-odds that a lake is as deep as a reading says, for its size; below -6 it is none.</summary>
    public double Plausible(DepthSense sense, DepthUnit unit)
    {
        double deepM = DeepestM(sense) * MetresPer(unit);
        if (context.MaxDepthM is double told && Math.Abs((deepM / told) - 1) < 0.3) return 0;
        double weight = deepM > 1000 ? -6 : deepM > 350 ? -2 : deepM < 0.15 ? -4 : deepM < 0.5 ? -2 : 0;
        if (!(setting.LengthM > 0)) return weight;
        double steep = (deepM - 2) / setting.LengthM;
        return weight + (steep > 0.5 ? -8 : steep > 0.25 ? -3.5 : steep > 0.15 ? -1 : 0);
    }

    private double DeepestM(DepthSense sense) => sense switch
    {
        DepthSense.Depth => values.High1,
        DepthSense.NegativeDepth => -values.Low1,
        _ => values.High1 - values.Low1,
    };

    private double OfSense(DepthSense sense)
    {
        double negative = values.ShareNegative, weight;
        bool stated = raw.Sense is not null && raw.SenseKnown == Knowledge.Stated;
        if (negative > 0.95)
        {
            // Depths written with a minus are the custom; a bed below sea level is rare, and as a height it means the same where the lake lies at the sea.
            return sense switch { DepthSense.NegativeDepth => 6, DepthSense.Elevation => stated && raw.Sense == DepthSense.Elevation ? 4.5 : 0, _ => -9 };
        }

        if (stated) return sense == raw.Sense ? (sense == DepthSense.Depth && negative > 0.4 || IsBelied() ? 2 : 7) : sense == DepthSense.NegativeDepth && negative < 0.05 ? -9 : 0;
        bool namesDepth = Named(ColumnRole.Depth), namesHeight = Named(ColumnRole.Height);
        weight = sense switch
        {
            DepthSense.Depth => (namesDepth ? 4 : 0) + (values.Low1 < 0.12 * values.High1 ? 1 : values.Low1 > 0.35 * values.High1 ? -1 : 0),
            DepthSense.Elevation => -1.5 + (namesHeight ? 4 : 0) + (LetterHeight() ? 2 : 0) + HighAndNarrow() + AroundPool(),
            _ => negative < 0.05 ? -9 : 0,
        };
        // Depths grow towards the middle of a lake, heights fall.
        if (!double.IsNaN(values.Inward) && Math.Abs(values.Inward) > 0.2)
            weight += (sense == DepthSense.Depth ? 3.5 : -3.5) * Math.Clamp(values.Inward, -0.7, 0.7);
        if (negative is > 0.05 and < 0.95) weight -= sense == DepthSense.Depth ? 3 : 0;
        return weight;
    }

    // A column called depth whose values stand like a bed above the sea; one called elevation whose values start at nothing and grow inward.
    private bool IsBelied() => raw.Sense == DepthSense.Depth ? HighAndNarrow() > 4 && !(values.Inward > 0.2)
        : raw.Sense == DepthSense.Elevation && values.Low1 >= 0 && values.Low1 < 0.12 * values.High1 && values.Inward > 0.3;

    /// <summary>Whether depths have a minus in so many rows, and such large ones, that it is no land above the water.</summary>
    public bool SignsTurn => raw.Points.Count > 0 && values.ShareNegative is > 0.03 and < 0.5 && -values.Low1 > 0.5 * values.High1;

    /// <summary>Whether a reading is deeper than nearly all lakes are, and nothing but a name says so.</summary>
    public bool IsVeryDeep(DepthMeaning reading) => context.MaxDepthM is null && options.Unit is null
        && reading.Sense != DepthSense.Elevation && DeepestM(reading.Sense) * MetresPer(reading.Unit) > VeryDeepM;

    // A box of values far above nothing, as of a lake's bed above the sea.
    private double HighAndNarrow() => values.Low1 > 30 && values.High1 - values.Low1 < values.Low1 ? 5
        : values.Low1 > 3 && values.Low1 > 0.35 * values.High1 ? 1.5 : 0;

    private double AroundPool()
    {
        if ((options.SurfaceElevationM ?? context.FullPoolElevationM) is not double pool) return 0;
        if (options.SurfaceElevationM is not null) return 8;
        return pool > 50 && (Near(pool) || Near(pool / Length.MetresPerFoot)) ? 4 : pool > 50 ? -2 : 0;

        bool Near(double at) => values.Low > at * 0.5 && values.High > at - 5 && values.Low < at;
    }

    /// <summary>Whether a word or a letter of the file says heights.</summary>
    public bool HintsHeight => Named(ColumnRole.Height) || LetterHeight();

    private bool LetterHeight() => HeaderWords.Split(raw.Words).Exists(w => w is "h" or "alt");

    private bool Named(ColumnRole role) => HeaderWords.Split(raw.Words).Any(w => WordList.RoleOf(w) is var (found, surely) && found == role && surely > 3);

    private double OfUnit(DepthUnit unit)
    {
        if (raw.Unit is DepthUnit stated) return unit == stated ? 7 : unit is DepthUnit.Metres or DepthUnit.Feet ? 0 : -2;
        double weight = unit switch { DepthUnit.Metres => 0, DepthUnit.Feet => OfFeet(), DepthUnit.Centimetres => -4, DepthUnit.Fathoms => -6, _ => -7 };
        if (values.WholeFeet && values.Count >= 10 && unit == DepthUnit.Metres) weight += 5;
        if (!values.AllWhole) return weight;
        bool many = values.Count >= 10;
        return weight + (unit switch
        {
            DepthUnit.Feet when many && values.High >= 6 => 1,
            DepthUnit.Centimetres when many && Math.Max(values.High, -values.Low) > 100 => 3,
            DepthUnit.Millimetres when many && Math.Max(values.High, -values.Low) > 1000 => 4,
            _ => 0,
        });
    }

    private double OfFeet()
    {
        double weight = setting.Country switch
        {
            null => -2.5,
            "United States of America" or "Puerto Rico" or "Liberia" or "Bahamas" => 0,
            "Canada" => -3,
            "United Kingdom" => -3.2,
            _ => -4.2,
        };
        if (setting.IsPlane) weight += setting.PlaneUnitM < 0.5 ? 2 : -0.7;
        return weight;
    }

    private double Fit(DepthSense sense, DepthUnit unit)
    {
        double weight = Plausible(sense, unit), metres = MetresPer(unit);
        if (context.MaxDepthM is double deepest && sense != DepthSense.Elevation)
        {
            double all = sense == DepthSense.NegativeDepth ? -values.Low : values.High;
            weight += Math.Abs((all * metres / deepest) - 1) < 0.25 ? 4 : -1;
        }

        if (sense != DepthSense.Elevation || (options.SurfaceElevationM ?? context.FullPoolElevationM) is not double pool) return weight;
        double low = values.Low1 * metres, high = values.High1 * metres;
        return weight + (pool > low && pool < high + Math.Max(5, 0.5 * (high - low)) ? 3.5 : -4);
    }
}
