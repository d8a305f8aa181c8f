using CsCheck;
using SecondShore.TestKit;

namespace SecondShore.Records.Tests;

public class RecordUnionTests
{
    private static readonly DateTimeOffset At = new(2026, 10, 4, 17, 0, 0, TimeSpan.Zero);

    [Fact]
    public void What_stands_depends_on_the_set_alone()
    {
        LakeRecord first = Note("first", 0, null), better = Note("better", 1, first.Id), other = Note("other", 2, null);
        LakeRecord gone = LakeRecord.Make("note", At.AddMinutes(3), other.Id, removed: true, "{}");
        LakeRecord[] all = [first, better, other, gone];
        Gen.Shuffle(all).Select(Gen.Int[0, 3]).Hold((order, again) =>
            RecordUnion.Standing([.. order, order[again]]).SequenceEqual([better]), 200);
    }

    [Fact]
    public void Of_two_corrections_made_apart_the_later_stands_on_every_device()
    {
        LakeRecord first = Note("first", 0, null), left = Note("left", 1, first.Id), right = Note("right", 2, first.Id);
        Assert.Equal([right], RecordUnion.Standing([first, left, right]));
        Assert.Equal([right], RecordUnion.Standing([right, left, first]));
    }

    [Fact]
    public void A_version_with_a_name_that_is_none_stands_in_nobodys_way()
    {
        LakeRecord first = new FileVersion("weather.csv", new string('a', 64), 10).ToRecord(At, null);
        LakeRecord bad = new FileVersion("../../weather.csv", new string('b', 64), 11).ToRecord(At.AddHours(1), first.Id);
        Assert.Equal(first.Id, Assert.Single(FileVersion.Standing([first, bad])).Value.Record.Id);
    }

    [Fact]
    public void Of_two_versions_of_a_file_made_apart_every_device_takes_the_same()
    {
        LakeRecord first = new FileVersion("weather.csv", new string('a', 64), 10).ToRecord(At, null);
        LakeRecord left = new FileVersion("weather.csv", new string('b', 64), 11).ToRecord(At.AddHours(1), first.Id);
        LakeRecord right = new FileVersion("weather.csv", new string('c', 64), 12).ToRecord(At.AddHours(1), first.Id);
        string taken = FileVersion.Standing([first, left, right])["weather.csv"].Record.Id;
        Assert.Equal(taken, FileVersion.Standing([right, left, first])["weather.csv"].Record.Id);
        Assert.NotEqual(first.Id, taken);
    }

    private static LakeRecord Note(string text, int minutes, string? replaces) =>
        LakeRecord.Make("note", At.AddMinutes(minutes), replaces, false, $$"""{"note":"{{text}}"}""");
}
