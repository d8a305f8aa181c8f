using SecondShore.App.Tests.Trip;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;

namespace SecondShore.App.Tests;

public class KeptLettersTests
{
    [Fact]
    public async Task A_place_keeps_its_letter_while_a_depth_is_tried()
    {
        TripPage page = new();
        await page.PlannedAsync();
        SpotView[] before = [.. page.Session.Spots];
        double seenM = page.Session.Outlook!.ThermoclineM!.Value.P50;
        int same = 0;
        // Not every depth has a place near one of those before: a few are tried.
        foreach (double by in new[] { 0.002, 0.02, -0.02, 0.1, -0.1, 0.25, -0.25, -0.5, 0.5, -1.0, 1.0 })
        {
            SpotView[] tried = [.. page.Told(new RankPlaces(ThermoclineM: seenM + by)).Spots!];
            Assert.Equal(tried.Length, tried.Select(s => s.Letter).Distinct().Count());
            foreach (SpotView spot in tried)
            {
                SpotView? near = before.FirstOrDefault(b => Math.Sqrt(((b.XM - spot.XM) * (b.XM - spot.XM)) + ((b.YM - spot.YM) * (b.YM - spot.YM))) < 30);
                // Nearer to one known place than to any other: that place's letter stays.
                if (near is null) continue;
                same++;
                Assert.Equal(near.Letter, spot.Letter);
            }
        }

        Assert.True(same > 0, $"No place at any depth tried lies near one of the {before.Length} before; {seenM} m.");
    }
}
