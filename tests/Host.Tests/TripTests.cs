using System.IO.Compression;
using System.Net;
using System.Net.Http.Json;
using System.Security.Cryptography;
using SecondShore.Records;

namespace SecondShore.Host.Tests;

public class TripTests
{
    [Fact]
    public async Task A_trip_file_of_sixty_megabytes_streams_in_and_out_byte_for_byte()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
        byte[] survey = new byte[60 << 20];
        new Random(5).NextBytes(survey);
        byte[] trip = Zip(("lake.json", "{\"latitude_deg\":45}"u8.ToArray()), ("survey.tif", survey), ("climate/2014.csv", "time,air_temp_c\n"u8.ToArray()), ("empty.csv", []));
        using HttpResponseMessage taken = await client.PostAsync($"/api/lakes/{HostUnderTest.Lake}/trip", new ByteArrayContent(trip));
        Assert.Equal(HttpStatusCode.OK, taken.StatusCode);
        Assert.Equal(4, (await taken.Content.ReadFromJsonAsync(RecordsJson.Default.PushAnswer))!.Added);
        using HttpResponseMessage again = await client.PostAsync($"/api/lakes/{HostUnderTest.Lake}/trip", new ByteArrayContent(trip));
        Assert.Equal((0, 4), await again.Content.ReadFromJsonAsync(RecordsJson.Default.PushAnswer) is { } answer ? (answer.Added, answer.Known) : default);
        using HttpResponseMessage given = await client.GetAsync($"/api/lakes/{HostUnderTest.Lake}/trip", HttpCompletionOption.ResponseHeadersRead);
        using ZipArchive zip = new(await given.Content.ReadAsStreamAsync());
        Assert.Equal(["climate/2014.csv", "empty.csv", "lake.json", "survey.tif"], zip.Entries.Select(e => e.FullName));
        using (Stream entry = zip.GetEntry("survey.tif")!.Open()) Assert.Equal(SHA256.HashData(survey), await SHA256.HashDataAsync(entry));
    }

    [Fact]
    public async Task An_upload_that_broke_off_goes_on_where_it_stopped_and_a_damaged_one_is_dropped()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
        byte[] bytes = new byte[(5 << 20) + 17];
        new Random(6).NextBytes(bytes);
        string sha = Convert.ToHexStringLower(SHA256.HashData(bytes)), at = $"/api/lakes/{HostUnderTest.Lake}/files/{sha}";
        int half = 2_500_000;
        Assert.Equal(HttpStatusCode.Accepted, (await client.PutAsync($"{at}?size={bytes.Length}", new ByteArrayContent(bytes, 0, half))).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync(at)).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await client.PutAsync($"{at}?size={bytes.Length}", new ByteArrayContent(bytes, 0, half))).StatusCode);
        Assert.Contains($"\"stored\":{half}", await client.GetStringAsync(at + "/status"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await client.PutAsync($"{at}?size={bytes.Length}&from={half}", new ByteArrayContent(bytes, half, bytes.Length - half))).StatusCode);
        Assert.Equal(bytes, await client.GetByteArrayAsync(at));
        Assert.Equal(bytes[1_234_567..], await client.GetByteArrayAsync(at + "?from=1234567"));

        string wrong = new('b', 64), other = $"/api/lakes/{HostUnderTest.Lake}/files/{wrong}";
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await client.PutAsync($"{other}?size=1000", new ByteArrayContent(bytes, 0, 1000))).StatusCode);
        Assert.Contains("\"stored\":0", await client.GetStringAsync(other + "/status"), StringComparison.Ordinal);
    }

    private static byte[] Zip(params (string Name, byte[] Bytes)[] files)
    {
        using MemoryStream stream = new();
        using (ZipArchive zip = new(stream, ZipArchiveMode.Create, leaveOpen: true))
            foreach ((string name, byte[] bytes) in files)
            {
                using Stream entry = zip.CreateEntry(name, CompressionLevel.NoCompression).Open();
                entry.Write(bytes);
            }

        return stream.ToArray();
    }
}
