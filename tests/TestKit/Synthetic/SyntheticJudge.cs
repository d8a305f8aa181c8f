using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Surveys;

namespace SecondShore.TestKit.Synthetic;

/// <summary>What came of a survey file.</summary>
public enum SurveyOutcome
{
    /// <summary>Read rightly at once.</summary>
    Right,

    /// <summary>Asked, and the right reading was among the choices.</summary>
    Asked,

    /// <summary>Asked, and no choice led to the right reading.</summary>
    AskedInVain,

    /// <summary>Refused.</summary>
    Refused,

    /// <summary>Read wrongly without a question.</summary>
    WrongInSilence,
}

/// <summary>Answers the questions of a synthetic survey as somebody would who knows the lake, and judges what comes of it.</summary>
public static class SyntheticJudge
{
    private const int MostQuestions = 5;

    /// <summary>What came of a file, with the questions asked.</summary>
    public static (SurveyOutcome Outcome, IReadOnlyList<SurveyQuestionKind> Asked) Judge(SyntheticFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        SurveyOptions options = new();
        SurveyContext context = SurveyContext.Nothing;
        List<SurveyQuestionKind> asked = [];
        while (true)
        {
            SurveyImport import = file.Read(options, context);
            if (import.Survey is Survey survey)
            {
                bool right = IsRight(file.Lake, survey);
                return (asked.Count == 0 ? right ? SurveyOutcome.Right : SurveyOutcome.WrongInSilence : right ? SurveyOutcome.Asked : SurveyOutcome.AskedInVain, asked);
            }

            if (import.Question is not SurveyQuestion question) return (asked.Count == 0 ? SurveyOutcome.Refused : SurveyOutcome.AskedInVain, asked);
            asked.Add(question.Kind);
            if (asked.Count > MostQuestions || Answer(file, question) is not SurveyOptions answer) return (SurveyOutcome.AskedInVain, asked);
            options = answer.Over(options);
        }
    }

    // The level of the water is a number that the user types; everything else must be among the choices.
    private static SurveyOptions? Answer(SyntheticFile file, SurveyQuestion question) => question.Kind switch
    {
        SurveyQuestionKind.Level => new SurveyOptions { SurfaceElevationM = file.Lake.SurfaceM },
        SurveyQuestionKind.Crs => Nearest(file, question),
        SurveyQuestionKind.Whereabouts => Nearest(file, question),
        SurveyQuestionKind.Place => Choice(question, o => o.XColumn is string x && Is(file, x, file.PlaceNumbers.X) && o.YColumn is string y && Is(file, y, file.PlaceNumbers.Y)),
        SurveyQuestionKind.Depth => Choice(question, o => o.DepthColumn is string z && Is(file, z, file.DepthNumber)),
        SurveyQuestionKind.Angles => Choice(question, o => o.Angles == (file.Written == SyntheticPlaces.Minutes ? AngleForm.DegreeMinutes : AngleForm.Plain)),
        SurveyQuestionKind.Meaning => Choice(question, o => o.Sense == file.Lake.Sense && o.Unit == file.Lake.Unit),
        _ => Choice(question, o => o.UseRest == true),
    };

    private static SurveyOptions? Choice(SurveyQuestion question, Func<SurveyOptions, bool> fits) => question.Choices.FirstOrDefault(c => fits(c.Set))?.Set;

    private static bool Is(SyntheticFile file, string column, int number) =>
        column == number.ToString(System.Globalization.CultureInfo.InvariantCulture) || (column == file.DepthColumn && number == file.DepthNumber)
        || Header(file, number) is string name && string.Equals(name, column, StringComparison.OrdinalIgnoreCase);

    private static string? Header(SyntheticFile file, int number)
    {
        string first = file.Text[..file.Text.IndexOf('\n', StringComparison.Ordinal)];
        string[] cells = first.Split([';', ',', '\t']);
        return number <= cells.Length ? cells[number - 1] : null;
    }

    private static SurveyOptions? Nearest(SyntheticFile file, SurveyQuestion question) => question.Choices
        .Where(c => c.Place is GeoPoint place && Away(file.Lake.Middle, place) < 8000)
        .MinBy(c => Away(file.Lake.Middle, c.Place!.Value))?.Set;

    private static double Away(GeoPoint from, GeoPoint to) => Math.Abs(from.LatDeg - to.LatDeg) > 1 || Math.Abs(GeoPoint.WrapLongitudeDeg(from.LonDeg - to.LonDeg)) > 2
        ? double.PositiveInfinity : new LocalProjection(from).ToPlane(to.LatDeg, to.LonDeg).DistanceToM(default);

    /// <summary>Whether soundings lie where they were taken and are as deep: to 150 m, and to a twentieth of the lake's depth.</summary>
    public static bool IsRight(SyntheticLake lake, Survey survey)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(survey);
        List<double> misfits = [];
        int far = 0, all = 0;
        double minLat = lake.Places.Min(p => p.LatDeg), maxLat = lake.Places.Max(p => p.LatDeg), minLon = lake.Places.Min(p => p.LonDeg), maxLon = lake.Places.Max(p => p.LonDeg);
        foreach (SoundingSet set in survey.Soundings)
        {
            for (int i = 0; i < set.DepthM.Length; i++, all++)
            {
                GeoPoint at = new(set.LatDeg[i], set.LonDeg[i]);
                if (at.LatDeg < minLat - 0.0015 || at.LatDeg > maxLat + 0.0015 || at.LonDeg < minLon - 0.003 || at.LonDeg > maxLon + 0.003) far++;
                else misfits.Add(Math.Abs(set.DepthM[i] - lake.DepthM(at)));
            }
        }

        if (all < lake.Places.Count * 0.85 || far > 0) return false;
        misfits.Sort();
        return misfits[misfits.Count * 9 / 10] < 0.02 + (0.09 * lake.DeepestM);
    }
}
