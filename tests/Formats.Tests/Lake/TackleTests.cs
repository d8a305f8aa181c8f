using CsCheck;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Writers;
using SecondShore.TestKit;

namespace SecondShore.Formats.Tests.Lake;

public class TackleTests
{
    private const string Full = """
        {
          "jigs": [ { "name": "football", "weight_oz": 0.75, "material": "tungsten", "head": "broad",
            "skirt_drag_area_cm2": 1.1, "trailer": "craw",
            "observations": [
              { "kind": "leaves_bottom", "depth_ft": 30, "speed_mph": 0.7, "line_out_ft": 60, "line": "deep",
                "current_mph": -0.1, "time": "2026-10-04T17:00:00Z", "note": "flat" },
              { "kind": "fall", "depth_m": 9, "seconds": 11.2 } ] } ],
          "trailers": [ { "name": "craw", "kind": "slim", "drag_area_cm2": 1.4, "density_kg_m3": 1100 } ],
          "lines": [ { "name": "deep", "kind": "fluorocarbon", "diameter_mm": 0.33,
            "diameter_measured": true, "strength_lb": 15, "modulus_gpa": 2.2 } ],
          "rods": [ { "name": "heavy", "lure_min_oz": 0.375, "lure_max_oz": 1.25 } ]
        }
        """;

    [Fact]
    public void Observations_drag_areas_trailer_measured_diameter_and_modulus_are_read_in_SI()
    {
        (TackleDocument tackle, IReadOnlyList<Problem> problems) = Read(Full);
        Assert.Empty(problems);
        JigItem jig = tackle.Jigs[0];
        Assert.Equal(1.1e-4, jig.SkirtDragAreaM2!.Value, 1e-12);
        Assert.Equal("craw", jig.Trailer);
        JigObservationItem left = jig.Observations[0], fall = jig.Observations[1];
        Assert.Equal("leaves_bottom", left.Kind);
        Assert.Equal(9.144, left.DepthM, 1e-9);
        Assert.Equal(0.7 * 0.44704, left.SpeedMps!.Value, 1e-9);
        Assert.Equal(18.288, left.LineOutM!.Value, 1e-9);
        Assert.Equal(-0.044704, left.CurrentMps!.Value, 1e-9);
        Assert.Equal("deep", left.LineName);
        Assert.Equal(11.2, fall.Seconds);
        Assert.Equal(1.4e-4, tackle.Trailers[0].DragAreaM2!.Value, 1e-12);
        Assert.Equal(1100, tackle.Trailers[0].DensityKgPerM3);
        Assert.True(tackle.Lines[0].IsDiameterMeasured);
        Assert.Equal(2.2e9, tackle.Lines[0].ModulusPa);
        Assert.Equal(35.44, tackle.Rods[0].HeaviestLureG!.Value, 0.01);
    }

    [Fact]
    public void Any_tackle_comes_back_from_its_text_to_the_last_bit() => Gens.Tackle.Hold(tackle =>
    {
        (TackleDocument back, IReadOnlyList<Problem> problems) = Read(TackleJson.Text(tackle));
        Assert.Empty(problems);
        Assert.Equivalent(tackle, back, strict: true);
        Assert.Equal(TackleJson.Text(tackle), TackleJson.Text(back));
    }, 300);

    [Theory]
    [InlineData("""{ "kind": "wondered", "depth_m": 9 }""", "jigs[1].observations[1]: kind is 'wondered' where one of leaves_bottom, holds_bottom, off_bottom, fall is expected")]
    [InlineData("""{ "kind": "leaves_bottom", "depth_ft": 30, "speed_mph": 0.7 }""", "needs line_out_m or line_out_ft")]
    [InlineData("""{ "kind": "fall", "depth_ft": 30 }""", "needs seconds")]
    [InlineData("""{ "kind": "fall", "depth_ft": 3000, "seconds": 11 }""", "jigs[1].observations[1].depth_ft is 3000 where 0.984 to 328.084 is possible")]
    [InlineData("""{ "kind": "holds_bottom", "depth_ft": 30, "speed_mph": 0.7, "line_out_ft": 6 }""", "line_out is 1.83 m where at least the depth, 9.14 m, is expected")]
    [InlineData("""{ "kind": "fall", "depth_ft": 30, "seconds": "soon" }""", "jigs[1].observations[1].seconds is '\"soon\"' where a number is expected")]
    [InlineData("7", "jigs[1].observations[1] is '7' where an object is expected")]
    public void A_bad_observation_is_named_in_one_sentence_and_the_jig_stays(string observation, string said)
    {
        (TackleDocument tackle, IReadOnlyList<Problem> problems) = Read($$"""{ "jigs": [ { "name": "a", "weight_g": 14, "observations": [ {{observation}} ] } ] }""");
        Assert.Single(tackle.Jigs);
        Assert.Empty(tackle.Jigs[0].Observations);
        Assert.Contains(problems, p => p.File == "tackle.json" && p.Severity == ProblemSeverity.Warning && p.What.Say(UnitSystem.Metric).Contains(said, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("\"lines\": [ { \"name\": \"a\", \"strength_lb\": 15, \"modulus_gpa\": 2000 } ]", "lines[1].modulus_gpa is 2000 where 0.1 to 300 is possible")]
    [InlineData("\"lines\": [ { \"name\": \"a\", \"strength_lb\": 15, \"diameter_measured\": \"yes\" } ]", "lines[1].diameter_measured is '\"yes\"' where true or false is expected")]
    [InlineData("\"trailers\": [ { \"name\": \"a\", \"drag_area_cm2\": -1 } ]", "trailers[1].drag_area_cm2 is -1 where 0 to 20 is possible")]
    [InlineData("\"jigs\": [ { \"name\": \"a\", \"weight_g\": 14, \"skirt_drag_area_cm2\": 400 } ]", "jigs[1].skirt_drag_area_cm2 is 400 where 0 to 20 is possible")]
    [InlineData("\"jigs\": [ { \"name\": \"a\", \"weight_oz\": 900 } ]", "jigs[1].weight_oz is 900")]
    public void A_bad_value_is_named_with_its_key_and_what_is_possible(string part, string said)
    {
        (_, IReadOnlyList<Problem> problems) = Read($"{{ {part} }}");
        Assert.Contains(problems, p => p.File == "tackle.json" && p.What.Say(UnitSystem.Metric).Contains(said, StringComparison.Ordinal));
    }

    [Fact]
    public void A_timed_drop_is_written_to_its_jig_and_nothing_else_changes()
    {
        ILakeFiles files = TackleEdits.WithDrop(new MemoryFiles("x").With("tackle.json", Full), "football", 8.5, 9.7, "deep", "2026-10-07T08:30:00-05:00");
        (TackleDocument before, TackleDocument after) = (Read(Full).Tackle, TackleEdits.Read(files)!);
        JigObservationItem drop = after.Jigs[0].Observations[^1];
        Assert.Equal(("fall", 8.5, 9.7, "deep", "2026-10-07T08:30:00-05:00"), (drop.Kind, drop.DepthM, drop.Seconds!.Value, drop.LineName, drop.Time));
        Assert.Equivalent(before, after with { Jigs = [after.Jigs[0] with { Observations = [.. after.Jigs[0].Observations.SkipLast(1)] }] }, strict: true);
        string said = Assert.Throws<RefusedException>(() => TackleEdits.WithDrop(files, "swim", 8.5, 9.7, "", "")).Finding.Say(UnitSystem.Metric);
        Assert.Contains("no jig called swim", said, StringComparison.Ordinal);
    }

    private static (TackleDocument Tackle, IReadOnlyList<Problem> Problems) Read(string text)
    {
        LakeFolder lake = LakeFolderReader.Read(new MemoryFiles("x").With("tackle.json", text));
        return (lake.Tackle!, [.. lake.Problems.Where(p => p.File == "tackle.json")]);
    }

    private static class Gens
    {
        private static readonly Gen<string> Name = Gen.String[Gen.Char["abc 1/2é\"\\"], 1, 8].Where(s => s.Trim().Length > 0);

        private static readonly Gen<JigObservationItem> Observation =
            from fall in Gen.Bool
            from depth in Gen.Double[0.3, 50]
            from speed in Gen.Double[0, 3]
            from extra in Gen.Double[1, 4]
            from seconds in Gen.Double[0.2, 3600]
            from line in Name
            select fall
                ? new JigObservationItem { Kind = "fall", DepthM = depth, Seconds = seconds, LineName = line }
                : new JigObservationItem { Kind = "holds_bottom", DepthM = depth, SpeedMps = speed, LineOutM = depth * extra, CurrentMps = speed - 1, Note = line };

        private static readonly Gen<JigItem> Jig =
            from name in Name
            from weight in Gen.Double[0.5, 1000]
            from area in Gen.Double[0, 0.002]
            from density in Gen.Double[2000, 20000]
            from count in Gen.Int[0, 9]
            from seen in Observation.Array[0, 3]
            select new JigItem { Name = name, WeightG = weight, SkirtDragAreaM2 = area, DensityKgPerM3 = density, Trailer = name, Count = count, Observations = seen };

        public static readonly Gen<TackleDocument> Tackle =
            from jigs in Jig.Array[0, 3]
            from name in Name
            from share in Gen.Double[0.03, 1]
            select new TackleDocument
            {
                Jigs = jigs,
                Trailers = [new TrailerItem { Name = name, DragAreaM2 = share * 0.002, WeightG = share * 90, DensityKgPerM3 = 900 + share }],
                Lines = [new LineItem { Name = name, DiameterM = share * 0.002, IsDiameterMeasured = share > 0.5, StrengthN = 5 + share, ModulusPa = share * 1e11, LengthM = 90 * (1 + share) }],
                Rods = [new RodItem { Name = name, LengthM = 1 + share, LightestLureG = share, HeaviestLureG = 40 * share, TipHeightM = share }],
            };
    }
}
