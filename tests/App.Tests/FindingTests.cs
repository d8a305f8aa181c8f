using System.Reflection;
using System.Text.RegularExpressions;
using SecondShore.Answers;
using SecondShore.Desk;
using SecondShore.Engine.Core.Words;

namespace SecondShore.App.Tests;

/// <summary>Every finding can be said: each kind in each language, with each of its values, and never in another place's terms.</summary>
public partial class FindingTests
{
    private static readonly IReadOnlyList<FindingKind> Kinds =
    [
        .. new[] { typeof(Finding).Assembly, typeof(AnswerFindings).Assembly, typeof(LakeDesk).Assembly }
            .SelectMany(a => a.GetTypes()).Where(t => t.Name.EndsWith("Findings", StringComparison.Ordinal))
            .SelectMany(t => t.GetFields(BindingFlags.Public | BindingFlags.Static)).Where(f => f.FieldType == typeof(FindingKind))
            .Select(f => (FindingKind)f.GetValue(null)!),
    ];

    public static TheoryData<string> Languages => [.. Sentences.Languages];

    [Theory]
    [MemberData(nameof(Languages))]
    public void Each_kind_has_a_sentence_that_uses_each_of_its_values(string language)
    {
        IReadOnlyDictionary<string, string> book = Sentences.FoundIn(language);
        Assert.True(Kinds.Count > 100);
        Assert.Equal(Kinds.Count, Kinds.Select(k => k.Key).Distinct().Count());
        foreach (FindingKind kind in Kinds)
        {
            Assert.True(book.TryGetValue(kind.Key, out string? sentence), $"No sentence in '{language}' for {kind.Key}.");
            Assert.Equal(kind.Places.Order(StringComparer.Ordinal), Places(sentence).Order(StringComparer.Ordinal));
        }

        // What one place alone is told may leave a value out, but cannot name one that is not there.
        foreach ((string key, string sentence) in book)
        {
            FindingKind? kind = Kinds.FirstOrDefault(k => k.Key == key.Split('@')[0]);
            Assert.True(kind is not null, $"{key} in '{language}' is said by nobody.");
            Assert.Subset(kind.Places.ToHashSet(), Places(sentence).ToHashSet());
        }
    }

    [Fact]
    public void Languages_tell_the_same_places_apart() =>
        Assert.Equal(Sentences.FoundIn("en").Keys.Order(StringComparer.Ordinal), Sentences.FoundIn("de").Keys.Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Languages))]
    public void The_app_is_never_told_of_an_option_or_a_verb(string language)
    {
        UnitSystem app = UnitSystem.Metric.In(Sentences.SpeechFor(language)).In(ReadIn.App);
        foreach (FindingKind kind in Kinds)
            Assert.DoesNotMatch(@"(^|\s)--[a-z]|secondshore ", kind.Of([.. kind.Places.Select(_ => (Told)0)]).Say(app));
        Assert.Contains("--launch", AnswerFindings.NoTimeToFish.Of(DateTimeOffset.UnixEpoch, DateTimeOffset.UnixEpoch).Say(UnitSystem.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_and_dates_read_as_the_language_writes_them()
    {
        UnitSystem german = UnitSystem.Metric.In(Sentences.SpeechFor("de"));
        DateTimeOffset end = new(2026, 10, 4, 17, 0, 0, TimeSpan.Zero);
        Assert.Equal("Nach dem 4. Okt. folgt jedes Mitglied einem von 12 vergangenen Jahren.", Engine.Season.SeasonFindings.MembersFollow.Of(end, 12).Say(german));
        Assert.Equal("After 4 Oct each member follows one of 12 past years.", Engine.Season.SeasonFindings.MembersFollow.Of(end, 12).Say(UnitSystem.Feet));
        Assert.Equal("Der in 2,5 m gemessene Wind wurde mit dem Faktor 1,20 auf 10 m übertragen.", Engine.Season.SeasonFindings.WindCarried.Of(2.5, 1.2).Say(german));
        Finding tilt = AnswerFindings.HeldDeeper.Of(Told.Source("readings.csv line 3"), Told.Difference(0.4), Told.Difference(8.2), Told.Difference(7.8));
        Assert.Equal("readings.csv line 3: wind held the thermocline about 1.3 ft deeper there than at rest; of the 26.9 ft seen, 25.6 ft count.", tilt.Say(UnitSystem.Feet));
        Assert.StartsWith("readings.csv Zeile 3: Wind hielt die Sprungschicht dort etwa 0,4 m tiefer", tilt.Say(german), StringComparison.Ordinal);
    }

    [Fact]
    public void A_sentence_by_its_form_is_a_finding_that_compares_by_form_and_values()
    {
        Finding one = Finding.Of($"the file has {3} soundings, too few for a lake; three or more are needed."), same = Finding.Of($"the file has {3} soundings, too few for a lake; three or more are needed.");
        Assert.Equal(one, same);
        Assert.NotEqual(one, Finding.Of($"the file has {4} soundings, too few for a lake; three or more are needed."));
        Assert.Equal("the file has 3 soundings, too few for a lake; three or more are needed.", one.Say(UnitSystem.Metric));
        Assert.Equal("die Datei hat 3 Lotungen, zu wenige für einen See; drei oder mehr werden gebraucht.", one.Say(UnitSystem.Metric.In(Sentences.SpeechFor("de"))));
        Assert.Equal("the file holds no JSON object; it must start with { and end with }.", Finding.Of("the file holds no JSON object; it must start with { and end with }.").Say(UnitSystem.Metric));
    }

    [Fact]
    public void Arms_named_by_their_place_are_said_in_german_and_the_users_names_stay()
    {
        Speech german = Sentences.SpeechFor("de");
        Assert.Equal("Nordwestarm", Engine.Basin.Arms.ArmText.Of("North-west arm", german));
        Assert.Equal("Hinterer Ostarm 2", Engine.Basin.Arms.ArmText.Of("Far east arm 2", german));
        Assert.Equal("Hauptsee", Engine.Basin.Arms.ArmText.Of("Main lake", german));
        Assert.Equal("Widow's arm", Engine.Basin.Arms.ArmText.Of("Widow's arm", german));
        Assert.Equal("North arm", Engine.Basin.Arms.ArmText.Of("North arm", Speech.English));
    }

    private static IEnumerable<string> Places(string sentence) => Place().Matches(sentence).Select(m => m.Groups[1].Value).Distinct();

    [GeneratedRegex(@"\{([a-z][A-Za-z0-9]*)")]
    private static partial Regex Place();
}
