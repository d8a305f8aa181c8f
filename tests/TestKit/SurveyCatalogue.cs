using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Surveys;

namespace SecondShore.TestKit;

/// <summary>What a measured survey file must be read as, by its source.json; or that it must be refused, and with which words.</summary>
/// <param name="File">Folder and file under the shared surveys, or under tests/data where <paramref name="IsCopy"/> says so.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Options">What a user would confirm or set.</param>
/// <param name="Count">Soundings, lines, rings or cells with data; -1 when source.json does not say.</param>
/// <param name="LowFiled">Lowest value as filed; NaN when not said.</param>
/// <param name="HighFiled">Highest value as filed; NaN when not said.</param>
/// <param name="Unit">Unit of the depths.</param>
/// <param name="Sense">Sense of the depths.</param>
/// <param name="Extent">Extent in degrees; null when not said.</param>
/// <param name="Refusal">Words of the refusal; null when it must be read.</param>
/// <param name="Context">What the lake's folder would know; null for nothing.</param>
/// <param name="IsCopy">Whether it is a small copy that goes with the tests.</param>
public sealed record SurveyCase(string File, SurveyKind Kind, SurveyOptions Options, long Count = -1, double LowFiled = double.NaN,
    double HighFiled = double.NaN, DepthUnit Unit = DepthUnit.Metres, DepthSense Sense = DepthSense.Depth, GeoExtent? Extent = null,
    string? Refusal = null, SurveyContext? Context = null, bool IsCopy = false)
{
    /// <summary>Reads the file; null where the shared surveys are absent.</summary>
    public SurveyImport? Read()
    {
        string[] parts = ["surveys", .. File.Split('/')];
        if ((IsCopy ? SharedData.Copy(parts) : SharedData.Find(parts)) is not string path) return null;
        FolderFiles folder = FolderFiles.OneFile(path);
        return SurveyImporter.Read(new SurveySource(folder, parts[^1]), Options, Context ?? SurveyContext.Nothing);
    }
}

/// <summary>Every measured survey file, with the facts of its source.json.</summary>
public static class SurveyCatalogue
{
    private static readonly SurveyOptions Found = new();

    /// <summary>The small copies, with the facts of the numbers in them.</summary>
    public static IReadOnlyList<SurveyCase> Copies { get; } =
    [
        new("ela-lake-227.csv", SurveyKind.Soundings, Found, 148, -10.71, -0.49, Sense: DepthSense.NegativeDepth,
            Extent: new GeoExtent(49.68676, -93.6906, 49.68897, -93.68702), IsCopy: true),
        new("lake.nmea", SurveyKind.Soundings, Found, 32, 17.28, 23.65, Extent: new GeoExtent(44.79059, -63.84051, 44.7924, -63.83889), IsCopy: true),
        new("mendota-depths.csv", SurveyKind.Soundings, new SurveyOptions { Crs = "EPSG:3071" }, 88, 0.9144, 24.384,
            Extent: new GeoExtent(43.07, -89.49, 43.15, -89.36), IsCopy: true),
        new("mendota-depths.csv", SurveyKind.Soundings, Found, Refusal: "does not say its coordinate system", IsCopy: true),
        new("reservoir.pic", SurveyKind.Soundings, Found, 63, 3.01, 16.72, DepthUnit.Feet, Extent: new GeoExtent(28.0648, -97.90486, 28.07083, -97.89634), IsCopy: true),
    ];

    /// <summary>All whole files.</summary>
    public static IReadOnlyList<SurveyCase> All { get; } =
    [
        new("prettyboy-reservoir-soundings/PrettyBoy.csv", SurveyKind.Soundings, new SurveyOptions { Crs = "EPSG:26918", Unit = DepthUnit.Feet },
            54680, 0, 128.6, DepthUnit.Feet, Extent: new GeoExtent(39.614, -76.78, 39.69, -76.70)),
        new("prettyboy-reservoir-soundings/PrettyBoy.csv", SurveyKind.Soundings, Found, Refusal: "does not say its coordinate system"),
        .. new[] { ("01", 3987), ("02", 4489), ("03", 3885), ("04", 4437), ("08", 3750) }.SelectMany(p => new[]
        {
            new SurveyCase($"corpus-christi-reservoir/current-bottom/120302{p.Item1}.pic", SurveyKind.Soundings, Found, p.Item2, Unit: DepthUnit.Feet),
            new SurveyCase($"corpus-christi-reservoir/pre-impoundment/120302{p.Item1}.pre", SurveyKind.Soundings, Found, p.Item2, Unit: DepthUnit.Feet),
        }),
        new("corpus-christi-reservoir/depth-vs-time/12030219.txt", SurveyKind.Nothing, Found, Refusal: "position"),
        new("corpus-christi-reservoir/shoreline0483.shp", SurveyKind.Shoreline, Found, 75, Extent: new GeoExtent(28.0, -98.06, 28.31, -97.85)),
        new("corpus-christi-reservoir/shoreline0683.shp", SurveyKind.Shoreline, Found, 51),
        new("long-lake-depth-survey/LongLakeDepthSurvey.shp", SurveyKind.Soundings, Found, 64, HighFiled: 1.8, Extent: new GeoExtent(45.8974, -64.1612, 45.9117, -64.1374)),
        new("long-lake-depth-survey/LongLakeMarshWaterPoly.shp", SurveyKind.Shoreline, Found, 9),
        new("long-lake-depth-survey/longlake_depth.tif", SurveyKind.Raster, Found, 3416, -0.13, 2.04, Extent: new GeoExtent(45.8974, -64.1612, 45.9117, -64.1374)),
        new("ela-lake-227-transects/227_LA.csv", SurveyKind.Soundings, Found, 1033, -11.07, -0.48, Sense: DepthSense.NegativeDepth,
            Extent: new GeoExtent(49.68674, -93.69065, 49.689, -93.68702)),
        new("mendota-contours/mendota-contours-all.shp", SurveyKind.Contours, new SurveyOptions { Crs = "EPSG:3071" }, 89, 0, 24.384),
        new("mendota-contours/mendota-contours-all.shp", SurveyKind.Contours, Found, 89, 0, 24.384, Context: new SurveyContext(new GeoPoint(43.11, -89.41), null, null, null)),
        new("mendota-contours/mendota-contours-all.shp", SurveyKind.Contours, Found, Refusal: "does not say its coordinate system"),
        new("mendota-contours/wingra-contours-all.shp", SurveyKind.Contours, new SurveyOptions { Crs = "EPSG:3071" }, 11, 0, 3.66),
        new("mendota-contours/yld_study_lakes.shp", SurveyKind.Shoreline, Found, 12),
        new("mendota-contours/MendotaBathy.csv", SurveyKind.Soundings, new SurveyOptions { Crs = "EPSG:3071" }, 88, 0.9144, 24.384,
            Extent: new GeoExtent(43.07, -89.49, 43.15, -89.36)),
        new("sand-lakes-elevation-rasters/long_raster.tif", SurveyKind.Raster, new SurveyOptions { SurfaceElevationM = 336.0 }, 48022, 332.86, 342.47, Sense: DepthSense.Elevation),
        new("sand-lakes-elevation-rasters/psnt_raster.tif", SurveyKind.Raster, new SurveyOptions { SurfaceElevationM = 299.5 }, 22158, 291.14, 311.19, Sense: DepthSense.Elevation),
        new("sand-lakes-elevation-rasters/psnt_raster.tif", SurveyKind.Raster, Found, 22158, 291.14, 311.19, Sense: DepthSense.Elevation, Refusal: "does not say what its values"),
        new("caputh-lake-echosounder/20250123122332.sum", SurveyKind.Soundings, Found, 2609, 3.04, 9.26, Extent: new GeoExtent(52.341, 12.993, 52.344, 12.999)),
        new("caputh-lake-echosounder/20250117164416.sum", SurveyKind.Soundings, Found, 34, 2.47),
        new("caputh-lake-echosounder/all_edgepoints.csv", SurveyKind.Soundings, new SurveyOptions { Crs = "EPSG:25833" }, 56, 0, Extent: new GeoExtent(52.3337, 12.989, 52.3445, 13.0015)),
        new("caputh-lake-echosounder/waterbody.shp", SurveyKind.Shoreline, Found, 1, Extent: new GeoExtent(52.3337, 12.989, 52.3445, 13.0015)),
        new("caputh-lake-echosounder/waterlevel.csv", SurveyKind.Nothing, Found, Refusal: "position"),
        new("caputh-lake-echosounder/temperature-27.3.25.csv", SurveyKind.Nothing, Found, Refusal: "position"),
        new("harbour-depth-logger/260939.LOG", SurveyKind.Soundings, new SurveyOptions { DepthColumn = "3", Sense = DepthSense.Depth }, 1226, 0, 7.7, Extent: new GeoExtent(53.1608, 8.6381, 53.1621, 8.6405)),
        new("harbour-depth-logger/grohn26082021.csv", SurveyKind.Soundings, Found, 3665, 0, 32.6, Extent: new GeoExtent(53.1606, 8.6382, 53.1621, 8.6435)),
        new("harbour-depth-logger/tidal_data.csv", SurveyKind.Nothing, Found, Refusal: "rows of numbers"),
        new("vilas-county-lakes/vilasNHD.shp", SurveyKind.Shoreline, Found, 1006, Extent: new GeoExtent(45.8576, -90.0435, 46.2993, -88.9329)),
        new("ela-lakes-kml/Lake259.kml", SurveyKind.Shoreline, Found, 1),
        new("ela-lakes-kml/Lake379.kml", SurveyKind.Shoreline, Found, 1),
        new("reservoir-outline-and-terrain/talave_reservoir.geojson", SurveyKind.Shoreline, Found, Extent: new GeoExtent(38.5008, -1.9066, 38.5179, -1.8631)),
        new("reservoir-outline-and-terrain/topo_mita.nc", SurveyKind.Raster, new SurveyOptions { SurfaceElevationM = 1108.7 }, 111518, 1064.1, 1240.4, Sense: DepthSense.Elevation,
            Extent: new GeoExtent(-14.267, 28.968, -13.929, 29.195)),
        new("reservoir-outline-and-terrain/topo_mita.nc", SurveyKind.Raster, Found, 111518, 1064.1, 1240.4, Sense: DepthSense.Elevation, Refusal: "holds elevations"),
        // One of the log's 1,245 depths lies in its 78 s gap, without a fix near it.
        new("nmea-lake-depth-survey/depths.nmea", SurveyKind.Soundings, Found, 1244, 0.49, 40.3, Extent: new GeoExtent(44.7826, -63.8464, 44.8076, -63.8332)),
        new("nmea-archipelago-passage/plaka.log", SurveyKind.Soundings, Found, 7250, 1.43, 38.05, Extent: new GeoExtent(59.8557, 23.3273, 60.0845, 23.5391)),
        new("nmea-gps-coldboot-corrupt/gp-320fw-2019-04-07-coldboot.log", SurveyKind.TrackOnly, Found, Refusal: "no depths"),
        .. new[] { "cerknicko-jezero", "cerknicko-without-times", "cerknicko-jezero-without-elevations", "korita-zbevnica", "unicode", "unicode_with_bom",
            "gpx1.1_with_extensions", "gpx1.0_with_all_fields", "track-with-empty-segment", "track-with-extremes", "track_with_speed" }
            .Select(n => new SurveyCase($"gpx-odd-files/{n}.gpx", SurveyKind.TrackOnly, Found, Refusal: "no depths")),
        new("gpx-boat-passage/gomera-galletas.gpx", SurveyKind.TrackOnly, Found, 139, Refusal: "no depths"),
        new("odd-shapefiles/AllNulls.shp", SurveyKind.Shoreline, Found, 1, Refusal: ""),
        new("odd-shapefiles/UnifiedChecksMaterialNullInMiddle.shp", SurveyKind.Shoreline, Found, Refusal: ""),
        new("odd-shapefiles/shape_PointZM.shp", SurveyKind.Soundings, Found, Refusal: ""),
        new("odd-shapefiles/crustal_test_bugged.shp", SurveyKind.Shoreline, Found, Refusal: ""),
    ];
}
