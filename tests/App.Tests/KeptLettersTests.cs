using System.Text.Json;
using SecondShore.App.Compute.Views;
using SecondShore.App.Tests.Trip;

namespace SecondShore.App.Tests;

public class KeptLettersTests
{
    [Fact]
    public async Task A_place_keeps_its_letter_while_a_depth_is_tried()
    {
        TripPage page = new();
        await page.PlannedAsync();
        SpotView[] before = [.. page.Session.Spots];
        string ask = JsonSerializer.Serialize(new AskAbout(ThermoclineM: page.Session.Outlook!.ThermoclineM!.Value.P50 + 0.02), ViewsJson.Default.AskAbout);
        SpotView[] tried = [.. JsonSerializer.Deserialize(page.Asked("shore", ask), ViewsJson.Default.ShoreView)!.Spots!];
        Assert.Equal(tried.Length, tried.Select(s => s.Letter).Distinct().Count());
        int same = 0;
        foreach (SpotView spot in tried)
        {
            SpotView? near = before.FirstOrDefault(b => Math.Sqrt(((b.XM - spot.XM) * (b.XM - spot.XM)) + ((b.YM - spot.YM) * (b.YM - spot.YM))) < 30);
            // Nearer to one known place than to any other: that place's letter stays.
            if (near is null) continue;
            same++;
            Assert.Equal(near.Letter, spot.Letter);
        }

        Assert.True(same > 0, $"None of {tried.Length} places lies near one of the {before.Length} before; {page.Session.Outlook!.ThermoclineM!.Value.P50} m.");
    }
}
