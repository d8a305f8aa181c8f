using System.Text.Json;
using System.Xml.Linq;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Learn;
using SecondShore.Engine.Learn;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Tests.Learn;

public class LearnAnswerTests
{
    private const string Header = "time,kind,effort_min,count,spot,form,bottom_depth_m,step_depth_m,jig,trailer,colour,ate,bites,id,replaces,layer_depth_m\n";

    [Fact]
    public void A_haze_that_no_layer_of_the_lake_can_have_is_not_named_as_the_haze_seen()
    {
        LakeFolder lake = LearnLakes.With(Header
            + "2026-09-20T08:00,effort,30,,A,main_point,10,9,,,,,,e1,\n"
            + "2026-09-21T08:00,effort,30,,A,main_point,10,900,,,,,,e2,\n"
            + "2026-09-22T08:00,effort,30,,A,main_point,10,0.05,,,,,,e3,\n");
        Assert.Equal([9.0], LogMapper.Haze(lake with { Document = lake.Document with { MaxDepthM = 40 } }).Select(h => h.DepthM));
    }

    [Fact]
    public void Rows_become_entries_that_know_depth_off_the_layer_rig_and_form()
    {
        LakeFolder lake = LearnLakes.With(Header
            + "2026-09-20T08:00,effort,30,,A,main_point,10,9,drag 3/4,bulky craw,,,,e1,\n"
            + "2026-09-20T08:10,bite,,2,A,,,,,,,,,b1,\n"
            + "2026-09-20T09:00,effort,40,,B,hump,12,,drag 3/4,slim craw,,,3,e2,\n"
            + "2026-09-22T09:00,nothing,40,,B,hump,12,,,,,,,e3,,11\n");
        IReadOnlyList<LogEntry> entries = LogMapper.Entries(lake);
        LogEntry first = entries.First(e => e.Id == "e1");
        Assert.Equal("main-lake point", first.Form);
        Assert.Equal(1.0, first.BelowThermoclineM!.Value, 9);
        Assert.Equal(21.3, first.Rig.WeightG!.Value, 6);
        Assert.Equal("brown", first.Rig.Colour);
        // The second stretch saw no haze: the haze of an hour before still holds; two days later it does not, the reckoned layer does.
        Assert.Equal(3.0, entries.First(e => e.Id == "e2").BelowThermoclineM!.Value, 9);
        Assert.Equal(1.0, entries.First(e => e.Id == "e3").BelowThermoclineM!.Value, 9);
        (IReadOnlyList<EffortSpan> spans, IReadOnlyList<LogEntry> without) = EffortSpans.Of(entries);
        Assert.Empty(without);
        Assert.Equal([2, 3, 0], spans.Select(s => s.Bites));
    }

    [Fact]
    public void Two_bites_are_called_two_bites_and_nothing_is_settled_by_them()
    {
        LearnResult result = LearnAnswer.Of(LearnLakes.With(Header
            + "2026-09-20T08:00,effort,60,,A,,,,,bulky craw,,,2,e1,\n2026-09-20T09:30,effort,60,,A,,,,,slim craw,,,0,e2,\n"), null, new LearnWish(), UnitSystem.Feet, TestContext.Current.CancellationToken);
        Assert.Contains("Two bites are two bites", result.Trust, StringComparison.Ordinal);
        FactorRates trailers = result.Choices.Single(c => c.Factor == "trailer");
        Assert.False(trailers.Settled);
        Assert.All(trailers.Rows, r => Assert.InRange(r.Rate.BestChance, 0.02, 0.9));
        Assert.Contains("only two bites", result.TieOn[0].Why.Say(UnitSystem.Feet), StringComparison.Ordinal);
        Assert.True(result.Leave.Rows[0].AfterMinutes < result.Leave.Rows[1].AfterMinutes);
    }

    [Fact]
    public void Without_a_log_the_answer_is_belief_and_says_so()
    {
        LearnResult result = LearnAnswer.Of(LearnLakes.With(""), null, new LearnWish { Eats = ["crayfish"] }, UnitSystem.Metric, TestContext.Current.CancellationToken);
        Assert.Contains("belief of the trade", result.Trust, StringComparison.Ordinal);
        Assert.Null(result.LastTrip);
        Assert.Contains("eating crayfish", result.TieOn[0].Why.Say(UnitSystem.Feet), StringComparison.Ordinal);
        Assert.Contains("nothing in the log", result.TieOn[0].Why.Say(UnitSystem.Feet), StringComparison.Ordinal);
        Assert.Empty(result.Learned);
    }

    [Fact]
    public void What_the_log_says_was_eaten_speaks_for_itself()
    {
        LearnResult result = LearnAnswer.Of(LearnLakes.With(Header
            + "2026-09-20T08:00,effort,60,,A,,,,,slim craw,,,,e1,\n2026-09-20T08:30,fish,,,A,,,,,slim craw,,crayfish,,f1,\n"), null, new LearnWish(), UnitSystem.Feet, TestContext.Current.CancellationToken);
        Assert.Contains("eats crayfish", result.Conditions);
        Assert.Equal(1, result.Totals.Fish);
    }

    [Fact]
    public void A_bite_without_a_stretch_teaches_no_rate_and_is_told()
    {
        LearnResult result = LearnAnswer.Of(LearnLakes.With(Header + "2026-09-20T08:00,bite,,,A,,,,,,,,,b,\n"), null, new LearnWish(), UnitSystem.Feet, TestContext.Current.CancellationToken);
        Assert.Equal(1, result.Totals.WithoutEffort);
        Assert.Equal(0, result.Totals.Bites);
    }

    [Fact]
    public void Corrections_and_withdrawals_change_the_sums_and_no_row_is_lost()
    {
        LearnResult result = LearnAnswer.Of(LearnLakes.With(Header
            + "2026-09-20T08:00,effort,60,,A,,,,,a,,,,e1,\n2026-09-20T08:10,bite,,,A,,,,,a,,,,b1,\n2026-09-20T08:20,bite,,,A,,,,,a,,,,b2,\n"
            + "2026-09-20T08:10,fish,,,A,,,,,a,,,,b1x,b1\n2026-09-20T08:20,withdrawn,,,,,,,,,,,,b2x,b2\n"), null, new LearnWish(), UnitSystem.Feet, TestContext.Current.CancellationToken);
        Assert.Equal((1, 1), (result.Totals.Bites, result.Totals.Fish));
    }

    [Fact]
    public void The_page_is_well_formed_self_contained_and_hostile_names_stay_text()
    {
        LearnResult result = LearnAnswer.Of(LearnLakes.With(Header + "2026-09-20T08:00,effort,60,,A,hump,10,9,,<script>alert(1)</script>,,,4,e1,\n2026-09-20T10:00,nothing,60,,B,ledge,10,9,,slim craw,,,,e2,\n"),
            null, new LearnWish(), UnitSystem.Feet, TestContext.Current.CancellationToken);
        string html = LearnPage.Html(result, UnitSystem.Feet);
        XDocument page = XDocument.Parse(html[html.IndexOf("<html", StringComparison.Ordinal)..].Replace("&nbsp;", "&#160;", StringComparison.Ordinal));
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("http", html.Replace("http://www.w3.org/1999/xhtml", "", StringComparison.Ordinal), StringComparison.Ordinal);
        string text = page.Root!.Value;
        foreach (string needed in (string[])["Four bites", "When to leave", "Tie on first", "Try next", "Kind of bottom", "four times in five", "invented"])
            Assert.Contains(needed, text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void The_document_keeps_its_keys_and_the_files_hold_the_same()
    {
        LearnResult result = LearnAnswer.Of(LearnLakes.With(Header + "2026-09-20T08:00,effort,60,,A,hump,10,9,,slim craw,,,4,e1,\n"), null, new LearnWish(), UnitSystem.Feet, TestContext.Current.CancellationToken);
        using JsonDocument json = JsonDocument.Parse(JsonSerializer.Serialize(LearnDocument.Of(result, []), AnswersJson.Default.LearnDocument));
        foreach (string key in (string[])["lake", "from", "to", "days", "hours_h", "bites", "fish", "blanks", "trust", "rate_per_h", "choices", "tie_on", "next_try", "leave", "teaches_most", "learned", "last_trip", "files", "assumed"])
            Assert.True(json.RootElement.TryGetProperty(key, out _), key);
        Assert.Equal(["catch-priors.json", "learned.html", "learned.json"], LearnFiles.Of(result, UnitSystem.Feet).Entries.Select(e => e.Name).Order());
        Assert.True(CatchPriors.TryParse(CatchPriors.DefaultText, out _, out _));
    }
}
