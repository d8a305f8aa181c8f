using System.Text;
using SecondShore.Answers.Rig;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.Engine.Rig;

namespace SecondShore.Desk.Tests;

public class RigBenchTests
{
    private static readonly string Box = """{ "jigs": [ { "name": "own", "weight_oz": 0.75 } ],"""
        + """ "lines": [ { "name": "deep", "kind": "fluorocarbon", "strength_lb": 15 } ] }""";

    // Each word and number set alone moves the answer where the command line's option does, and by as much.
    [Fact]
    public void The_bench_asks_what_the_command_line_asks()
    {
        RigMore more = new()
        {
            Head = "slim",
            Trailer = "bulky",
            Material = "tungsten",
            LineKind = "braid",
            Bottom = "rock",
            CurrentMps = 0.1,
            CrossMps = 0.05,
            TipM = 1.2,
            LineOutM = 30,
            WeightG = 21,
            Sure = 0.95,
            Timber = true,
        };
        RigView view = RigDesk.Answer(new RigAsk(9, 0.4, 13.6, More: more), null, UnitSystem.Metric);
        RigReply reply = RigAnswer.Of(new RigRequest
        {
            DepthM = 9,
            SpeedMps = 0.4,
            Line = FishingLine.OfPoundsWeight(LineMaterial.Braid, 30),
            Kind = Jig.Usual(0.014, JigMaterial.Tungsten) with { Head = HeadShape.Slim, Trailer = Trailer.Bulky },
            AnySize = true,
            Bottom = BottomKind.Rock,
            Current = CurrentProfile.Uniform(0.1, 0.05),
            TipHeightM = 1.2,
            LineOutM = 30,
            AskedKg = 0.021,
            Rule = new HoldRule(0.95, HoldRule.Usual.LeastShare, HoldRule.Usual.FeelShare),
            NearTimber = true,
            Units = UnitSystem.Metric,
            Samples = 60,
        });
        Assert.Equal(reply.Choice.LeastKg, view.LeastKg);
        Assert.Equal(reply.Choice.Chosen.FallS, view.FallS);
        Assert.Equal(RigWords.Of(reply), view.Words);
        Assert.Equal(RigCautions.Of(reply), view.Cautions);
        Assert.Contains(view.Words, w => w.StartsWith("21 g", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_left_open_is_the_usual()
    {
        RigView plain = RigDesk.Answer(new RigAsk(9, 0.27, 6.8), null, UnitSystem.Feet), open = RigDesk.Answer(new RigAsk(9, 0.27, 6.8, More: new RigMore()), null, UnitSystem.Feet);
        Assert.Equal(plain.Words, open.Words);
        Assert.Equal(plain.LeastKg, open.LeastKg);
    }

    [Fact]
    public void A_drop_timed_in_the_app_stands_in_the_box_and_corrects_the_jig()
    {
        LakeDesk desk = new(new KeptTray());
        Dictionary<string, byte[]> files = Bowl.Files();
        files["tackle.json"] = Encoding.UTF8.GetBytes(Box);
        desk.Lay("x", files);
        desk.Ask(new OpenLake([], Bowl.Noon));
        RigFor ask = new(new RigAsk(9, 0.27, 6.8));
        RigView before = desk.Ask(ask);
        desk.Ask(new TimeDrop("own", 9, before.FallS.P50 * 1.6, "2026-08-21T07:00:00-05:00"));
        RigView after = desk.Ask(ask);
        Assert.True(after.FallS.P50 > before.FallS.P50 * 1.2, $"{before.FallS.P50} to {after.FallS.P50} s");
        Assert.True(after.FallS.P90 - after.FallS.P10 < 1.6 * (before.FallS.P90 - before.FallS.P10));
    }
}
