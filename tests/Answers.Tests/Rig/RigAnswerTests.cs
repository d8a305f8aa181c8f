using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Rig;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Tests.Rig;

public class RigAnswerTests
{
    private static RigRequest ByHand => new() { DepthM = 9.144, SpeedMps = 0.65 * Speed.MpsPerMph };

    [Fact]
    public void By_hand_without_any_lake_it_says_weight_line_out_fall_and_angle_and_what_it_assumed()
    {
        RigReply reply = RigAnswer.Of(ByHand);
        RigDocument document = RigDocuments.Of(reply);
        Assert.InRange(document.WeightOz, 0.5, 1.0);
        Assert.Equal(document.WeightOz * 28.349523125, document.WeightG, 0.01);
        Assert.Equal(2 * (9.144 + 0.6), document.LineOutM, 0.01);
        Assert.InRange(document.FallS!.Value, 7, 16);
        Assert.InRange(document.LineAngleDeg, 5, 60);
        Assert.True(document.Holds);
        Assert.Equal(reply.TableDepthsM.Count * reply.TableSpeedsMps.Count, document.Table.Count);
        Assert.Contains(document.Assumed, a => a.Contains("15 lb fluorocarbon", StringComparison.Ordinal));
        Assert.StartsWith("Tie on ", document.Words[0], StringComparison.Ordinal);
        Assert.StartsWith("Because at 0.7 mph in 30 ft", document.Words[1], StringComparison.Ordinal);
        Assert.Contains(document.Cautions, c => c.Contains("Lead is not allowed everywhere", StringComparison.Ordinal));
    }

    [Fact]
    public void Document_prints_the_keys_that_scripts_rely_on()
    {
        string json = JsonSerializer.Serialize(RigDocuments.Of(RigAnswer.Of(ByHand)), AnswersJson.Default.RigDocument);
        using JsonDocument read = JsonDocument.Parse(json);
        foreach (string key in new[] { "weight_g", "weight_oz", "line_out_m", "fall_s", "line_angle_deg", "table", "words", "cautions", "assumed", "shape" })
            Assert.True(read.RootElement.TryGetProperty(key, out _), key);
        JsonElement cell = read.RootElement.GetProperty("table")[0];
        foreach (string key in new[] { "depth_m", "speed_mps", "weight_g" }) Assert.True(cell.TryGetProperty(key, out _), key);
    }

    [Fact]
    public void Metric_words_speak_grams_and_metres_and_never_feet()
    {
        RigReply reply = RigAnswer.Of(ByHand with { Units = UnitSystem.Metric });
        IReadOnlyList<string> words = RigWords.Of(reply);
        Assert.Matches("^Tie on [0-9]+ g\\.$", words[0]);
        Assert.DoesNotContain(words, w => w.Contains(" ft", StringComparison.Ordinal) || w.Contains("mph", StringComparison.Ordinal) || w.Contains(" oz", StringComparison.Ordinal));
    }

    [Fact]
    public void Owned_jigs_are_chosen_before_the_trades_sizes()
    {
        Tackle box = new([Jig.Usual(0.010) with { Name = "small" }, Jig.Usual(0.035, JigMaterial.Tungsten) with { Name = "big" }],
            [FishingLine.OfPoundsWeight(LineMaterial.Braid, 30), FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 12)], [],
            [new Rod("light", 2.0, 0.005, 0.020)]);
        RigReply reply = RigAnswer.Of(ByHand with { Tackle = box });
        Assert.Equal("big", reply.Choice.Chosen.Jig.Name);
        Assert.Equal("12 lb fluorocarbon", reply.Line.Name);
        IReadOnlyList<string> cautions = RigCautions.Of(reply);
        Assert.Contains(cautions, c => c.Contains("more than your rods are rated for", StringComparison.Ordinal));
        Assert.DoesNotContain(cautions, c => c.Contains("Lead is not", StringComparison.Ordinal));
        Assert.Equal(2, reply.Lines.Count);
    }

    [Fact]
    public void Too_fast_says_so_and_does_not_pretend()
    {
        RigReply reply = RigAnswer.Of(ByHand with { DepthM = 18, SpeedMps = 1.3 });
        Assert.False(RigDocuments.Of(reply).Holds);
        Assert.StartsWith("Nothing here holds the bottom", RigWords.Of(reply)[0], StringComparison.Ordinal);
        Assert.Contains(RigCard.Of(reply).Rows, r => r.Cells.Contains("too fast"));
    }

    [Fact]
    public void Card_has_a_head_a_row_a_depth_and_a_cell_a_speed()
    {
        RigReply reply = RigAnswer.Of(ByHand with { NearTimber = true });
        RigCard card = RigCard.Of(reply);
        Assert.Equal(reply.TableDepthsM.Count, card.Rows.Count);
        Assert.All(card.Rows, r => Assert.Equal(card.SpeedHeads.Count, r.Cells.Count));
        Assert.Contains(card.Cautions, c => c.StartsWith("Brush or timber", StringComparison.Ordinal));
    }

    [Fact]
    public void Weight_asked_about_is_worked_out_beside_the_chosen_one()
    {
        RigReply reply = RigAnswer.Of(ByHand with { AskedKg = 0.25 * Mass.KilogramsPerOunce });
        Assert.NotNull(reply.Asked);
        Assert.True(reply.Asked.HoldsChance < reply.Choice.Chosen.HoldsChance);
        Assert.Contains(RigWords.Of(reply), w => w.StartsWith("1/4 oz stays down", StringComparison.Ordinal));
    }

    [Fact]
    public void Nonsense_is_refused_with_a_sentence()
    {
        RefusedException e = Assert.Throws<RefusedException>(() => RigAnswer.Of(ByHand with { DepthM = 900 }));
        Assert.Equal("The depth is 900.0 m; rigs are worked out from 0.3 m to 100.0 m: check the number and its unit.", e.Finding.Say(UnitSystem.Metric));
        Assert.Equal("Die Tiefe ist 2952,8 ft; Montagen werden von 1,0 ft bis 328,1 ft gerechnet: die Zahl und ihre Einheit prüfen.", e.Finding.Say(UnitSystem.Feet.In(Sentences.SpeechFor("de"))));
    }
}
