using CsCheck;
using SecondShore.TestKit;

namespace SecondShore.Records.Tests;

public class StandingRuleTests
{
    private sealed record Row(string Id, string? Replaces = null, bool Removed = false, string At = "2026-10-04T17:00:00Z");

    private static string[] Standing(params IEnumerable<Row> rows) => [.. StandingRule.Of(rows, Link).Select(r => r.Id)];

    private static EntryLink Link(Row row) => new(row.Id, row.Replaces, row.Removed, row.At);

    [Fact]
    public void Of_two_corrections_made_apart_one_stands_and_it_is_the_same_everywhere()
    {
        Row first = new("a"), left = new("b", "a", At: "2026-10-04T18:00:00Z"), right = new("c", "a");
        Assert.Equal(["b"], Standing(first, left, right));
        Assert.Equal(["b"], Standing(right, left, first));
    }

    [Fact]
    public void A_correction_outlasts_a_removal_made_apart() => Assert.Equal(["b"], Standing(new("a"), new("z", "a", Removed: true), new("b", "a")));

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Whoever_corrects_or_removes_what_stands_has_the_last_word(bool removes)
    {
        Row[] apart = [new("a"), new("b", "a"), new("c", "a"), new("d", "b")];
        string standing = Assert.Single(Standing(apart));
        Assert.Equal(removes ? [] : ["0"], Standing([.. apart, new("0", standing, removes, "1990-01-01T00:00:00Z")]));
    }

    [Fact]
    public void Corrections_of_what_never_came_are_one_entry() => Assert.Equal(["c"], Standing(new("b", "lost"), new("c", "b")));

    [Fact]
    public void A_ring_of_corrections_is_one_entry_and_what_hangs_on_it_has_the_last_word()
    {
        Row[] ring = [new("a", "c"), new("b", "a"), new("c", "b")];
        Assert.Equal(["c"], Standing(ring));
        Assert.Equal(["0"], Standing([new("0", "b"), .. ring]));
        Assert.Equal(["s"], Standing(new Row("s", "s")));
    }

    [Fact]
    public void Entries_without_an_id_stand_each_for_itself() => Assert.Equal(["", "", "b"], Standing(new(""), new(""), new("a"), new("b", "a")).Order());

    [Fact]
    public void What_stands_depends_on_the_set_alone() => (from count in Gen.Int[1, 14]
                                                           from links in Gen.Int[-4, 13].Array[count]
                                                           from removed in Gen.Bool.Array[count]
                                                           from minutes in Gen.Int[0, 2].Array[count]
                                                           from order in Gen.Shuffle(Enumerable.Range(0, count).ToArray())
                                                           select (links, removed, minutes, order)).Hold(c =>
    {
        Row[] rows = [.. c.links.Select((link, i) => new Row($"{i:00}", link < 0 ? null : $"{link:00}", c.removed[i], $"2026-10-04T17:0{c.minutes[i]}:00Z"))];
        string[] straight = Standing(rows), mixed = Standing([.. c.order.Select(i => rows[i]), .. rows]);
        Assert.Equal(straight, mixed);
        // One of each entry: never more than there are entries that correct nothing, nothing known, or one another in a ring.
        Assert.Equal(straight.Length, straight.Distinct().Count());
        foreach (string id in straight) Assert.DoesNotContain(straight, other => other != id && rows[int.Parse(other, System.Globalization.CultureInfo.InvariantCulture)].Replaces == id);
    }, 1000);

    [Fact]
    public void A_chain_of_a_hundred_thousand_corrections_ends_in_its_last() =>
        Assert.Equal(["99999"], Standing(Enumerable.Range(0, 100_000).Reverse().Select(i => new Row($"{i:00000}", i == 0 ? null : $"{i - 1:00000}"))));
}
