namespace SecondShore.Records.Tests;

public class RecordRuleTests
{
    private static readonly DateTimeOffset At = new(2026, 10, 4, 17, 0, 0, TimeSpan.Zero);

    public static TheoryData<string> NamesThatAreNone { get; } =
    [
        "../../etc/passwd", "/etc/passwd", "a//b.csv", "a/../b.csv", "C:\\x.csv", "c:x.csv", "a\0b", "a\nb", "", ".", "..", " a.csv", "a.csv ", "a.", "a/b/c/d/e.csv",
        "con", "NUL.csv", "climate/com1.csv", "Lpt9", "aux .txt", "a\u202eb.csv", "a\u200bb.csv", "a\ud800b.csv", new string('x', 201), new string('y', 15_000),
    ];

    [Theory]
    [MemberData(nameof(NamesThatAreNone))]
    public void A_record_that_names_a_file_outside_is_refused(string path)
    {
        string body = $$"""{"path":{{System.Text.Json.JsonSerializer.Serialize(path)}},"sha256":"{{new string('a', 64)}}","sizeBytes":3}""";
        LakeRecord record = LakeRecord.Make("file", At, null, false, body);
        Assert.False(LakeFileNames.IsSafe(path));
        Assert.NotNull(RecordRules.Refusal(record));
        Assert.Null(FileVersion.Of(record));
    }

    [Theory]
    [InlineData("lake.json")]
    [InlineData("climate/2014.csv")]
    [InlineData("survey/Größe 2 (neu).xyz")]
    [InlineData("console.csv")]
    [InlineData(".hidden")]
    public void A_plain_name_is_taken(string path) =>
        Assert.Null(RecordRules.Refusal(new FileVersion(path, new string('a', 64), 3).ToRecord(At, null)));

    [Theory]
    [InlineData("Survey.xyz", "survey.XYZ")]
    [InlineData("s\u00e9e.csv", "se\u0301e.csv")]
    public void Names_that_some_systems_take_for_one_have_one_key(string one, string other) =>
        Assert.Equal(LakeFileNames.TwinKey(one), LakeFileNames.TwinKey(other));

    [Theory]
    [InlineData("17:00:00Z")]
    [InlineData("October 4, 2026 Z")]
    [InlineData("04/10/2026Z")]
    [InlineData("2026-10-04Z")]
    [InlineData("2026-10-04T17:00Z")]
    [InlineData("2026-10-04T17:00:00+02:00Z")]
    [InlineData("2026-10-04 17:00:00Z")]
    [InlineData("0001-01-01T00:00:00Z")]
    [InlineData("9999-12-31T23:59:59.9999999Z")]
    [InlineData("2026-02-30T00:00:00Z")]
    [InlineData("\u0662026-10-04T17:00:00Z")]
    public void A_time_that_is_not_ISO_with_date_and_time_is_refused(string at)
    {
        LakeRecord record = new(RecordIds.Of("note", at, null, false, "{}"), "note", at, null, false, "{}");
        Assert.Contains("ISO-8601", RecordRules.Refusal(record), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-10-04T17:00:00Z")]
    [InlineData("2026-10-04T17:00:00.1Z")]
    [InlineData("2026-10-04T17:00:00.1234567Z")]
    public void A_time_with_up_to_seven_digits_is_taken(string at)
    {
        Assert.Null(RecordRules.Refusal(new LakeRecord(RecordIds.Of("note", at, null, false, "{}"), "note", at, null, false, "{}")));
        Assert.True(RecordTimes.TryRead(at, out DateTimeOffset read));
        Assert.Equal(2026, read.Year);
    }

    [Fact]
    public async Task A_record_that_an_earlier_host_kept_by_looser_rules_is_passed_over_and_the_rest_comes()
    {
        LakeRecord good = LakeRecord.Make("note", At, null, false, "{}");
        LakeRecord loose = new(RecordIds.Of("note", "17:00Z", null, false, "{}"), "note", "17:00Z", null, false, "{}");
        KeptOnly local = new();
        SyncResult result = await SyncRun.RunAsync(local, new OnePage([loose, good]), cancel: TestContext.Current.CancellationToken);
        Assert.Equal((1, 1), (result.PassedOver, result.Received));
        Assert.Equal([good], local.Kept);
        await Assert.ThrowsAsync<InvalidDataException>(() => SyncRun.RunAsync(new KeptOnly(), new OnePage([good with { Body = "{ }" }]), cancel: TestContext.Current.CancellationToken));
    }

    private sealed class OnePage(IReadOnlyList<LakeRecord> records) : IHostRecords
    {
        public Task<PushAnswer> PushAsync(PushRequest request, CancellationToken cancel) => throw new NotSupportedException();

        public Task<PullAnswer> PullAsync(string epoch, long cursor, CancellationToken cancel) => Task.FromResult(new PullAnswer("e", records.Count, false, records));
    }

    private sealed class KeptOnly : ILocalRecords
    {
        public List<LakeRecord> Kept { get; } = [];

        public Task<SyncPlace> PlaceAsync(CancellationToken cancel) => Task.FromResult(SyncPlace.None);

        public Task<IReadOnlyList<LakeRecord>> WaitingAsync(CancellationToken cancel) => Task.FromResult<IReadOnlyList<LakeRecord>>([]);

        public Task<int> AddAsync(IReadOnlyList<LakeRecord> records, CancellationToken cancel)
        {
            Kept.AddRange(records);
            return Task.FromResult(records.Count);
        }

        public Task SettleAsync(SyncPlace place, IReadOnlyList<string> acknowledged, IReadOnlyList<string> refused, CancellationToken cancel) => Task.CompletedTask;
    }
}
