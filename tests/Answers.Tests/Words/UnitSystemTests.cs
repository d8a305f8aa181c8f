using System.Globalization;
using SecondShore.Engine.Core.Units;

namespace SecondShore.Answers.Tests.Words;

public class UnitSystemTests
{
    [Theory]
    [InlineData(0.25, "1/4")]
    [InlineData(0.5, "1/2")]
    [InlineData(0.75, "3/4")]
    [InlineData(0.3125, "5/16")]
    [InlineData(1.0, "1")]
    [InlineData(1.5, "1 1/2")]
    [InlineData(0.71, "0.71")]
    public void Ounces_are_written_as_the_trade_writes_them(double ounces, string expected) =>
        Assert.Equal(expected, UnitSystem.Feet.OunceFraction(ounces));

    [Fact]
    public void Ounces_that_are_no_fraction_have_the_languages_decimal_sign() =>
        Assert.Equal("0,67 oz", UnitSystem.Feet.In(Sentences.SpeechFor("de")).JigWeight(0.019));

    [Fact]
    public void Numbers_read_the_same_under_another_culture()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            Assert.Equal("8.2 m", UnitSystem.Metric.Depth(8.2));
            Assert.Equal("27 ft", UnitSystem.Feet.Depth(8.2));
            Assert.Equal("1.9 mi", UnitSystem.Feet.Distance(3000));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_range_that_rounds_to_one_number_is_one_number()
    {
        Assert.Equal("27 ft", UnitSystem.Feet.DepthRange(8.21, 8.25));
        Assert.Equal("24 to 31 ft", UnitSystem.Feet.DepthRange(7.3, 9.4));
    }

    [Fact]
    public void Cold_reads_with_a_true_minus_and_no_minus_zero()
    {
        Assert.Equal("−3.0 °C", UnitSystem.Metric.Temp(-3));
        Assert.Equal("0.0 °C", UnitSystem.Metric.Temp(-0.01));
        Assert.Equal("68 °F", UnitSystem.Feet.Temp(20));
    }

    [Fact]
    public void A_jig_has_ounces_or_grams()
    {
        Mass jig = Mass.FromOunces(0.75);
        Assert.Equal("3/4 oz", UnitSystem.Feet.JigWeight(jig.Kilograms));
        Assert.Equal("21 g", UnitSystem.Metric.JigWeight(jig.Kilograms));
    }
}
