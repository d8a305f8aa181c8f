using System.Text;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Open.Lakes;
using SecondShore.Open.Outlines;
using SecondShore.TestKit;

namespace SecondShore.Open.Tests;

public class LakeDraftTests
{
    private static readonly DateTimeOffset Now = new(2026, 10, 6, 12, 0, 0, TimeSpan.Zero);
    private static readonly GeoPoint Place = new(OpenMapStandIn.LatDeg, OpenMapStandIn.LonDeg);

    private static LakeOutline Ferncombe => OutlineReply.Read(
        Encoding.UTF8.GetBytes(OpenMapStandIn.Map($"relation({OpenMapStandIn.FerncombeId});out geom;")),
        new FoundWater(true, OpenMapStandIn.FerncombeId, "Ferncombe Water", default), OpenServices.Default);

    [Fact]
    public void A_draft_is_a_lake_folder_that_reads_back_as_it_was_told()
    {
        LakeDraft draft = new("Ferncombe Water", Place)
        {
            ElevationM = 241,
            TimeZoneId = "America/Detroit",
            Outline = Ferncombe,
            DeepestM = 18.4,
            Dam = new GeoPoint(44.722, -84.299),
            SecchiM = 2.1,
            Units = DisplayUnits.UsCustomary,
        };
        LakeFolder lake = LakeFolderReader.Read(LakeDraftFiles.Of(draft, Now));
        Assert.DoesNotContain(lake.Problems, p => p.Severity != ProblemSeverity.Note);
        Assert.True(lake.IsUsable);
        Assert.Equal(("Ferncombe Water", 241.0, "America/Detroit", 18.4, 2.1, true),
            (lake.Site.Name, lake.Site.ElevationM, lake.Site.TimeZoneId, lake.Site.MaxDepthM!.Value, lake.Site.SecchiM!.Value,
                lake.Site.IsReservoir));
        Assert.Equal(draft.Dam, lake.Document.Dam);
        Assert.Equal(Ferncombe.AreaM2, lake.Site.SurfaceAreaM2!.Value, 0.6);
        Assert.Equal([24, 24], Assert.Single(lake.Shoreline!.Polygons).Islands.Select(i => i.Count));
        Assert.True(Ferncombe.Holds(lake.Site.Position));
    }

    [Fact]
    public void The_maps_licence_travels_with_the_outline_and_stands_in_the_folder()
    {
        ILakeFiles files =
            LakeDraftFiles.Of(
            new LakeDraft("x", Place) { Outline = Ferncombe, PlaceAttribution = OpenServices.Default.PlaceAttribution }, Now);
        foreach (string file in (string[])["shoreline.geojson", "lake.json", "sources.md"])
        {
            string text = Encoding.UTF8.GetString(files.Read(file));
            Assert.Contains("OpenStreetMap contributors, Open Database License (ODbL)", text, StringComparison.Ordinal);
            Assert.Contains("relation/7100", text, StringComparison.Ordinal);
        }

        Assert.Contains("GeoNames", Encoding.UTF8.GetString(files.Read("sources.md")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_on_an_island_or_ashore_gives_way_to_one_on_the_water()
    {
        GeoPoint island =
            new(OpenMapStandIn.LatDeg - (0.3 * OpenMapStandIn.RadiusLatDeg), OpenMapStandIn.LonDeg - (0.4 * OpenMapStandIn.RadiusLonDeg));
        Assert.False(Ferncombe.Holds(island));
        LakeDraft draft = new("x", island) { Outline = Ferncombe };
        Assert.True(Ferncombe.Holds(LakeFolderReader.Read(LakeDraftFiles.Of(draft, Now)).Site.Position));
        Assert.Contains("The place given does not lie on the outline's water: one in its middle is taken.", LakeDraftFiles.Guesses(draft)
            .Say(UnitSystem.Metric));
    }

    [Fact]
    public void A_round_stand_in_has_the_area_told_and_says_what_it_is()
    {
        LakeDraft draft = new("x", Place) { Outline = LakeOutline.Round(Place, 1_300_000), DeepestM = 9, IsReservoir = false };
        LakeFolder lake = LakeFolderReader.Read(LakeDraftFiles.Of(draft, Now));
        LakeOutline read = LakeOutline.Of(lake.Shoreline!.Polygons, "", "")!;
        Assert.Equal(1_300_000, read.AreaM2, 200.0);
        Assert.Equal(["The outline is only a round one of the area told: where the shore runs is not known."], LakeDraftFiles.Guesses(draft)
            .Say(UnitSystem.Metric));
        Assert.Contains("\"stand_in\": true", Encoding.UTF8.GetString(lake.Files.Read("shoreline.geojson")), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_guess_is_said_and_nothing_else()
    {
        IReadOnlyList<string> all = LakeDraftFiles.Guesses(new LakeDraft("x", Place)).Say(UnitSystem.Metric);
        Assert.Equal(3, all.Count);
        Assert.Contains(all, s => s.StartsWith("There is no outline", StringComparison.Ordinal));
        Assert.Contains(all, s => s.StartsWith("The deepest water is not known", StringComparison.Ordinal));
        Assert.Contains(all, s => s.StartsWith("Whether a dam holds the lake is not known", StringComparison.Ordinal));
        Assert.Empty(LakeDraftFiles.Guesses(new LakeDraft("x", Place) { Outline = Ferncombe, DeepestM = 3, Dam = Place }));
    }

    [Fact]
    public void A_clarity_in_a_word_is_a_wider_guess_than_a_reading()
    {
        LakeFolder word =
            LakeFolderReader.Read(LakeDraftFiles.Of(new LakeDraft("x", Place) { Clarity = WaterClarity.Stained, DeepestM = 9 }, Now));
        LakeFolder reading = LakeFolderReader.Read(LakeDraftFiles.Of(new LakeDraft("x", Place) { SecchiM = 1.5, DeepestM = 9 }, Now));
        Assert.Equal(reading.Site.SecchiM, word.Site.SecchiM);
        Assert.True(word.Site.SecchiLogSd > 0.25);
        Assert.Null(reading.Site.SecchiLogSd);
        Assert.Contains(word.Assumed, a => a.Say(UnitSystem.Metric)
            .StartsWith("The water is told of as stained: a Secchi depth of about 1.5 m", StringComparison.Ordinal));
        LakeFolder odd = LakeFolderReader.Read(new MemoryFiles("x").With("lake.json", """{"latitude_deg":44,"longitude_deg":-84,"clarity":"soup"}"""));
        Assert.Contains(odd.Problems, p => p.Say(UnitSystem.Metric)
            .Contains("clarity is 'soup' where clear, stained or muddy is expected", StringComparison.Ordinal));
    }
}
