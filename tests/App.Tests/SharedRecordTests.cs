using SecondShore.App.Store;
using SecondShore.Desk.Entries;
using SecondShore.Records;

namespace SecondShore.App.Tests;

public class SharedRecordTests
{
    private static readonly DateTimeOffset Noon = new(2026, 10, 6, 17, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Every_record_the_app_makes_is_taken_by_the_host_and_comes_back_as_it_was()
    {
        RecordRow first = new Entry { Value = 8, Note = "ä \"quoted\"" }.ToRow("lake", RecordKinds.Haze, Noon);
        RecordRow[] rows =
        [
            first,
            new Entry { Value = 9 }.ToRow("lake", RecordKinds.Haze, Noon, first.Id),
            Entry.TakingBack(first, Noon.AddMinutes(1)),
            Entry.TakingBack(new RecordRow("bite-7", "lake", RecordKinds.Bite, first.At, null, false, "{}"), Noon),
            new Entry { Note = "corrected" }.ToRow("lake", RecordKinds.Note, Noon, "note 3"),
        ];
        foreach (RecordRow row in rows)
        {
            LakeRecord shared = SharedRecords.ToShared(row);
            Assert.Null(RecordRules.Refusal(shared));
            Assert.Equal(row, SharedRecords.ToRow(shared, "lake"));
            Assert.Equal(row with { Lake = "elsewhere" }, SharedRecords.ToRow(shared, "elsewhere"));
        }

        Assert.Equal("bite-7", rows[3].Replaces);
    }

    [Fact]
    public void Two_equal_entries_of_one_moment_stay_two() =>
        Assert.NotEqual(new Entry().ToRow("lake", RecordKinds.Bite, Noon).Id, new Entry().ToRow("lake", RecordKinds.Bite, Noon).Id);

    [Fact]
    public void Records_of_an_earlier_version_get_the_same_new_ids_on_every_device_and_keep_what_they_replace()
    {
        RecordRow[] old =
        [
            new("0001-a", "lake", RecordKinds.Bite, "2026-10-06T17:00:00.0000000Z", null, false, "{\"note\":\"x\"}"),
            new("0002-b", "lake", RecordKinds.Bite, "2026-10-06T17:00:00.0000000Z", "0001-a", false, "{\"note\":\"y\"}"),
            new("0003-c", "lake", RecordKinds.Bite, "2026-10-06T17:05:00.0000000Z", "0002-b", true, "{}"),
            new("0004-d", "lake", RecordKinds.Fish, "2026-10-06T17:05:00.0000000Z", "row-9", true, "{}"),
            new Entry().ToRow("lake", RecordKinds.Snag, Noon),
        ];
        IReadOnlyList<RecordRow> straight = SharedRecords.WithContentIds(old), turned = SharedRecords.WithContentIds([.. old.Reverse()]);
        Assert.Equal(straight.Select(r => r.Id).Order(), turned.Select(r => r.Id).Order());
        Assert.Equal(straight[0].Id, straight[1].Replaces);
        Assert.Equal(straight[1].Id, straight[2].Replaces);
        Assert.Equal("row-9", straight[3].Replaces);
        Assert.Equal(old[4], straight[4]);
        Assert.All(straight, row => Assert.Null(RecordRules.Refusal(SharedRecords.ToShared(row))));
        Assert.Equal([straight[4].Id], RecordSet.Standing(straight).Select(r => r.Id));
    }

    [Fact]
    public void What_both_the_files_and_this_device_hold_stands_once()
    {
        RecordRow haze = new Entry { Value = 8.5 }.ToRow("lake", RecordKinds.Haze, Noon), bite = new Entry().ToRow("lake", RecordKinds.Bite, Noon);
        RecordRow[] filed =
        [
            bite with { Lake = "" },
            new("line-r0", "", RecordKinds.Haze, haze.At, null, false, "{\"value\":8.5}"),
            new("line-r1", "", RecordKinds.Haze, haze.At, null, false, "{\"value\":9.5}"),
        ];
        Assert.Equal(new[] { haze.Id, bite.Id, "line-r1" }.Order(), RecordSet.Joined([haze, bite], filed).Select(r => r.Id).Order());
    }
}
