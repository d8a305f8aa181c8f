using System.CommandLine;

namespace SecondShore.Cli.Verbs;

/// <summary>Every verb, in the order a newcomer meets them.</summary>
internal static class VerbList
{
    public static IEnumerable<Command> All(Surroundings surroundings)
    {
        ArgumentNullException.ThrowIfNull(surroundings);
        yield return DemoVerb.Make(surroundings);
        yield return LakeVerb.Make(surroundings);
        yield return SurveyVerb.Make(surroundings);
        yield return CheckVerb.Make(surroundings);
        yield return WeatherVerb.Make(surroundings);
        yield return DoctorVerb.Make(surroundings);
        yield return OutlookVerb.Make(surroundings);
        yield return ShoreVerb.Make(surroundings);
        yield return WindVerb.Make(surroundings);
        yield return DayVerb.Make(surroundings);
        yield return LearnVerb.Make(surroundings);
        yield return ScoreVerb.Make(surroundings);
        yield return ScoreWindVerb.Make(surroundings);
        yield return RigVerb.Make(surroundings);
    }
}
