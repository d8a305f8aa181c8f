using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Surveys;
using SecondShore.TestKit;

namespace SecondShore.Formats.Tests.Surveys;

public class NetCdfTests
{
    [Theory]
    [InlineData("pond-classic.nc", "NetCDF", true)]
    [InlineData("pond-4.nc", "NetCDF 4", true)]
    [InlineData("pond.bag", "BAG", true)]
    [InlineData("pond-latest.nc", "NetCDF 4", false)]
    [InlineData("pond-dense.nc", "NetCDF 4", false)]
    public void The_pond_is_read_as_its_writer_filed_it(string name, string format, bool inMetres)
    {
        // Two of its files name no unit and lie where feet are as likely: the user says it.
        SurveyImport import = Read(SurveySamples.PondFile(name), Path.GetExtension(name), new SurveyOptions { Unit = inMetres ? DepthUnit.Metres : null });
        SurveyUnderstanding understood = import.Understanding!;
        Assert.Equal((format, SurveyKind.Raster, inMetres ? DepthUnit.Metres : DepthUnit.Feet), (understood.Format, understood.Kind, understood.Unit));
        Assert.Equal(inMetres ? DepthSense.NegativeDepth : DepthSense.Depth, understood.Sense);
        SurveyRaster raster = Assert.Single(import.Survey!.Rasters);
        Assert.Equal((30, 20), (raster.Columns, raster.Rows));
        int wet = 0;
        for (int i = 0; i < raster.DepthM.Length; i++)
        {
            double column = i % 30, row = RowFromNorth(raster, i / 30), u = (column - 14.5) / 14, v = (row - 9.5) / 9;
            if ((u * u) + (v * v) > 1) { Assert.True(float.IsNaN(raster.DepthM[i])); continue; }
            Assert.Equal(((8 * (1 - (u * u) - (v * v))) + (0.05 * column)) * (inMetres ? 1 : 0.3048), raster.DepthM[i], 0.001);
            wet++;
        }

        Assert.Equal(400, wet);
    }

    [Theory]
    [InlineData("pond-classic.nc")]
    [InlineData("pond-4.nc")]
    [InlineData("pond.bag")]
    public void The_pond_lies_where_its_corner_says(string name)
    {
        SurveyRaster raster = Read(SurveySamples.PondFile(name), Path.GetExtension(name), new SurveyOptions { Unit = DepthUnit.Metres }).Survey!.Rasters[0];
        // Centre of the south-west cell, 480002.5 E 4600002.5 N of UTM zone 17, by an independent projection.
        GeoPoint corner = raster.Placement.PlaceOf(0, RowFromNorth(raster, 19) == 19 ? 19 : 0);
        Assert.Equal(41.551437, corner.LatDeg, 0.00001);
        Assert.Equal(-81.239788, corner.LonDeg, 0.00001);
    }

    [Fact]
    public void A_grid_filed_with_its_columns_first_is_laid_the_right_way_round()
    {
        double[] values = [.. Enumerable.Range(0, 12).Select(i => 1.0 + i)];
        SurveyImport import = Read(Even(4, 3).Array("depth", ["lon", "lat"], values, ("units", "m")).Build());
        SurveyRaster raster = import.Survey!.Rasters[0];
        // Filed as four columns of three: the second value lies north of the first.
        GeoPoint first = raster.Placement.PlaceOf(0, 0), second = raster.Placement.PlaceOf(1, 0);
        Assert.Equal((2f, first.LonDeg), (raster.DepthM[1], second.LonDeg));
        Assert.True(second.LatDeg > first.LatDeg);
    }

    [Fact]
    public void Of_several_grids_the_one_named_for_depth_is_read_and_the_user_may_name_another()
    {
        byte[] file = Even(4, 3).Array("quality", ["lat", "lon"], new double[12]).Array("water_top", ["lat", "lon"], [.. Enumerable.Repeat(2.0, 12)])
            .Array("depth", ["lat", "lon"], [.. Enumerable.Repeat(5.0, 12)], ("units", "m")).Build();
        Assert.Equal(5f, Read(file).Survey!.Rasters[0].DepthM[0]);
        Assert.Equal(2f, Read(file, options: new SurveyOptions { DepthColumn = "water_top", Sense = DepthSense.Depth, Unit = DepthUnit.Metres }).Survey!.Rasters[0].DepthM[0]);
        Assert.Contains("it holds quality, water_top, depth", Refusal(Read(file, options: new SurveyOptions { DepthColumn = "bed" })));
    }

    [Fact]
    public void Soundings_in_lists_of_one_length_are_read()
    {
        double[] along = [.. Enumerable.Range(0, 50).Select(i => (double)i)];
        byte[] file = new ClassicNetCdfBuilder().Dimension("ping", 50).Array("time", ["ping"], along)
            .Array("lon", ["ping"], [.. along.Select(i => -81 + (0.0001 * (i % 7)))]).Array("lat", ["ping"], [.. along.Select(i => 41 + (0.0001 * i))])
            .Array("depth", ["ping"], [.. along.Select(i => 2 + (0.1 * i))], ("units", "m")).Build();
        SurveyImport import = Read(file);
        SoundingSet set = Assert.Single(import.Survey!.Soundings);
        Assert.Equal(50, set.DepthM.Length);
        Assert.Equal(6.9, set.DepthM[49], 1e-6);
        Assert.Equal(41.0049, set.LatDeg[49], 1e-9);
        Assert.Equal(SurveyKind.Soundings, import.Understanding!.Kind);
    }

    [Fact]
    public void What_cannot_be_told_is_refused_with_what_to_do()
    {
        byte[] unnamed = Even(4, 3).Array("a", ["lat", "lon"], new double[12]).Array("b", ["lat", "lon"], new double[12]).Build();
        Assert.Contains("set survey.depth_column", Refusal(Read(unnamed)));
        byte[] uneven = new ClassicNetCdfBuilder().Dimension("lon", 3).Dimension("lat", 2).Array("lon", ["lon"], [-81, -80.9, -80.5]).Array("lat", ["lat"], [41, 41.1])
            .Array("depth", ["lat", "lon"], new double[6]).Build();
        Assert.Contains("not evenly spaced", Refusal(Read(uneven)));
        byte[] placeless = new ClassicNetCdfBuilder().Dimension("a", 3).Dimension("b", 2).Array("depth", ["b", "a"], new double[6]).Build();
        Assert.Contains("nothing in the file tells where", Refusal(Read(placeless)));
        byte[] gridless = new ClassicNetCdfBuilder().Dimension("lon", 3).Array("lon", ["lon"], [-81, -80.9, -80.5]).Build();
        Assert.Contains("holds neither a grid", Refusal(Read(gridless)));
        byte[] huge = new ClassicNetCdfBuilder().Dimension("lon", 200_000).Dimension("lat", 200_000).Array("depth", ["lat", "lon"], []).Build();
        Assert.Contains("200000 x 200000", Refusal(Read(huge)));
    }

    [Theory]
    [InlineData(300, true)]
    [InlineData(300.2, true)]
    [InlineData(296, false)]
    public void A_terrain_that_shows_the_water_instead_of_its_bed_is_said_to(double levelM, bool said)
    {
        // A lake level at 300 m in a valley that falls on below its dam.
        double[] heights = [.. Enumerable.Range(0, 1600).Select(i => i % 40 < 20 ? 300.0 : 270 + (i % 40) + (i / 40 * 0.01))];
        byte[] file = Even(40, 40).Array("elevation", ["lat", "lon"], heights, ("units", "m")).Build();
        SurveyImport import = Read(file, options: new SurveyOptions { Sense = DepthSense.Elevation, SurfaceElevationM = levelM });
        Assert.Equal(said, import.Problems.Any(p => p.Message.Contains("shows the water, not its bed")));
    }

    [Fact]
    public async Task A_table_of_contents_that_runs_in_circles_ends()
    {
        byte[] bytes = SurveySamples.PondFile("pond.bag");
        // The first fact about the root group becomes: more facts stand here, at this very place.
        int root = (int)BitConverter.ToInt64(bytes, 64), first = root + 16;
        Assert.Equal(1, bytes[root]);
        byte[] fact = [16, 0, 16, 0, 0, 0, 0, 0, .. BitConverter.GetBytes((long)first), .. BitConverter.GetBytes(24L)];
        fact.CopyTo(bytes, first);
        Task<SurveyImport> reading = Task.Run(() => Read(bytes, ".bag"));
        // Generous: it takes a fraction of a second, or for ever.
        Assert.Same(reading, await Task.WhenAny(reading, Task.Delay(TimeSpan.FromMinutes(1))));
        Assert.Contains("its table of contents cannot be followed", Refusal(await reading));
    }

    private static ClassicNetCdfBuilder Even(int columns, int rows) => new ClassicNetCdfBuilder().Dimension("lon", columns).Dimension("lat", rows)
        .Array("lon", ["lon"], [.. Enumerable.Range(0, columns).Select(i => -81 + (0.001 * i))], ("units", "degrees_east"))
        .Array("lat", ["lat"], [.. Enumerable.Range(0, rows).Select(i => 41 + (0.001 * i))], ("units", "degrees_north"));

    private static int RowFromNorth(SurveyRaster raster, int row) =>
        raster.Placement.PlaceOf(0, 1).LatDeg > raster.Placement.PlaceOf(0, 0).LatDeg ? raster.Rows - 1 - row : row;

    private static string Refusal(SurveyImport import)
    {
        Assert.Null(import.Survey);
        return import.Problems.Single(p => p.Severity == ProblemSeverity.Error).Message;
    }

    private static SurveyImport Read(byte[] bytes, string ending = ".nc", SurveyOptions? options = null)
    {
        string name = "survey" + ending;
        return SurveyImporter.Read(new SurveySource(new MemoryFiles("pond").With(name, bytes), name), options ?? new SurveyOptions(), SurveyContext.Nothing);
    }
}
