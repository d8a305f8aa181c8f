using System.Globalization;
using System.Text;
using SecondShore.Formats;
using SecondShore.Formats.Lake;

namespace SecondShore.Weather.Tests;

public class EpwReaderTests
{
    [Fact]
    public void Hours_units_zone_and_missing_values_are_read_as_the_form_says()
    {
        ProblemLog problems = new();
        IReadOnlyDictionary<int, WeatherTable> years = EpwReader.Read("x.epw", Encoding.UTF8.GetBytes(File(Row(2019, 7, 1, 1), Row(2019, 7, 1, 2, air: "99.9", cloud: "99"), Row(2003, 8, 2, 24))), problems);
        Assert.Empty(problems.ToList());
        Assert.Equal([2003, 2019], years.Keys.Order());
        WeatherTable table = years[2019];
        // Hour 1 runs from midnight of standard time, five hours west.
        Assert.Equal(new DateTimeOffset(2019, 7, 1, 5, 0, 0, TimeSpan.Zero), table.TimesUtc[0]);
        Assert.Equal(21.4, table.AirTempC![0]);
        Assert.True(double.IsNaN(table.AirTempC[1]));
        Assert.Equal(0.73, table.RelativeHumidity![0], 12);
        Assert.Equal(333, table.LongwaveWPerM2![0]);
        Assert.Equal(512, table.ShortwaveWPerM2![0]);
        Assert.Equal(200, table.WindFromDeg![0]);
        Assert.Equal(3.1, table.WindMps![0]);
        Assert.Equal(0.4, table.CloudFraction![0], 12);
        Assert.True(double.IsNaN(table.CloudFraction[1]));
        Assert.Equal(new DateTimeOffset(2003, 8, 3, 4, 0, 0, TimeSpan.Zero), years[2003].TimesUtc[0]);
    }

    [Fact]
    public void A_bad_line_is_named_and_the_others_are_read()
    {
        ProblemLog problems = new();
        IReadOnlyDictionary<int, WeatherTable> years = EpwReader.Read("x.epw", Encoding.UTF8.GetBytes(File(Row(2019, 7, 1, 1), "2019,13,1,1,60,x", Row(2019, 7, 1, 3))), problems);
        Assert.Equal(2, years[2019].Count);
        Assert.Equal(10, Assert.Single(problems.ToList()).Line);
    }

    [Fact]
    public void Another_file_is_told_from_one()
    {
        foreach (string text in (string[])["", "time,air_temp_c\n", "LOCATION,a,b\n", "\0\0\0"])
        {
            ProblemLog problems = new();
            Assert.Empty(EpwReader.Read("x.epw", Encoding.UTF8.GetBytes(text), problems));
            Assert.Contains(problems.ToList(), p => p.Severity == ProblemSeverity.Error);
        }
    }

    private static string File(params string[] rows) =>
        "LOCATION,Somewhere,-,-,Made,0,45.0,-84.0,-5.0,200\n" + string.Concat(Enumerable.Repeat("HEADER\n", 7)) + string.Join("\r\n", rows) + "\r\n";

    private static string Row(int year, int month, int day, int hour, string air = "21.4", string cloud = "4")
    {
        string[] cells = new string[35];
        Array.Fill(cells, "0");
        (cells[0], cells[1], cells[2], cells[3]) = (Text(year), Text(month), Text(day), Text(hour));
        (cells[6], cells[8], cells[12], cells[13], cells[20], cells[21], cells[22]) = (air, "73", "333", "512", "200", "3.1", cloud);
        return string.Join(',', cells);
    }

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);
}
