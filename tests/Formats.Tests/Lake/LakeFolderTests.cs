using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Text;
using SecondShore.Formats.Writers;

namespace SecondShore.Formats.Tests.Lake;

public class LakeFolderTests
{
    private static readonly string Json = """
        {
          "name": "Testwater",
          "latitude_deg": 41.5,
          "longitude_deg": -81.25,
          "time_zone": "America/New_York",
          "elevation_ft": 1000,
          "secchi_ft": 10,
          "max_depth_m": 30,
          "my_own_key": { "kept": [1, 2, 3] },
          "measured_until": "2026-10-04T12:00:00Z",
          "units": "us",
          "ramps": [ { "name": "North", "latitude_deg": 41.51, "longitude_deg": -81.26, "toe_below_full_pool_ft": 10 } ],
          "no_wake_areas": [ { "name": "Cove",
            "outline": [ { "latitude_deg": 41.5, "longitude_deg": -81.25 }, { "latitude_deg": 41.51, "longitude_deg": -81.25 },
              { "latitude_deg": 41.51, "longitude_deg": -81.24 } ] } ],
          "marks": [ { "kind": "never_visit", "name": "Intake", "latitude_deg": 41.5, "longitude_deg": -81.25, "radius_m": 150 } ],
          "fitted": { "parameters": [ { "name": "stirring", "p10": 0.1, "p50": 0.2, "p90": 0.4 } ] }
        }
        """;

    private static MemoryFiles Files() => new MemoryFiles("testwater")
        .With("lake.json", Json)
        .With("readings.csv", "time,haze_depth_ft,surface_temp_f,who\n2026-10-04T12:00,25,68,me\n")
        .With("hypsography.csv", "depth_ft,area_acres\n0,100\n50,40\n98.4,0\n");

    [Theory]
    [InlineData("waterbody.dbf", "name the .shp")]
    [InlineData("holiday.docx", "of no kind that is read here")]
    public void A_single_file_that_is_no_lake_is_told_by_its_own_name_what_is_expected(string name, string expected)
    {
        LakeFolder lake = LakeFolderReader.Read(new MemoryFiles("one").With(name, "\u0003\u0001"));
        Problem problem = Assert.Single(lake.Problems, p => p.Severity == ProblemSeverity.Error);
        Assert.Equal(name, problem.File);
        Assert.Contains(expected, problem.What.Say(UnitSystem.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Feet_fahrenheit_and_acres_become_si()
    {
        LakeFolder lake = LakeFolderReader.Read(Files());
        Assert.Empty(lake.Problems);
        Assert.Equal(304.8, lake.Site.ElevationM, 1e-9);
        Assert.Equal(3.048, lake.Site.SecchiM!.Value, 1e-9);
        Assert.Equal(404685.64224, lake.Hypsography!.SurfaceAreaM2, 1e-3);
        Assert.Equal(7.62, Assert.Single(lake.Readings, r => r.Kind == ReadingKind.HazeDepth).Value, 1e-9);
        Assert.Equal(20.0, Assert.Single(lake.Readings, r => r.Kind == ReadingKind.SurfaceTemperature).Value, 1e-9);
        Assert.Equal(new DateTimeOffset(2026, 10, 4, 16, 0, 0, TimeSpan.Zero), lake.Readings[0].At);
        Assert.Equal(3.048, Assert.Single(lake.Ramps).ToeBelowFullPoolM!.Value, 1e-9);
        Assert.Equal(PlaceMarkKind.NeverVisit, Assert.Single(lake.Marks).Kind);
        Assert.Equal(0.2, Assert.Single(lake.Fitted.Parameters).P50);
        Assert.Equal(3, Assert.Single(lake.NoWakeAreas).Outline.Count);
        Assert.Equal(DisplayUnits.UsCustomary, lake.DisplayUnits);
        Assert.Equal(new DateTimeOffset(2026, 10, 4, 12, 0, 0, TimeSpan.Zero), lake.MeasuredUntil);
    }

    [Fact]
    public void Appending_a_reading_keeps_every_earlier_byte_and_unknown_column()
    {
        MemoryFiles files = Files();
        Reading reading = new(new DateTimeOffset(2026, 10, 5, 13, 0, 0, TimeSpan.Zero), new GeoPoint(41.5, -81.2), ReadingKind.SurfaceTemperature, 19.5, null, "");
        ILakeFiles after = LakeFolderEdits.WithReading(files, reading);
        string text = System.Text.Encoding.UTF8.GetString(after.Read("readings.csv"));
        Assert.StartsWith("time,haze_depth_ft,surface_temp_f,who,", text, StringComparison.Ordinal);
        Assert.Contains("\n2026-10-04T12:00,25,68,me\n", text, StringComparison.Ordinal);
        LakeFolder lake = LakeFolderReader.Read(after);
        Assert.Equal(3, lake.Readings.Count);
        Assert.Equal(reading with { Source = "readings.csv line 3" }, lake.Readings[2]);
    }

    [Fact]
    public void Setting_a_key_keeps_unknown_keys()
    {
        ILakeFiles after = LakeFolderEdits.WithFitted(Files(), new FittedLake([new FittedParameter("shelter", 0.3, 0.5, 0.9)], new SeasonBias([0, 10], [60, 180, 300], [0.1, 0.2, 0.3, -0.4, -0.5, -0.6])));
        string text = System.Text.Encoding.UTF8.GetString(after.Read("lake.json"));
        Assert.Contains("my_own_key", text, StringComparison.Ordinal);
        LakeFolder lake = LakeFolderReader.Read(after);
        Assert.Equal("shelter", Assert.Single(lake.Fitted.Parameters).Name);
        Assert.Equal([0.1, 0.2, 0.3, -0.4, -0.5, -0.6], lake.Fitted.Bias!.OffK);
        Assert.Equal([0.0, 10], lake.Fitted.Bias.DepthM);
        Assert.Equal(Files().Read("readings.csv"), after.Read("readings.csv"));
    }

    [Theory]
    [InlineData("""{"depths_m":[0,10],"days_of_year":[60,200],"kelvin":[0,1,2]}""")]
    [InlineData("""{"depths_m":[10,0],"days_of_year":[60,200],"kelvin":[0,1,2,3]}""")]
    [InlineData("""{"depths_m":[0,10],"days_of_year":[60,60],"kelvin":[0,1,2,3]}""")]
    [InlineData("""{"depths_m":[0,10],"days_of_year":[60,200],"kelvin":[0,1,2,300]}""")]
    [InlineData("""{"depths_m":[0,10],"days_of_year":[60,200],"kelvin":[0,1,2,"x"]}""")]
    [InlineData("""{"depths_m":{},"days_of_year":[60,200],"kelvin":[0,1,2,3]}""")]
    public void A_correction_that_cannot_be_is_left_out_with_the_reason(string bias)
    {
        LakeFolder lake = LakeFolderReader.Read(new MemoryFiles("x").With("lake.json", """{"name":"x","fitted":{"parameters":[{"name":"a","p50":1}],"bias":""" + bias + "}}"));
        Assert.Null(lake.Fitted.Bias);
        Assert.Single(lake.Fitted.Parameters);
        Assert.Contains(lake.Problems, p => p.File == "lake.json" && p.What.Say(UnitSystem.Metric).Contains("fitted.bias", StringComparison.Ordinal));
    }

    [Fact]
    public void A_document_written_reads_back_the_same()
    {
        LakeDocument document = LakeFolderReader.Read(Files()).Document;
        LakeDocument back = LakeFolderReader.Read(new MemoryFiles("x").With("lake.json", LakeJson.Lake(document))).Document;
        Assert.Equal(document.ElevationM, back.ElevationM);
        Assert.Equal(document.Position, back.Position);
        Assert.Equal(document.MeasuredUntil, back.MeasuredUntil);
        Assert.Equal(document.Ramps, back.Ramps);
        Assert.Equal(document.Marks, back.Marks);
        Assert.Equal(document.Fitted.Parameters, back.Fitted.Parameters);
        Assert.Equal(document.NoWakeAreas[0].Outline, back.NoWakeAreas[0].Outline);
        Assert.Equal(document.Units, back.Units);
    }

    [Fact]
    public void A_survey_alone_gives_the_lake_its_position()
    {
        string grid = AsciiGridWriter.Write(3, 2, 13.26, 41.5, 0.001, [1f, 2f, 3f, 4f, float.NaN, 6f]);
        LakeFolder lake = LakeFolderReader.Read(new MemoryFiles("bare").With("survey-depth.asc", grid));
        Assert.True(lake.IsUsable, string.Join('\n', lake.Problems));
        Assert.Equal(41.501, lake.Site.Position.LatDeg, 1e-6);
        Assert.Equal(13.2615, lake.Site.Position.LonDeg, 1e-6);
        Assert.Equal(6.0, lake.SurveyFiles[0].MaxDepthM, 1e-6);
        Assert.Equal(5, lake.SurveyFiles[0].Count);
        // Row 0 of a raster is the northmost: the value 4 of the writer's north row stands first.
        Assert.Equal(4f, lake.Survey!.Rasters[0].DepthM[0]);
        Assert.Equal(41.5015, lake.Survey.Rasters[0].Placement.PlaceOf(0, 0).LatDeg, 1e-9);
        Assert.Equal((2.0, 1.0), Rounded(lake.Survey.Rasters[0].Placement.PixelOf(new GeoPoint(41.5005, 13.2625))));
        Assert.NotEmpty(lake.Assumed);

        static (double, double) Rounded((double Column, double Row) p) => (Math.Round(p.Column, 6), Math.Round(p.Row, 6));
    }
}
