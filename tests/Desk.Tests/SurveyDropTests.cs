using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.TestKit;

namespace SecondShore.Desk.Tests;

/// <summary>Measured survey files dropped into the app: look, answer what the file does not say, take in, and there is a chart.</summary>
public class SurveyDropTests
{
    // What the user answers where a file leaves two readings: a table without a header says neither which column is the depth nor its sense.
    private static readonly Dictionary<string, string> Told = new(StringComparer.Ordinal) { ["260939.LOG"] = """{"depth_column":"3","sense":"depth"}""" };

    // Least and most of the deepest point, m; coordinate system and level that the user adds. Without the whole files one row skips for all.
    public static TheoryData<string, double, double, string?, double?> Whole => SharedData.Folder is null ? new() { { "harbour-depth-logger/260939.LOG", 4, 10, null, null } } : new()
    {
        { "caputh-lake-echosounder/20250123122332.sum", 6, 12, null, null },
        { "caputh-lake-echosounder/20250123122332.sum caputh-lake-echosounder/waterbody.shp caputh-lake-echosounder/waterbody.shx caputh-lake-echosounder/waterbody.dbf caputh-lake-echosounder/waterbody.prj", 6, 12, null, null },
        { "corpus-christi-reservoir/current-bottom/12030204.pic", 2, 25, null, null },
        { "ela-lake-227-transects/227_LA.csv", 9, 13, null, null },
        { "harbour-depth-logger/260939.LOG", 4, 10, null, null },
        { "nmea-lake-depth-survey/depths.nmea", 1, 60, null, null },
        { "long-lake-depth-survey/longlake_depth.tif", 1.5, 2.5, null, null },
        { "long-lake-depth-survey/LongLakeDepthSurvey.shp long-lake-depth-survey/LongLakeDepthSurvey.shx long-lake-depth-survey/LongLakeDepthSurvey.dbf long-lake-depth-survey/LongLakeDepthSurvey.prj", 1.5, 2.5, null, null },
        { "mendota-contours/mendota-contours-all.shp mendota-contours/mendota-contours-all.shx mendota-contours/mendota-contours-all.dbf", 22, 27, "EPSG:3071", null },
        { "mendota-contours/MendotaBathy.csv", 20, 27, "3071", null },
        { "sand-lakes-elevation-rasters/long_raster.tif", 2.5, 4.5, null, 336.0 },
        { "sand-lakes-elevation-rasters/psnt_raster.tif", 7, 10, null, 299.5 },
    };

    [Theory]
    [InlineData("ela-lake-227.csv", 9, 13, null)]
    [InlineData("mendota-depths.csv", 20, 27, "3071")]
    [InlineData("reservoir.pic", 2, 25, null)]
    public void A_dropped_copy_leads_to_a_chart_in_three_steps(string name, double leastM, double mostM, string? crs) =>
        Drop([SharedData.Copy("surveys", name)], leastM, mostM, crs, null);

    [Theory]
    [MemberData(nameof(Whole))]
    public void A_dropped_survey_leads_to_a_chart_in_three_steps(string names, double leastM, double mostM, string? crs, double? levelM)
    {
        Assert.SkipWhen(SharedData.Folder is null, SharedData.Missing);
        Drop([.. names.Split(' ').Select(name => SharedData.Find(["surveys", .. name.Split('/')])!)], leastM, mostM, crs, levelM);
    }

    private static void Drop(string[] paths, double leastM, double mostM, string? crs, double? levelM)
    {
        Dictionary<string, byte[]> files = paths.ToDictionary(path => Path.GetFileName(path), File.ReadAllBytes, StringComparer.Ordinal);
        KeptTray tray = new();
        LakeDesk desk = new(tray);
        desk.Ask(new InspectFiles(), files);
        NewLakeFacts facts = new("Dropped", null, null, "UTC", null, null, crs, levelM) { Answers = [.. files.Keys.Where(Told.ContainsKey).Select(f => new SurveyAnswer(f, Told[f]))] };
        InspectView taken = desk.Ask(new AdoptFiles(facts), files);
        Assert.True(taken.Taken, string.Join(" ", taken.Problems));
        desk.Lay("x", tray.Files);
        LakeView view = desk.Ask(new OpenLake([]));
        Assert.InRange(view.MaxDepthM!.Value, leastM, mostM);
        int wet = tray.LastGrid!.DepthM.Count(d => d > 0);
        Assert.True(wet > 30, $"Only {wet} cells of water were drawn.");
    }
}
