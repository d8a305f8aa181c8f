using System.Globalization;
using System.Text.Json;
using CsCheck;
using SecondShore.Answers.Words;
using SecondShore.App.Store;
using SecondShore.App.Words;
using SecondShore.Desk;
using SecondShore.Desk.Entries;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Records;
using SecondShore.TestKit;

namespace SecondShore.App.Tests;

/// <summary>Whatever another device may make the rules accept, a lake opens, its log is shown, and it can be exported.</summary>
public class PoisonedRecordTests
{
    private static readonly DateTimeOffset Noon = new(2026, 10, 6, 17, 0, 0, TimeSpan.Zero);
    private static readonly MemoryFiles Lake = new MemoryFiles("lake").With("lake.json", """{"name":"Test","latitude_deg":40,"longitude_deg":-90,"time_zone":"UTC"}""");
    private static readonly Wording English = new(TextBook.For("en"), new LocaleInfo(), UnitSystem.Feet, TimeZoneInfo.Utc);

    [Theory]
    [InlineData("""{"latDeg":91,"lonDeg":0,"note":""}""")]
    [InlineData("""{"mark":"2"}""")]
    [InlineData("""{"note":null}""")]
    [InlineData("""{"value":1e999,"depthM":-1e999}""")]
    [InlineData("""{"value":"8.5","note":7,"spot":[],"latDeg":{}}""")]
    [InlineData("""{"note":"\ud800"}""")]
    [InlineData("""{"\ud800":1}""")]
    public void A_poisoned_record_leaves_the_rest_of_the_lake_as_it_is(string body)
    {
        RecordRow good = new Entry { Value = 8.5 }.ToRow("x", RecordKinds.Haze, Noon);
        foreach (string kind in Kinds)
        {
            RecordRow bad = Shared(kind, "2026-10-06T18:00:00Z", null, false, body);
            LakeFolder folder = OwnRecords.Into(LakeFolderReader.Read(Lake), [bad, good]);
            Assert.Contains(folder.Readings, r => r.Value == 8.5 && r.Source == good.Id);
            Used([bad, good]);
        }
    }

    [Fact]
    public void What_cannot_be_used_is_named_where_the_entry_is_shown()
    {
        RecordRow bad = Shared(RecordKinds.Haze, "2026-10-06T18:00:00Z", null, false, """{"value":1e999,"latDeg":91,"lonDeg":0,"note":"left"}""");
        string said = EntryWords.Sentence(bad, English);
        Assert.Contains("left", said, StringComparison.Ordinal);
        Assert.Contains(English["entry.part.value"], said, StringComparison.Ordinal);
        Assert.Contains(English["entry.part.latDeg"], said, StringComparison.Ordinal);
        Assert.Null(OwnRecords.ReadingOf(bad));
    }

    [Fact]
    public void Every_part_of_an_entry_has_words_in_each_language()
    {
        string all = "{" + string.Join(',', typeof(Entry).GetProperties().Where(p => p.Name != nameof(Entry.LeftOut)).Select(p => $"\"{JsonNamingPolicy.CamelCase.ConvertName(p.Name)}\":[]")) + "}";
        IReadOnlyList<string> left = Entry.Of(Shared("note", "2026-10-06T18:00:00Z", null, false, all)).LeftOut;
        Assert.Equal(typeof(Entry).GetProperties().Length - 1, left.Count);
        foreach (string language in TextBook.Languages)
            foreach (string key in left.Except(["mark", "row"]).Concat(["body", "at"]))
                Assert.Contains("entry.part." + key, TextBook.For(language).Keys);
    }

    [Fact]
    public void The_gate_lets_every_field_of_an_entry_through()
    {
        Entry full = new();
        int next = 0;
        foreach (System.Reflection.PropertyInfo field in typeof(Entry).GetProperties().Where(p => p.Name != nameof(Entry.LeftOut)))
            field.SetValue(full, field.PropertyType == typeof(string) ? $"text {next++}" : (object)(1 + (0.01 * next++)));
        Entry read = Entry.Of(new RecordRow("", "", RecordKinds.Note, "2026-10-06T17:00:00Z", null, false, JsonSerializer.Serialize(full, EntryJson.Default.Entry)));
        Assert.Equal(full with { LeftOut = read.LeftOut }, read);
        Assert.Empty(read.LeftOut);
    }

    [Fact]
    public void A_poisoned_entry_can_be_edited_and_taken_back()
    {
        RecordRow bad = Shared(RecordKinds.Fish, "2026-10-06T18:00:00Z", null, false, """{"value":1e999,"speedMps":1e999}""");
        RecordRow edited = (Entry.Of(bad) with { Value = double.NaN, Note = "seen" }).ToRow("x", bad.Kind, Noon, bad.Id);
        Assert.Equal([edited], RecordSet.Standing([bad, edited]));
        Assert.Empty(RecordSet.Standing([bad, edited, Entry.TakingBack(edited, Noon)]));
    }

    [Fact]
    public void Whatever_the_rules_accept_is_opened_said_and_exported_and_nothing_is_lost() => Records.Hold(rows => Used(rows), 300);

    // What the page and the engine do with records, and what must hold of it.
    private static void Used(IReadOnlyList<RecordRow> rows)
    {
        LakeFolder folder = OwnRecords.Into(LakeFolderReader.Read(Lake), rows);
        Assert.All(folder.Readings, r => Assert.True(double.IsFinite(r.Value)));
        IReadOnlyList<RecordRow> entries = RecordSet.Joined(rows, FiledLog.Of(folder));
        foreach (RecordRow row in entries)
        {
            Assert.NotEmpty(EntryWords.Sentence(row, English));
            _ = EntryWords.Where(row, English);
            _ = English.WeekdayDate(RecordSet.At(row)) + English.Time(RecordSet.At(row));
            Assert.Null(RecordRules.Refusal(SharedRecords.ToShared(Entry.Of(row).ToRow("x", row.Kind, RecordSet.At(row), row.Id))));
        }

        ILakeFiles files = OwnRecords.IntoFiles(Lake, rows), twice = OwnRecords.IntoFiles(files, rows);
        LakeFolder back = LakeFolderReader.Read(files);
        Assert.DoesNotContain(back.Problems, p => p.Severity == Formats.ProblemSeverity.Error);
        // Nothing is lost: what stands is a reading, or a row of the log under its id.
        foreach (RecordRow row in RecordSet.Standing(rows))
            Assert.True(back.LogRows.Any(r => r.Id == row.Id) || (OwnRecords.ReadingOf(row) is { } own && back.Readings.Any(r => r.Kind == own.Kind && Math.Abs(r.Value - own.Value) < 1e-6)));
        Assert.Equal(LakeFolderReader.Read(twice).LogRows.Count, back.LogRows.Count);
    }

    private static string[] Kinds => [.. RecordKinds.Readings, RecordKinds.Bite, RecordKinds.Fish, RecordKinds.Snag, RecordKinds.Nothing, RecordKinds.Effort, RecordKinds.Sighting, RecordKinds.Note, "other", "some-day"];

    private static RecordRow Shared(string kind, string at, string? replaces, bool removed, string body)
    {
        LakeRecord record = new(RecordIds.Of(kind, at, replaces, removed, body), kind, at, replaces, removed, body);
        Assert.Null(RecordRules.Refusal(record));
        return SharedRecords.ToRow(record, "x");
    }

    private static Gen<string> OneOf(params string[] texts) => Gen.Int[0, texts.Length - 1].Select(i => texts[i]);

    private static readonly Gen<string> Scalar = Gen.OneOf(
        Gen.Double.Where(double.IsFinite).Select(v => v.ToString("R", CultureInfo.InvariantCulture)), Gen.Int[-100, 300].Select(v => v.ToString(CultureInfo.InvariantCulture)),
        OneOf("1e999", "-1e999", "null", "true", "[]", "{}", "[1,2]", "-0", "\"\"", "\"\\ud800\"", "91", "-181"),
        Gen.String[0, 12].Select(t => JsonSerializer.Serialize(t)), OneOf("\"=1+1\"", "\"a\\nb\"", "\"\\\"\"", "\"'=x\"", "\"# x\"", "\" x \""));

    private static readonly Gen<string> Body = Gen.Select(OneOf("value", "depthM", "latDeg", "lonDeg", "speedMps", "spot", "jigWeightG", "trailer", "colour", "minutes", "note", "mark", "row", "more", "accuracyM", "layerM", "jig", "species", "lengthM", "ate", "sighted", "sightedDepthM", "sightedWhere"), Scalar,
        (key, value) => $"\"{key}\":{value}").Array[0, 8].Select(parts => "{" + string.Join(',', parts) + "}");

    private static readonly Gen<string> When = Gen.Select(Gen.Int[1900, 2199], Gen.Int[1, 12], Gen.Int[1, 28], Gen.Int[0, 23], (y, m, d, h) => $"{y}-{m:00}-{d:00}T{h:00}:00:00Z");

    // Later ones may correct or take back earlier ones.
    private static readonly Gen<IReadOnlyList<RecordRow>> Records = Gen.Select(OneOf(Kinds), When, Body, Gen.Int[-3, 5], Gen.Bool).Array[1, 6].Select(all =>
    {
        List<RecordRow> rows = [];
        foreach ((string kind, string at, string body, int older, bool removed) in all)
        {
            string? replaces = older >= 0 && older < rows.Count ? rows[older].Id : null;
            rows.Add(Shared(kind, at, replaces, removed && replaces is not null, body));
        }

        return (IReadOnlyList<RecordRow>)rows;
    });
}
