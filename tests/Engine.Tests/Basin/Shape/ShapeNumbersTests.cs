using SecondShore.Engine.Basin.Shape;

namespace SecondShore.Engine.Tests.Basin.Shape;

public class ShapeNumbersTests
{
    [Fact]
    public void The_learned_file_says_what_it_was_learned_from_and_how_well_it_does_on_lakes_left_out()
    {
        string text = ShapeNumbers.EmbeddedText();
        using var file = System.Text.Json.JsonDocument.Parse(text);
        var learned = file.RootElement.GetProperty("learned");
        Assert.True(learned.GetProperty("lakes").GetArrayLength() >= 10);
        Assert.InRange(learned.GetProperty("left_out").GetProperty("within_2sd").GetDouble(), 0.85, 0.98);
        Assert.True(learned.GetProperty("left_out").GetProperty("error_of_a_cones").GetDouble() <= 0.75);
        Assert.Equal(ShapeNumbers.Parse(text), ShapeNumbers.Learned);
    }

    [Fact]
    public void A_number_that_is_missing_is_named()
    {
        string without = ShapeNumbers.EmbeddedText().Replace("\"bend_sd\"", "\"bent_sd\"", StringComparison.Ordinal);
        Assert.Contains("bend_sd", Assert.Throws<FormatException>(() => ShapeNumbers.Parse(without)).Message, StringComparison.Ordinal);
        Assert.Contains("line 1", Assert.Throws<FormatException>(() => ShapeNumbers.Parse("{")).Message, StringComparison.Ordinal);
        Assert.Throws<FormatException>(() => ShapeNumbers.Parse("[]"));
    }
}
