using System.Net;
using System.Net.Http.Json;
using Microsoft.Extensions.DependencyInjection;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Tests.Threats;

/// <summary>What a paired device may use up, and what it learns of others.</summary>
public class GuestTests
{
    [Fact]
    public async Task A_guest_takes_only_the_lakes_and_the_room_granted_to_one_device_and_the_owner_goes_on()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always", "--lakes-per-device", "3", "--device-megabytes", "1");
        using HttpClient owner = await host.OwnerAsync(), guest = await host.PairedAsync(new PairingGrant(false, null, true));
        List<string> own = [];
        for (int i = 0; i < 3; i++) own.Add(await HostUnderTest.OwnLakeAsync(guest, $"guest-lake-{i}"));
        using HttpResponseMessage fourth = await HostUnderTest.AddLakeAsync(guest, "guest-lake-4");
        Assert.Equal(HttpStatusCode.InsufficientStorage, fourth.StatusCode);
        Assert.Contains("--lakes-per-device", await HostUnderTest.ErrorAsync(fourth), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Created, (await HostUnderTest.AddLakeAsync(owner, HostUnderTest.Lake)).StatusCode);

        HttpStatusCode last = HttpStatusCode.OK;
        int kept = 0;
        for (int i = 0; i < 200 && last == HttpStatusCode.OK; i++)
        {
            last = (await HostUnderTest.PushAsync(guest, own[i % 3], HostUnderTest.Note($"{i}" + new string('x', 12_000)))).StatusCode;
            if (last == HttpStatusCode.OK) kept++;
        }

        Assert.Equal(HttpStatusCode.InsufficientStorage, last);
        Assert.InRange(kept, 80, 90);
        Assert.Equal(HttpStatusCode.OK, (await HostUnderTest.PushAsync(owner, HostUnderTest.Lake, HostUnderTest.Note("goes on"))).StatusCode);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_device_paired_for_one_lake_makes_none_of_its_own(bool mayWrite)
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always");
        using HttpClient owner = await host.OwnerAsync();
        (await HostUnderTest.AddLakeAsync(owner, HostUnderTest.Lake)).Dispose();
        using HttpClient guest = await host.PairedAsync(new PairingGrant(false, HostUnderTest.Lake, mayWrite));
        Assert.Equal(HttpStatusCode.Forbidden, (await HostUnderTest.AddLakeAsync(guest, "another-lake")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await HostUnderTest.AddLakeAsync(guest, HostUnderTest.Lake)).StatusCode);
        Assert.Equal(mayWrite ? HttpStatusCode.OK : HttpStatusCode.NotFound, (await HostUnderTest.PushAsync(guest, HostUnderTest.Lake, HostUnderTest.Note("x"))).StatusCode);
    }

    [Fact]
    public async Task A_right_to_a_lake_that_is_gone_is_none_to_a_new_one()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always");
        using HttpClient owner = await host.OwnerAsync();
        (await HostUnderTest.AddLakeAsync(owner, HostUnderTest.Lake)).Dispose();
        using HttpClient guest = await host.PairedAsync(new PairingGrant(false, HostUnderTest.Lake, false));
        Assert.True(await host.Services.GetRequiredService<RecordStore>().RemoveLakeAsync(HostUnderTest.Lake, default));
        Assert.Equal(HttpStatusCode.Forbidden, (await HostUnderTest.AddLakeAsync(guest, HostUnderTest.Lake)).StatusCode);
        (await HostUnderTest.AddLakeAsync(owner, HostUnderTest.Lake)).Dispose();
        Assert.Equal(HttpStatusCode.NotFound, (await guest.GetAsync($"/api/lakes/{HostUnderTest.Lake}/records")).StatusCode);
    }

    [Fact]
    public async Task Nobody_learns_which_ids_are_taken()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always");
        using HttpClient owner = await host.OwnerAsync(), guest = await host.PairedAsync(new PairingGrant(false, null, true));
        (await HostUnderTest.AddLakeAsync(owner, HostUnderTest.Lake)).Dispose();
        using HttpResponseMessage taken = await HostUnderTest.AddLakeAsync(guest, HostUnderTest.Lake), free = await HostUnderTest.AddLakeAsync(guest, "free-lake-0001");
        Assert.Equal(free.StatusCode, taken.StatusCode);
        HostLake made = (await taken.Content.ReadFromJsonAsync(RecordsJson.Default.HostLake))!;
        Assert.NotEqual(HostUnderTest.Lake, made.Id);
        Assert.Equal(HttpStatusCode.NotFound, (await guest.GetAsync($"/api/lakes/{HostUnderTest.Lake}/records")).StatusCode);
    }

    [Fact]
    public async Task A_file_name_that_leads_outside_is_refused_and_a_trip_still_comes()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
        byte[] bytes = "{}"u8.ToArray();
        string sha = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));
        (await client.PutAsync($"/api/lakes/{HostUnderTest.Lake}/files/{sha}?size=2", new ByteArrayContent(bytes))).EnsureSuccessStatusCode();
        DateTimeOffset at = new(2026, 10, 4, 17, 0, 0, TimeSpan.Zero);
        LakeRecord[] records = [.. ((string[])["lake.json", "Lake.JSON", "../../outside", "/etc/x", "a\0b", new string('x', 15_000), "nul.csv"]).Select((name, i) => new FileVersion(name, sha, 2).ToRecord(at.AddMinutes(i), null))];
        using HttpResponseMessage pushed = await HostUnderTest.PushAsync(client, HostUnderTest.Lake, records);
        PushAnswer answer = (await pushed.Content.ReadFromJsonAsync(RecordsJson.Default.PushAnswer))!;
        Assert.Equal((2, 5), (answer.Added, answer.Refused.Count));
        // Kept by an earlier host by looser rules: they stand in nobody's way.
        await host.Services.GetRequiredService<IDatabase>().WriteAsync(work => work.DoAsync(
            "insert into records values (@lake, 99, @Id, 'file', @At, null, 0, @Body, 'd', '2026')", new { lake = HostUnderTest.Lake, records[2].Id, records[2].At, records[2].Body }), default);
        using HttpResponseMessage trip = await client.GetAsync($"/api/lakes/{HostUnderTest.Lake}/trip");
        byte[] zip = await trip.Content.ReadAsByteArrayAsync();
        Formats.ProblemLog problems = new();
        Assert.Equal(["Lake.JSON"], Formats.Files.TripFile.Read("trip.zip", zip, problems)!.Entries.Select(e => e.Name));
    }
}
