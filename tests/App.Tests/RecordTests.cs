using CsCheck;
using SecondShore.App.Shell;
using SecondShore.App.Store;
using SecondShore.Desk;
using SecondShore.Desk.Entries;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.TestKit;

namespace SecondShore.App.Tests;

public class RecordTests
{
    private static readonly DateTimeOffset Noon = new(2026, 10, 6, 17, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Joining_records_gives_the_same_set_in_whatever_order_they_came()
    {
        Gen.Shuffle(Enumerable.Range(0, 12).ToArray()).Hold(order =>
        {
            RecordRow[] all = Chain();
            IReadOnlyList<RecordRow> straight = RecordSet.Standing(all), mixed = RecordSet.Standing(order.Select(i => all[i % all.Length]).Concat(all).Distinct());
            Assert.Equal(straight.Select(r => r.Id), mixed.Select(r => r.Id));
        });
    }

    [Fact]
    public void An_edit_stands_for_the_old_record_and_a_removal_for_neither()
    {
        RecordRow first = new Entry { Value = 8 }.ToRow("lake", RecordKinds.Haze, Noon);
        RecordRow edit = new Entry { Value = 9 }.ToRow("lake", RecordKinds.Haze, Noon, first.Id);
        Assert.Equal([edit], RecordSet.Standing([first, edit]));
        Assert.Empty(RecordSet.Standing([first, edit, Entry.TakingBack(edit, Noon.AddMinutes(1))]));
    }

    [Fact]
    public void Ids_of_lakes_made_later_sort_later()
    {
        string early = LakeId.New(Noon), late = LakeId.New(Noon.AddMilliseconds(1));
        Assert.True(string.CompareOrdinal(early, late) < 0);
        Assert.NotEqual(early, LakeId.New(Noon));
    }

    [Fact]
    public void Records_go_into_the_trip_files_tables_once_and_come_back()
    {
        MemoryFiles empty = new MemoryFiles("lake").With("lake.json", """{"name":"Test","latitude_deg":40,"longitude_deg":-90,"time_zone":"UTC"}""");
        RecordRow[] rows =
        [
            new Entry { Value = 8.5 }.ToRow("x", RecordKinds.Haze, Noon),
            new Entry { Value = 1400, LatDeg = 40.001, LonDeg = -90.002 }.ToRow("x", RecordKinds.Fish, Noon.AddMinutes(5)),
            new Entry { Note = "said, \"so\"" }.ToRow("x", RecordKinds.Note, Noon.AddMinutes(6)),
        ];
        ILakeFiles once = OwnRecords.IntoFiles(empty, rows), twice = OwnRecords.IntoFiles(once, rows);
        LakeFolder folder = LakeFolderReader.Read(twice);
        Assert.Equal(8.5, Assert.Single(folder.Readings).Value, 6);
        Assert.Equal(2, folder.Log.Count);
        Assert.Equal(1400, folder.Log[0].FishWeightG!.Value, 3);
        Assert.Equal("said, \"so\"", folder.Log[1].Note);
        Assert.Equal(rows[1].Id, folder.Log[0].Id);
    }

    [Fact]
    public void Speed_is_steady_only_when_it_is()
    {
        SpeedTrack steady = new(), wild = new();
        for (int i = 0; i < 12; i++)
        {
            steady.Add(new BoatFix(new GeoPoint(40, -90), null, 5, 0.27 + (0.01 * (i % 2)), null, Noon.AddSeconds(2 * i)));
            wild.Add(new BoatFix(new GeoPoint(40, -90), null, 5, 0.1 + (0.4 * (i % 2)), null, Noon.AddSeconds(2 * i)));
        }

        Assert.Equal(0.275, steady.MeanMps!.Value, 3);
        Assert.True(steady.IsSteady);
        Assert.False(wild.IsSteady);
        Assert.Null(new SpeedTrack().MeanMps);
    }

    private static RecordRow[] Chain()
    {
        List<RecordRow> rows = [];
        for (int i = 0; i < 12; i++)
            rows.Add(new RecordRow($"id{i:00}", "lake", RecordKinds.Bite, Noon.AddMinutes(i).UtcDateTime.ToString("O"), i % 3 == 2 ? $"id{i - 1:00}" : null, i % 6 == 5, "{}"));
        return [.. rows];
    }
}
