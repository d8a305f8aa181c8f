using System.Text.Json;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

public sealed class LakePriorsTests
{
    private static readonly LakeSite Site = new() { Name = "Tarn", Position = new GeoPoint(46, -90), TimeZoneId = "UTC", ElevationM = 400 };

    [Fact]
    public void The_learned_file_holds_every_number_once_and_says_where_it_comes_from()
    {
        using var file = JsonDocument.Parse(PriorNumbers.EmbeddedText());
        string[] names = [.. file.RootElement.GetProperty("numbers").EnumerateObject().Select(p => p.Name)];
        Assert.Equal(PriorNumbers.All.Select(n => n.Name), names);
        JsonElement learned = file.RootElement.GetProperty("learned");
        Assert.True(learned.GetProperty("lakes").GetArrayLength() >= 20);
        Assert.True(learned.GetProperty("regions").GetInt32() >= 10);
        Assert.True(learned.GetProperty("left_out").GetProperty("temperature_k").GetDouble() > 0.5);
    }

    [Fact]
    public void A_learned_file_without_a_number_is_refused_by_its_name()
    {
        string text = PriorNumbers.EmbeddedText().Replace("\"tilt_factor\"", "\"tilt\"", StringComparison.Ordinal);
        FormatException e = Assert.Throws<FormatException>(() => PriorNumbers.Parse(text));
        Assert.Contains("'tilt_factor'", e.Message, StringComparison.Ordinal);
        Assert.Throws<FormatException>(() => PriorNumbers.Parse("{"));
    }

    [Fact]
    public void What_is_read_is_what_was_written()
    {
        foreach (PriorNumber number in PriorNumbers.All)
        {
            PriorNumbers changed = number.With(PriorNumbers.Learned, 0.123);
            Assert.Equal(0.123, number.Of(changed));
            foreach (PriorNumber other in PriorNumbers.All.Where(o => o.Name != number.Name)) Assert.Equal(other.Of(PriorNumbers.Learned), other.Of(changed));
        }
    }

    [Fact]
    public void Clarity_that_is_known_is_taken_and_clarity_that_is_not_is_guessed_by_depth_with_a_wide_spread()
    {
        LakePriors deep = LakePriors.For(Site, Hypsography.FromShape(2e6, 40), WeatherSource.Grid), shallow = LakePriors.For(Site, Hypsography.FromShape(2e6, 5), WeatherSource.Grid);
        LakePriors known = LakePriors.For(Site with { LightExtinctionPerM = 0.31 }, Hypsography.FromShape(2e6, 40), WeatherSource.Grid);
        Assert.True(shallow.Centre.LightExtinctionPerM > 1.3 * deep.Centre.LightExtinctionPerM);
        Assert.Equal(0.31, known.Centre.LightExtinctionPerM);
        Assert.True(deep.SpreadValues[0] > 2 * known.SpreadValues[0]);
        Assert.NotEmpty(deep.Assumed);
        Assert.Empty(known.Assumed);
    }

    [Fact]
    public void A_record_in_the_lee_is_taken_to_say_when_it_blows_and_not_how_hard()
    {
        Hypsography basin = Hypsography.FromShape(2e6, 20);
        ColumnParameters lee = LakePriors.For(Site, basin, WeatherSource.Station, 1.2).Centre, open = LakePriors.For(Site, basin, WeatherSource.Station, 4.5).Centre;
        Assert.True(lee.StirringFactor * Math.Pow(lee.WindFactor, 3) > 1.2 * open.StirringFactor * Math.Pow(open.WindFactor, 3));
        Assert.True(open.StirringFactor > LakePriors.For(Site, Hypsography.FromShape(1e5, 20), WeatherSource.Station, 4.5).Centre.StirringFactor);
    }
}
