using System.Net;
using SecondShore.Host.Security;

namespace SecondShore.Host.Tests.Threats;

public class PairingWaitsTests
{
    [Fact]
    public void Wrong_codes_of_an_address_are_told_of_ever_more_rarely()
    {
        MovedClock clock = new();
        PairingWaits waits = new(clock);
        IPAddress stranger = IPAddress.Parse("203.0.113.9");
        List<int> told = [];
        for (int i = 0; i < 200; i++)
        {
            // It waits as long as it is told to, and goes on.
            clock.Now += waits.Of(stranger);
            Assert.Equal(TimeSpan.Zero, waits.Of(stranger));
            if (waits.Wrong(stranger) is { } times) told.Add(times);
        }

        Assert.Equal([1, 2, 4, 8, 16, 32, 64, 128], told);
        Assert.True(clock.Now - DateTimeOffset.UnixEpoch > TimeSpan.FromHours(30), "200 tries take more than a day");
    }

    private sealed class MovedClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = DateTimeOffset.UnixEpoch;

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
