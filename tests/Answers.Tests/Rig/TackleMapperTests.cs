using SecondShore.Answers.Rig;
using SecondShore.Engine.Rig;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Tests.Rig;

public class TackleMapperTests
{
    [Fact]
    public void Tackle_is_mapped_and_what_is_not_understood_is_said()
    {
        TackleDocument document = new()
        {
            Jigs =
            [
                new JigItem { Name = "a", WeightG = 14, Material = "tungsten", Head = "slim", Skirt = "none" },
                new JigItem { Name = "b", WeightG = 21, Material = "mithril", Head = "odd" },
                new JigItem { Name = "gone", WeightG = 28, Count = 0 },
            ],
            Lines =
            [
                new LineItem { Name = "l", Kind = "braid", StrengthN = 133 },
                new LineItem { Name = "thin air" },
            ],
            Trailers = [new TrailerItem { Name = "t", Kind = "flapping", WeightG = 7 }],
        };
        List<Finding> assumed = [];
        Tackle tackle = TackleMapper.Map(document, assumed);
        Assert.Equal(2, tackle.Jigs.Count);
        Assert.Equal(JigMaterial.Tungsten, tackle.Jigs[0].Material);
        Assert.Equal(0, tackle.Jigs[0].SkirtDragAreaM2);
        Assert.Equal(JigMaterial.Lead, tackle.Jigs[1].Material);
        Assert.InRange(tackle.Lines.Single().DiameterM, 0.00025, 0.00031);
        Assert.Equal(0.007, tackle.Trailers[0].MassKg, 1e-12);
        Assert.Contains(assumed, a => a.Say(UnitSystem.Metric).Contains("mithril", StringComparison.Ordinal));
        Assert.Contains(assumed, a => a.Say(UnitSystem.Metric).Contains("'odd'", StringComparison.Ordinal));
        Assert.Contains(assumed, a => a.Say(UnitSystem.Metric).Contains("thin air", StringComparison.Ordinal));
        Assert.Same(Tackle.None, TackleMapper.Map(null, assumed));
    }

    [Fact]
    public void Trailer_areas_measured_diameter_and_modulus_reach_the_engine()
    {
        TackleDocument document = new()
        {
            Jigs =
            [
                new JigItem { Name = "a", WeightG = 14, SkirtDragAreaM2 = 0.9e-4, Trailer = "Craw" },
                new JigItem { Name = "b", WeightG = 14, Trailer = "bulky" },
                new JigItem { Name = "c", WeightG = 14, Trailer = "cabbage" },
                new JigItem { Name = "cork", WeightG = 14, Trailer = "float" },
            ],
            Trailers =
            [
                new TrailerItem { Name = "craw", Kind = "slim", DragAreaM2 = 1.7e-4, DensityKgPerM3 = 1200 },
                new TrailerItem { Name = "float", DensityKgPerM3 = 700, WeightG = 90 },
            ],
            Lines = [new LineItem { Name = "l", DiameterM = 0.0003, IsDiameterMeasured = true, ModulusPa = 3e9 }],
            Rods = [new RodItem { Name = "r", LightestLureG = 7, HeaviestLureG = 28 }],
        };
        List<Finding> assumed = [];
        Tackle tackle = TackleMapper.Map(document, assumed);
        Assert.Equal(["a", "b", "c"], tackle.Jigs.Select(j => j.Name));
        Assert.Equal(0.9e-4, tackle.Jigs[0].SkirtDragAreaM2);
        Assert.Equal(1.7e-4, tackle.Jigs[0].Trailer.DragAreaM2);
        Assert.Equal(1200, tackle.Jigs[0].Trailer.DensityKgPerM3);
        Assert.Equal(Trailer.Bulky, tackle.Jigs[1].Trailer);
        Assert.Equal(Trailer.Slim, tackle.Jigs[2].Trailer);
        Assert.Contains(assumed, a => a.Say(UnitSystem.Metric).Contains("'cabbage'", StringComparison.Ordinal));
        Assert.Contains(assumed, a => a.Say(UnitSystem.Metric).Contains("cork would float", StringComparison.Ordinal));
        Assert.True(tackle.Lines[0].DiameterMeasured);
        Assert.Equal(3e9, tackle.Lines[0].ModulusPa);
        Assert.Equal(0.028, tackle.Rods[0].HeaviestLureKg, 1e-12);
    }

    [Fact]
    public void Observations_move_the_drag_of_their_jig_alone_and_are_said_each_time()
    {
        JigObservationItem left = new() { Kind = "leaves_bottom", DepthM = 9.144, SpeedMps = 0.313, LineOutM = 18.288, LineName = "deep" };
        TackleDocument document = new()
        {
            Jigs =
            [
                new JigItem { Name = "seen", WeightG = 21.26, Observations = [left, new JigObservationItem { Kind = "fall", DepthM = 9, Seconds = 14 }] },
                new JigItem { Name = "unseen", WeightG = 21.26 },
                new JigItem { Name = "odd", WeightG = 21.26, Observations = [left with { LineName = "rope" }] },
            ],
            Lines = [new LineItem { Name = "first", StrengthN = 80 }, new LineItem { Name = "deep", StrengthN = 66.7 }],
        };
        List<Finding> once = [], twice = [];
        Tackle tackle = TackleMapper.Map(document, once);
        Assert.Same(tackle, TackleMapper.Map(document, twice));
        Assert.Equal(once, twice);
        Assert.True(tackle.Jigs[0].Belief.JigLnFactor > 0.2);
        Assert.True(tackle.Jigs[0].Belief.JigLnSd < RigBelief.Prior.JigLnSd);
        Assert.Equal(RigBelief.Prior, tackle.Jigs[1].Belief);
        Assert.Contains(once, a => a.Say(UnitSystem.Metric).StartsWith("Jig seen: 2 observations of yours put its own drag at ", StringComparison.Ordinal));
        Assert.Contains(once, a => a.Say(UnitSystem.Metric).Contains("line 'rope' is not one of lines; first was taken", StringComparison.Ordinal));
    }
}
