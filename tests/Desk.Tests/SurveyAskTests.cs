using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;

namespace SecondShore.Desk.Tests;

/// <summary>What the app shows of a survey file that must be asked about: readings drawn, and the first rows to name columns in.</summary>
public partial class SurveyAskTests
{
    // A round lake sounded on a net, in three decimals, under names that say nothing.
    private static byte[] Table(string header, Func<double, double, double, string> row)
    {
        StringBuilder text = new(header + "\n");
        for (int i = 0; i < 400; i++)
        {
            double u = ((i % 20) - 9.5) / 10, v = ((i / 20) - 9.5) / 10, depthM = 9 * (1 - (u * u) - (v * v));
            if (depthM > 0) text.Append(row(45.9 + (v * 0.02), -89.6 + (u * 0.03), depthM)).Append('\n');
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static readonly Dictionary<string, byte[]> Unnamed = new()
    {
        ["pond.csv"] = Table("p,q,r", (lat, lon, d) => string.Create(CultureInfo.InvariantCulture, $"{lat:F3},{lon:F3},{d:F1}")),
    };

    [Fact]
    public void A_table_whose_columns_nothing_names_shows_its_rows_and_is_read_once_they_are_named()
    {
        LakeDesk desk = new(new KeptTray());
        InspectView seen = desk.Ask(new InspectFiles(), Unnamed);
        TableView table = Assert.Single(seen.Tables);
        Assert.True(table.Waits);
        Assert.False(table.OnlyDepth);
        Assert.Equal(["p", "q", "r"], table.Columns);
        Assert.Equal(3, table.Rows[0].Count);
        NewLakeFacts facts = new("Pond", null, null, "UTC", "Metres", "Depth")
        { Answers = [new SurveyAnswer("pond.csv", """{"x_column":"2","y_column":"1","depth_column":"3"}""")] };
        InspectView named = desk.Ask(new InspectFiles(facts), Unnamed);
        Assert.Empty(named.Questions);
        Assert.False(Assert.Single(named.Tables).Waits);
        Assert.InRange(named.Surveys[0].MaxDepthM!.Value, 8.5, 9);
        Assert.True(desk.Ask(new AdoptFiles(facts), Unnamed).Taken);
    }

    [Fact]
    public void Two_columns_that_can_be_the_depth_are_asked_for_in_the_rows_too()
    {
        Dictionary<string, byte[]> files = new()
        {
            ["beds.csv"] = Table("lat,lon,depth_2012,depth_1950",
                (lat, lon, d) => string.Create(CultureInfo.InvariantCulture, $"{lat:F6},{lon:F6},{d:F2},{d * 1.6:F2}")),
        };
        InspectView seen = new LakeDesk(new KeptTray()).Ask(new InspectFiles(), files);
        QuestionView question = Assert.Single(seen.Questions);
        Assert.Equal("Depth", question.Kind);
        TableView table = Assert.Single(seen.Tables);
        Assert.True(table.Waits && table.OnlyDepth);
        Assert.Equal((1, 0), (table.X, table.Y));
    }

    [Fact]
    public void A_reading_is_drawn_with_its_outline_its_deepest_point_and_where_it_lies()
    {
        Dictionary<string, byte[]> files = new()
        {
            ["pond.csv"] = Table("lat,lon,depth", (lat, lon, d) => string.Create(CultureInfo.InvariantCulture, $"{lat:F6},{lon:F6},{d / 0.3048:F0}")),
        };
        QuestionView question = Assert.Single(new LakeDesk(new KeptTray()).Ask(new InspectFiles(), files).Questions);
        PictureView picture = question.Choices[0].Picture!;
        Assert.StartsWith("M", picture.Outline, StringComparison.Ordinal);
        Assert.InRange(picture.DeepX, 40, 60);
        Assert.InRange(picture.DeepY, 30, 60);
        Assert.InRange(picture.LatDeg, 45.89, 45.91);
        Assert.InRange(picture.LonDeg, -89.63, -89.57);
        Assert.Equal(1, picture.Counts.Max());
    }

    [Fact]
    public void An_outline_keeps_one_distance_from_the_places_it_goes_around()
    {
        (double X, double Y)[] places = [.. Enumerable.Range(0, 400).Select(i => (X: i % 20 * 5.0, Y: i / 20 * 5.0)).Where(p => Away(p.X, p.Y, 50, 50) < 40)];
        MatchCollection points = Point().Matches(SurveyOutline.Around(places));
        Assert.True(points.Count > 60);
        foreach (Match m in points)
        {
            double x = double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture), y = double.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture);
            Assert.InRange(places.Min(p => Away(p.X, p.Y, x, y)), 4.5, 7.5);
        }
    }

    [GeneratedRegex(@"[ML](-?[\d.]+) (-?[\d.]+)")]
    private static partial Regex Point();

    private static double Away(double x, double y, double toX, double toY) => Math.Sqrt(((x - toX) * (x - toX)) + ((y - toY) * (y - toY)));
}
