using System.Security.Cryptography;
using System.Text;
using CsCheck;
using SecondShore.TestKit;

namespace SecondShore.Records.Tests;

public class RecordIdTests
{
    private static readonly DateTimeOffset At = new(2026, 10, 4, 17, 0, 0, TimeSpan.Zero);

    [Fact]
    public void An_id_is_the_hash_of_the_form_as_it_is_written_down()
    {
        LakeRecord record = LakeRecord.Make("haze", At, null, false, """{"value":9.5}""");
        byte[] form = [.. "second-shore-record-1\n"u8, 0, 0, 0, 4, .. "haze"u8, 0, 0, 0, 28, .. "2026-10-04T17:00:00.0000000Z"u8, 255, 255, 255, 255, 0, 0, 0, 1, .. "0"u8, 0, 0, 0, 13, .. "{\"value\":9.5}"u8];
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(form)), record.Id);
        Assert.Null(RecordRules.Refusal(record));
    }

    [Fact]
    public void Any_change_of_any_field_is_seen() => (from kind in Gen.OneOf(Gen.Const("haze"), Gen.Const("fish"))
                                                      from body in Gen.String[Gen.Char['a', 'z'], 0, 20]
                                                      from field in Gen.Int[0, 4]
                                                      select (kind, body, field)).Hold(c =>
    {
        LakeRecord good = LakeRecord.Make(c.kind, At, new string('a', 64), false, $$"""{"note":"{{c.body}}"}""");
        LakeRecord bad = c.field switch
        {
            0 => good with { Kind = "bite" },
            1 => good with { At = "2026-10-04T17:00:00.0000001Z" },
            2 => good with { Replaces = null },
            3 => good with { Removed = true },
            _ => good with { Body = good.Body.Replace("}", " }", StringComparison.Ordinal) },
        };
        return RecordRules.Refusal(good) is null && RecordRules.Refusal(bad) is { } why && why.Contains("id is not the one", StringComparison.Ordinal);
    }, 500);

    [Fact]
    public void Texts_cannot_be_shifted_from_one_field_to_the_next() =>
        Assert.NotEqual(RecordIds.Of("ab", "c", null, false, "{}"), RecordIds.Of("a", "bc", null, false, "{}"));

    [Theory]
    [InlineData("""[1]""")]
    [InlineData("""{"a":""")]
    [InlineData("""{"a":{"a":{"a":{"a":{"a":{"a":{"a":{"a":{"a":1}}}}}}}}}""")]
    [InlineData("")]
    [InlineData("{\"a\":\"\0\"}")]
    public void A_body_that_is_no_small_object_is_refused(string body) =>
        Assert.Contains("JSON object", RecordRules.Refusal(LakeRecord.Make("note", At, null, false, body)), StringComparison.Ordinal);

    [Fact]
    public void Half_a_surrogate_pair_has_no_id_and_is_refused_not_thrown()
    {
        LakeRecord record = new(new string('a', 64), "note", "2026-10-04T17:00:00Z", null, false, "{\"note\":\"\ud800\"}");
        Assert.NotNull(RecordRules.Refusal(record));
    }

    [Fact]
    public void Random_records_are_refused_in_a_sentence_and_never_thrown() =>
        Gen.Select(Gen.String, Gen.String, Gen.String, Gen.String, Gen.Bool).Hold(c =>
            RecordRules.Refusal(new LakeRecord(c.Item1, c.Item2, c.Item3, null, c.Item5, c.Item4))!.EndsWith('.'), 2000);

    [Fact]
    public void A_body_may_be_as_long_as_said_and_no_longer()
    {
        string Body(int length) => "{\"n\":\"" + new string('x', length - 8) + "\"}";
        Assert.Null(RecordRules.Refusal(LakeRecord.Make("note", At, null, false, Body(RecordRules.MaxBodyLength))));
        Assert.NotNull(RecordRules.Refusal(LakeRecord.Make("note", At, null, false, Body(RecordRules.MaxBodyLength + 1))));
        Assert.True(Encoding.UTF8.GetByteCount(Body(100)) == 100);
    }
}
