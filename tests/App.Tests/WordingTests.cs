using SecondShore.App.Words;

namespace SecondShore.App.Tests;

public class WordingTests
{
    private static readonly TimeZoneInfo Zone = TimeZoneInfo.CreateCustomTimeZone("six", TimeSpan.FromHours(-6), "six", "six");
    private static readonly DateTimeOffset Evening = new(2026, 10, 11, 1, 40, 0, TimeSpan.Zero);

    [Fact]
    public void Times_are_the_lakes_own_and_in_the_users_clock()
    {
        Wording us = new(TextBook.For("en"), new LocaleInfo(), UnitSystem.Feet, Zone);
        Wording german = us with { Locale = new LocaleInfo { Hour12 = false, DayFirst = true, Decimal = "," } };
        Assert.Equal("7:40 pm", us.Time(Evening));
        Assert.Equal("Sat Oct 10", us.WeekdayDate(Evening));
        Assert.Equal("19:40", german.Time(Evening));
        Assert.Equal("Sat 10 Oct", german.WeekdayDate(Evening));
    }

    [Fact]
    public void Depths_follow_the_unit_and_the_decimal_sign()
    {
        Wording us = new(TextBook.For("en"), new LocaleInfo(), UnitSystem.Feet, Zone);
        Wording metric = us with { Units = UnitSystem.Metric, Locale = new LocaleInfo { Decimal = "," } };
        Assert.Equal("27.5", us.DepthFine(8.382));
        Assert.Equal("24 to 31 ft", us.DepthRange(7.315, 9.449));
        Assert.Equal("8,4", metric.DepthFine(8.382));
        Assert.Equal("8,4 m", metric.Depth(8.382));
    }

    [Theory]
    [InlineData(0.0, "1")]
    [InlineData(0.864, "86")]
    [InlineData(1.0, "99")]
    public void A_chance_is_never_shown_as_certain(double chance, string shown) => Assert.Equal(shown, Wording.Percent(chance));
}
