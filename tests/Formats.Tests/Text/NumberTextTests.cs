using System.Globalization;
using CsCheck;
using SecondShore.Formats.Text;
using SecondShore.TestKit;

namespace SecondShore.Formats.Tests.Text;

public class NumberTextTests
{
    [Fact]
    public void Plain_numbers_are_read_to_the_last_bit_as_the_general_parser_reads_them() =>
        Gen.Select(Gen.Long[0, 999_999_999_999_999], Gen.Int[0, 14], Gen.Bool).Hold((whole, decimals, minus) =>
        {
            string digits = whole.ToString(CultureInfo.InvariantCulture).PadLeft(decimals + 1, '0');
            if (digits.Length > 15) return;
            string text = (minus ? "-" : "") + digits[..^decimals] + (decimals > 0 ? "." + digits[^decimals..] : "");
            Assert.True(NumberText.TryPlain(text, out double value), text);
            Assert.Equal(BitConverter.DoubleToInt64Bits(double.Parse(text, CultureInfo.InvariantCulture)), BitConverter.DoubleToInt64Bits(value));
        }, 20_000);

    [Theory]
    [InlineData("")]
    [InlineData("-")]
    [InlineData(".")]
    [InlineData("-.")]
    [InlineData("1.2.3")]
    [InlineData("1e5")]
    [InlineData("+1")]
    [InlineData(" 1")]
    [InlineData("1,5")]
    [InlineData("--1")]
    [InlineData("1234567890123456")]
    [InlineData("NaN")]
    public void Anything_else_is_left_to_the_general_parser(string text) => Assert.False(NumberText.TryPlain(text, out _));

    [Theory]
    [InlineData(".5", 0.5)]
    [InlineData("5.", 5)]
    [InlineData("-0.25", -0.25)]
    [InlineData("1e3", 1000)]
    [InlineData(" 7 ", 7)]
    public void Numbers_as_people_write_them_are_read(string text, double value)
    {
        Assert.True(NumberText.TryParse(text, false, out double read));
        Assert.Equal(value, read);
    }
}
