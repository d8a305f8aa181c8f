using SecondShore.Engine.Basin;
using SecondShore.Formats.Files;
using SecondShore.Formats.Surveys;
using SecondShore.TestKit.Synthetic;

namespace SecondShore.TestKit;

/// <summary>What a good importer does with a file.</summary>
public enum SurveyMust
{
    /// <summary>Read it.</summary>
    Read,

    /// <summary>Ask before reading it.</summary>
    Ask,

    /// <summary>Refuse it.</summary>
    Refuse,
}

/// <summary>What is true of a measured survey file, by its source.json.</summary>
/// <param name="File">Folder and file under the shared surveys.</param>
/// <param name="Must">What a good importer does with it.</param>
/// <param name="LowM">Least depth, m; NaN when there are none or it is not said.</param>
/// <param name="HighM">Greatest depth, m; NaN likewise.</param>
/// <param name="Box">West, south, east, north, degrees; null when not said.</param>
/// <param name="Set">What somebody who knows the lake answers; empty where nothing is asked.</param>
public sealed record SurveyTruth(string File, SurveyMust Must, double LowM, double HighM, double[]? Box, SurveyOptions Set)
{
    private const double DepthToleranceM = 0.12;
    private const double PlaceToleranceDeg = 0.0012;

    /// <summary>Reads the file with what is set; null where the shared surveys are absent.</summary>
    public SurveyImport? Read(SurveyOptions options)
    {
        string[] parts = File.Split('/');
        if (SharedData.Find(["surveys", .. parts]) is not string path) return null;
        return SurveyImporter.Read(new SurveySource(FolderFiles.OneFile(path), parts[^1]), options, SurveyContext.Nothing);
    }

    /// <summary>What came of the file by itself: right, asked, refused, or wrong in silence.</summary>
    public SurveyOutcome Judge(SurveyImport import)
    {
        ArgumentNullException.ThrowIfNull(import);
        if (import.Survey is Survey survey) return IsRight(survey, import.Understanding!) ? SurveyOutcome.Right : SurveyOutcome.WrongInSilence;
        return import.Question is null ? SurveyOutcome.Refused : SurveyOutcome.Asked;
    }

    /// <summary>Whether a reading agrees with the truth; an outline without depths does where the file has none.</summary>
    public bool IsRight(Survey survey, SurveyUnderstanding seen)
    {
        ArgumentNullException.ThrowIfNull(survey);
        ArgumentNullException.ThrowIfNull(seen);
        bool hasDepths = survey.Soundings.Count + survey.Contours.Count + survey.Rasters.Count > 0;
        if (Box is { } box && seen.Extent is GeoExtent e && !(Near(e.WestDeg, box[0]) && Near(e.SouthDeg, box[1]) && Near(e.EastDeg, box[2]) && Near(e.NorthDeg, box[3]))) return false;
        if (double.IsNaN(HighM)) return !hasDepths;
        return hasDepths && Math.Abs(seen.MinDepthM - LowM) <= DepthToleranceM && Math.Abs(seen.MaxDepthM - HighM) <= DepthToleranceM;

        static bool Near(double a, double b) => Math.Abs(a - b) <= PlaceToleranceDeg;
    }
}

/// <summary>What is true of the measured survey files that carry an <c>expect</c> in their source.json.</summary>
public static class SurveyTruths
{
    private static readonly SurveyOptions Nothing = new();

    /// <summary>All of them.</summary>
    public static IReadOnlyList<SurveyTruth> All { get; } =
    [
        new("danish-lakes-terrain/example_lake_1.tif", SurveyMust.Ask, -60.64, 3.59, [9.447755, 55.156158, 9.503235, 55.187893],
            new SurveyOptions { Sense = DepthSense.Elevation, Unit = DepthUnit.Metres, SurfaceElevationM = 0.33, Area = [-90, -180, 90, 180] }),
        new("danish-lakes-terrain/example_mask_1.tif", SurveyMust.Refuse, double.NaN, double.NaN, null, Nothing),
        new("danish-lakes-terrain/example_lake_2_crs4326.tif", SurveyMust.Ask, double.NaN, double.NaN, [8.937858, 56.149639, 8.960911, 56.162461], Nothing),
        new("white-sea-estuary-sonar/Sonar0000_out_t.csv", SurveyMust.Read, 1.2, 3.0, [38.286717, 63.827028, 38.287492, 63.827267], new SurveyOptions { XColumn = "1", YColumn = "2", DepthColumn = "3" }),
        new("white-sea-estuary-sonar/fairway_points.csv", SurveyMust.Refuse, double.NaN, double.NaN, null, Nothing),
        new("conceicao-lagoon-bands/batimetria_lagoa_conceicao.shp", SurveyMust.Read, 0, 8, [-48.484402, -27.627638, -48.423783, -27.511513], Nothing),
        new("ungava-harbour-buoy/13_46_34-2017_09_22_Soundings_PPK-Tide-CD.txt", SurveyMust.Read, -7.65, 48.528, [-69.702042, 61.015551, -69.635622, 61.055436], Nothing),
        new("ungava-harbour-buoy/ers-soundings.csv", SurveyMust.Ask, 0.6, 46.8, [-66.728107, 50.137468, -66.683901, 50.21152], new SurveyOptions { Crs = "EPSG:32619" }),
        new("carolina-waterway-drifter/24010401_depth-sensing-ping_CMSTest.csv", SurveyMust.Refuse, double.NaN, double.NaN, null, Nothing),
        new("carolina-waterway-drifter/23071204_RipCurrent_TrailsEnd_trunc.csv", SurveyMust.Refuse, double.NaN, double.NaN, null, Nothing),
        new("carolina-waterway-drifter/24111802.csv", SurveyMust.Refuse, double.NaN, double.NaN, null, Nothing),
        new("zakrzowek-quarry-lake/Zakrzowek_2010.csv", SurveyMust.Ask, 0.11, 33.96, [19.908196, 50.036609, 19.911696, 50.038995],
            new SurveyOptions { Crs = "EPSG:2178", SurfaceElevationM = 201.2 }),
        new("zakrzowek-quarry-lake/Zakrzowek_2012.csv", SurveyMust.Ask, 3.73, 33.69, null, new SurveyOptions { Crs = "EPSG:2178", SurfaceElevationM = 201.2 }),
        new("zakrzowek-quarry-lake/Zakrzowek_2017.csv", SurveyMust.Ask, 3.74, 34.16, [19.908547, 50.036113, 19.912311, 50.038967],
            new SurveyOptions { Crs = "EPSG:2178", SurfaceElevationM = 201.2, UseRest = true }),
        new("zakrzowek-quarry-lake/gps_2011.csv", SurveyMust.Refuse, double.NaN, double.NaN, null, Nothing),
        new("bag-harbours/bdb_00.bag", SurveyMust.Refuse, double.NaN, double.NaN, null, Nothing),
        new("bag-harbours/bdb_01.bag", SurveyMust.Read, 2.8, 4.516, [-74.053148, 40.602864, -74.052584, 40.603227], Nothing),
        new("bag-harbours/bdb_02.bag", SurveyMust.Read, 0.823, 16.776, [-73.651058, 40.59576, -73.649916, 40.59623], Nothing),
        new("bag-harbours/fake_00.bag", SurveyMust.Refuse, double.NaN, double.NaN, null, Nothing),
        new("bag-harbours/Sample_VR_BAG-gzip.bag", SurveyMust.Ask, 20.385, 24.364, null, new SurveyOptions { Crs = "EPSG:26910" }),
        new("texana-reservoir-outline/texana_boundary_v2.shp", SurveyMust.Refuse, double.NaN, double.NaN, [-96.587033, 28.888042, -96.467451, 29.047332], Nothing),
        new("texana-reservoir-outline/texana_interp_polygons_v2.shp", SurveyMust.Refuse, double.NaN, double.NaN, null, Nothing),
        new("tweelbaeke-lake-semicolons/Referenz_Tweelbaeke.txt", SurveyMust.Ask, 2.02, 18.919, [8.280656, 53.110488, 8.283945, 53.11282],
            new SurveyOptions { DepthColumn = "4", Crs = "EPSG:25832" }),
        new("tweelbaeke-lake-semicolons/Test_DHM.txt", SurveyMust.Ask, 2.009, 18.919, [8.280656, 53.110488, 8.283945, 53.11282], new SurveyOptions { Crs = "EPSG:25832" }),
        new("northern-highland-depth-bands/nhld_bathymetry.shp", SurveyMust.Read, 0, 33.528, [-89.703041, 45.999156, -89.595878, 46.078984], new SurveyOptions { Area = [-90, -180, 90, 180] }),
        new("northern-highland-depth-bands/wingra-contours-all.shp", SurveyMust.Ask, 0, 3.658, [-89.432647, 43.047448, -89.405844, 43.05986], new SurveyOptions { Crs = "EPSG:3070" }),
    ];

    /// <summary>Answers that somebody in a hurry may give: nothing about a file agrees with all of them, so that each must be noticed or be right.</summary>
    public static IReadOnlyList<(string File, SurveyOptions Answer)> Naive { get; } =
    [
        ("zakrzowek-quarry-lake/Zakrzowek_2010.csv", new SurveyOptions { Crs = "EPSG:26918" }),
        ("zakrzowek-quarry-lake/Zakrzowek_2010.csv", new SurveyOptions { Crs = "EPSG:2178", Sense = DepthSense.Depth }),
        ("zakrzowek-quarry-lake/Zakrzowek_2010.csv", new SurveyOptions { Crs = "EPSG:2178", Sense = DepthSense.Depth, Unit = DepthUnit.Feet }),
        ("zakrzowek-quarry-lake/gps_2011.csv", new SurveyOptions { Crs = "EPSG:2178" }),
        ("zakrzowek-quarry-lake/gps_2011.csv", new SurveyOptions { Crs = "EPSG:2178", SurfaceElevationM = 240 }),
        ("tweelbaeke-lake-semicolons/Test_DHM.txt", new SurveyOptions { DepthColumn = "1", Crs = "EPSG:25832" }),
        ("white-sea-estuary-sonar/fairway_points.csv", new SurveyOptions { DepthColumn = "4" }),
        ("white-sea-estuary-sonar/fairway_points.csv", new SurveyOptions { DepthColumn = "3", XColumn = "1", YColumn = "2" }),
        ("white-sea-estuary-sonar/Sonar0000_out_t.csv", new SurveyOptions { DepthColumn = "4", XColumn = "1", YColumn = "2" }),
        ("carolina-waterway-drifter/24010401_depth-sensing-ping_CMSTest.csv", new SurveyOptions { DepthColumn = "9" }),
        ("carolina-waterway-drifter/24010401_depth-sensing-ping_CMSTest.csv", new SurveyOptions { DepthColumn = "9", Unit = DepthUnit.Metres }),
        ("carolina-waterway-drifter/24010401_depth-sensing-ping_CMSTest.csv", new SurveyOptions { DepthColumn = "3" }),
        ("carolina-waterway-drifter/23071204_RipCurrent_TrailsEnd_trunc.csv", new SurveyOptions { DepthColumn = "8", Unit = DepthUnit.Metres }),
        ("danish-lakes-terrain/example_mask_1.tif", new SurveyOptions { Sense = DepthSense.Depth, Unit = DepthUnit.Metres }),
        ("danish-lakes-terrain/example_lake_2_crs4326.tif", new SurveyOptions { Unit = DepthUnit.Metres }),
        ("ungava-harbour-buoy/ers-soundings.csv", new SurveyOptions { Crs = "EPSG:32619", DepthColumn = "Timestamp" }),
        ("texana-reservoir-outline/texana_interp_polygons_v2.shp", new SurveyOptions { Unit = DepthUnit.Feet }),
    ];
}
