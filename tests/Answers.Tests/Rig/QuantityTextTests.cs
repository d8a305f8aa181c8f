using SecondShore.Answers.Rig;
using SecondShore.Engine.Rig;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Tests.Rig;

public class QuantityTextTests
{
    [Theory]
    [InlineData("27.5ft", 8.382)]
    [InlineData("27.5", 8.382)]
    [InlineData("8.2 m", 8.2)]
    [InlineData("8,2m", 8.2)]
    [InlineData("30'", 9.144)]
    public void Lengths_are_read_with_or_without_unit(string text, double expected)
    {
        Assert.True(QuantityText.TryLengthM(text, UnitSystem.Feet, out double metres));
        Assert.Equal(expected, metres, 1e-9);
    }

    [Theory]
    [InlineData("3/4 oz", 0.75)]
    [InlineData("1 1/4", 1.25)]
    [InlineData("0.5oz", 0.5)]
    [InlineData("28.349523125 g", 1)]
    public void Weights_are_read_as_the_trade_writes_them(string text, double ounces)
    {
        Assert.True(QuantityText.TryMassKg(text, UnitSystem.Feet, out double kg));
        Assert.Equal(ounces * 0.028349523125, kg, 1e-12);
    }

    [Theory]
    [InlineData("")]
    [InlineData("deep")]
    [InlineData("3//4")]
    [InlineData("1/0")]
    [InlineData("4 furlongs")]
    [InlineData("1 2 3")]
    [InlineData("NaN")]
    [InlineData("1e999")]
    [InlineData(null)]
    public void Nonsense_is_no_number(string? text)
    {
        Assert.False(QuantityText.TryLengthM(text, UnitSystem.Feet, out _));
        Assert.False(QuantityText.TryMassKg(text, UnitSystem.Metric, out _));
        Assert.False(QuantityText.TrySpeedMps(text, UnitSystem.Feet, out _));
    }

    [Fact]
    public void Speeds_follow_the_units_in_use()
    {
        Assert.True(QuantityText.TrySpeedMps("0.6", UnitSystem.Feet, out double mph));
        Assert.Equal(0.6 * 0.44704, mph, 1e-12);
        Assert.True(QuantityText.TrySpeedMps("1.8", UnitSystem.Metric, out double kmh));
        Assert.Equal(0.5, kmh, 1e-12);
        Assert.True(QuantityText.TrySpeedMps("-0.1 m/s", UnitSystem.Metric, out double against));
        Assert.Equal(-0.1, against, 1e-12);
    }

    [Fact]
    public void Lines_are_found_by_name_or_made_from_strength_kind_and_diameter()
    {
        FishingLine mine = FishingLine.OfPoundsWeight(LineMaterial.Nylon, 12) with { Name = "my reel" };
        Assert.Same(mine, QuantityText.Line("My Reel", [mine]));
        FishingLine fluoro = QuantityText.Line("15lb fluorocarbon", [])!;
        Assert.Equal(LineMaterial.Fluorocarbon, fluoro.Material);
        Assert.Equal(66.72, fluoro.StrengthN, 0.01);
        FishingLine braid = QuantityText.Line("30 lb braid 0.28 mm", [])!;
        Assert.Equal(0.00028, braid.DiameterM, 1e-12);
        Assert.True(braid.DiameterMeasured);
        Assert.Null(QuantityText.Line("string", []));
        Assert.Null(QuantityText.Line("5000 lb braid", []));
    }
}
