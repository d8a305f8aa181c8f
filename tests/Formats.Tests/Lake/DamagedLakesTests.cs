using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.TestKit;

namespace SecondShore.Formats.Tests.Lake;

public class DamagedLakesTests
{
    private static readonly MemoryFiles Good = new MemoryFiles("good")
        .With("lake.json", """{ "name": "T", "latitude_deg": 41.5, "longitude_deg": -81.25, "time_zone": "America/New_York","""
            + """ "ramps": [ { "name": "N", "latitude_deg": 41.5, "longitude_deg": -81.2 } ] }""")
        .With("hypsography.csv", "depth_m,area_m2\n0,400000\n10,150000\n20,0\n")
        .With("weather.csv", "time,air_temp_c,wind_speed_mph\n2026-11-01T00:30,9,1\n2026-11-01T01:30,8,2\n2026-11-01T01:30,7,3\n")
        .With("readings.csv", "time,haze_depth_ft,surface_temp_f\n2026-10-04T12:00,25,68\n")
        .With("profiles.csv", "time,depth_m,temp_c,oxygen_mg_l\n2026-10-04T12:00Z,1,20,8\n2026-10-04T12:00Z,2,19,\n")
        .With("log.csv", "time,kind,effort_min,note\n2026-10-04T12:00,effort,30,\"a, b\"\n")
        .With("tackle.json", """{ "jigs": [ { "name": "J", "weight_oz": 0.75 } ], "lines": [ { "name": "L", "strength_lb": 15, "diameter_mm": 0.33 } ] }""")
        .With("cover.csv", "latitude_deg,longitude_deg,kind\n41.5,-81.25,brush\n")
        .With("level.csv", "time,below_full_pool_ft\n2026-10-01,3\n");

    [Fact]
    public void The_good_folder_has_no_problem()
    {
        LakeFolder lake = LakeFolderReader.Read(Good);
        Assert.DoesNotContain(lake.Problems, p => p.Severity == ProblemSeverity.Error);
        Assert.Equal(21.26, lake.Tackle!.Jigs[0].WeightG, 0.01);
        Assert.Equal(66.72, lake.Tackle.Lines[0].StrengthN!.Value, 0.01);
        Assert.Equal(0.00033, lake.Tackle.Lines[0].DiameterM!.Value, 1e-9);
    }

    [Fact]
    public void Damaging_any_file_never_throws()
    {
        for (int i = 0; i < 3000; i++)
        {
            Mutator mutator = new((ulong)i + 1);
            LakeFileEntry entry = Good.Entries[i % Good.Entries.Count];
            LakeFolder lake = LakeFolderReader.Read(Good.With(entry.Name, mutator.Damage(Good.Read(entry.Name))));
            Assert.All(lake.Problems, p => Assert.DoesNotContain('\n', p.What.Say(UnitSystem.Metric)));
        }
    }

    [Fact]
    public void Damaging_a_trip_file_gives_files_or_a_sentence()
    {
        byte[] trip = TripFile.ToBytes(Good);
        for (int i = 0; i < 1500; i++)
        {
            ProblemLog log = new();
            MemoryFiles? files = TripFile.Read("t.zip", new Mutator((ulong)i + 1).Damage(trip), log);
            Assert.True(files is not null || log.ToList().Count > 0);
        }
    }
}
