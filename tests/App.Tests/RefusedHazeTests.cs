using SecondShore.App.Store;
using SecondShore.App.Tests.Trip;
using SecondShore.App.Words;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Views;

namespace SecondShore.App.Tests;

public class RefusedHazeTests
{
    [Fact]
    public async Task A_haze_that_cannot_be_is_said_as_refused_and_is_not_what_the_answer_rests_on()
    {
        TripPage page = new();
        RecordRow sound = new Entry { Value = 8 }.ToRow("x", RecordKinds.Haze, new DateTimeOffset(2026, 8, 20, 13, 0, 0, TimeSpan.Zero));
        RecordRow absurd = new Entry { Value = 45 }.ToRow("x", RecordKinds.Haze, new DateTimeOffset(2026, 8, 21, 11, 0, 0, TimeSpan.Zero));
        await page.Session.OpenAsync(new LakeRow("x", "Test Bowl", ""));
        await page.Session.KeepAsync(sound);
        await page.Session.KeepAsync(absurd);
        await page.Session.WorkOutAsync();
        OutlookView outlook = page.Session.Outlook!;
        Assert.Equal(8, outlook.Haze!.DepthM);
        Assert.Equal(absurd.Id, Assert.Single(outlook.Refused).Source);
        Wording feet = new(TextBook.For("en"), new LocaleInfo(), UnitSystem.Feet, TimeZoneInfo.Utc);
        string fate = TripWords.Fate(absurd, outlook, feet);
        Assert.StartsWith("Kept, but not used.", fate, StringComparison.Ordinal);
        Assert.Contains("cannot stand in", fate, StringComparison.Ordinal);
        Assert.Null(TripWords.NotUsed(sound, outlook, feet));
        Assert.StartsWith("Kept. With it", TripWords.Fate(sound, outlook, feet), StringComparison.Ordinal);
    }
}
