using System.Globalization;
using System.IO.Compression;
using System.Net;
using System.Net.Sockets;
using System.Text;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Records;
using SecondShore.TestKit;

namespace SecondShore.Host.Tests.Threats;

/// <summary>Too much, too deep, too slow.</summary>
public class ExhaustionTests
{
    [Fact]
    public async Task A_body_over_the_limit_is_refused_in_a_sentence()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        // Else the refusal may close the connection while the body is still on its way, and nobody hears it.
        client.DefaultRequestHeaders.ExpectContinue = true;
        (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
        using HttpResponseMessage answer = await client.PostAsync($"/api/lakes/{HostUnderTest.Lake}/records",
            new StringContent("{\"records\":[" + new string(' ', 5 << 20) + "]}", Encoding.UTF8, "application/json"));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        LakeRecord[] many = [.. Enumerable.Range(0, RecordRules.MaxRecordsPerMessage + 1).Select(i => HostUnderTest.Note(i.ToString(CultureInfo.InvariantCulture)))];
        using HttpResponseMessage tooMany = await HostUnderTest.PushAsync(client, HostUnderTest.Lake, many);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, tooMany.StatusCode);
        Assert.Empty(await HostUnderTest.PullAllAsync(client, HostUnderTest.Lake));
    }

    [Theory]
    [InlineData("bomb", "zip bomb")]
    [InlineData("outside", "outside the lake's folder")]
    [InlineData("rooted", "outside the lake's folder")]
    [InlineData("twice", "two files")]
    [InlineData("many", "at most 4000")]
    [InlineData("cut", "damaged")]
    [InlineData("text", "damaged")]
    public async Task A_hostile_trip_file_is_refused_and_nothing_of_it_is_kept(string kind, string says)
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
        using HttpResponseMessage answer = await client.PostAsync($"/api/lakes/{HostUnderTest.Lake}/trip", new ByteArrayContent(Hostile(kind)));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(says, await HostUnderTest.ErrorAsync(answer), StringComparison.Ordinal);
        Assert.Empty(await HostUnderTest.PullAllAsync(client, HostUnderTest.Lake));
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync($"/api/lakes/{HostUnderTest.Lake}/trip")).StatusCode);
    }

    [Fact]
    public async Task A_device_that_asks_too_often_is_told_to_wait_and_others_are_not()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync("--pairing", "always", "--requests-per-second", "1");
        using HttpClient greedy = await host.OwnerAsync();
        using HttpClient other = await host.OwnerAsync();
        HttpResponseMessage[] answers = await Task.WhenAll(Enumerable.Range(0, 60).Select(_ => greedy.GetAsync("/api/lakes")));
        Assert.Contains(answers, a => a.StatusCode == HttpStatusCode.TooManyRequests);
        Assert.All(answers.Where(a => a.StatusCode == HttpStatusCode.TooManyRequests), a => Assert.NotNull(a.Headers.RetryAfter));
        Assert.Equal(HttpStatusCode.OK, (await other.GetAsync("/api/lakes")).StatusCode);
    }

    [LongCheck]
    [Fact]
    public async Task A_client_that_drips_is_cut_off_while_others_go_on()
    {
        await using HostUnderTest host = await HostUnderTest.StartAsync();
        using HttpClient client = host.Client();
        (await HostUnderTest.AddLakeAsync(client, HostUnderTest.Lake)).Dispose();
        List<Task<bool>> slow = [];
        for (int i = 0; i < 40; i++) slow.Add(DripAsync(host.Address, DripKinds[i % DripKinds.Length]));
        for (int i = 0; i < 40; i++)
        {
            using HttpResponseMessage answer = await HostUnderTest.PushAsync(client, HostUnderTest.Lake, HostUnderTest.Note($"n{i}"));
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }

        Assert.All(await Task.WhenAll(slow).WaitAsync(TimeSpan.FromSeconds(60)), cut => Assert.True(cut, "A slow connection was kept."));
    }

    [Theory]
    [InlineData("survey.asc", "cells")]
    [InlineData("survey.kml", "")]
    [InlineData("survey.gpx", "document type")]
    public void A_survey_too_large_or_too_deep_is_refused_before_memory_is_spent(string name, string says)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(name switch
        {
            "survey.asc" => "ncols 2000000\nnrows 2000000\nxllcorner 0\nyllcorner 0\ncellsize 1\nNODATA_value -9999\n1 2 3\n",
            "survey.kml" => "<kml xmlns=\"http://www.opengis.net/kml/2.2\">" + string.Concat(Enumerable.Repeat("<Folder>", 20_000)) + string.Concat(Enumerable.Repeat("</Folder>", 20_000)) + "</kml>",
            _ => "<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;\">]><gpx>&b;</gpx>",
        });
        long before = GC.GetAllocatedBytesForCurrentThread();
        LakeFolder folder = LakeFolderReader.Read(new MemoryFiles("lake", [KeyValuePair.Create(name, bytes)]));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 100 << 20);
        Assert.Null(folder.Survey);
        Assert.Contains(folder.Problems, p => p.File == name && p.Severity == Formats.ProblemSeverity.Error && p.Message.Contains(says, StringComparison.Ordinal));
    }

    // Headers without an end, a body that has a time limit, and one that has none since trip files may be long.
    private static readonly string[] DripKinds = ["headers", "records", "trip"];

    // Sends a little and then less than the least speed; whether the server ended the connection.
    private static async Task<bool> DripAsync(Uri address, string kind)
    {
        using TcpClient tcp = new();
        await tcp.ConnectAsync(address.Host, address.Port);
        NetworkStream stream = tcp.GetStream();
        string start = $"POST /api/lakes/{HostUnderTest.Lake}/{(kind == "trip" ? "trip" : "records")} HTTP/1.1\r\nHost: {address.Authority}\r\nContent-Type: application/json\r\n";
        await stream.WriteAsync(Encoding.ASCII.GetBytes(kind == "headers" ? start : start + "Content-Length: 100000\r\n\r\n{"));
        byte[] buffer = new byte[4096];
        using CancellationTokenSource limit = new(TimeSpan.FromSeconds(55));
        try
        {
            while (await stream.ReadAsync(buffer, limit.Token) > 0)
            {
                // The refusal, and then the end.
            }

            return true;
        }
        catch (IOException)
        {
            return true;
        }
        catch (OperationCanceledException)
        {
            return false;
        }
    }

    private static byte[] Hostile(string kind)
    {
        if (kind == "text") return Encoding.UTF8.GetBytes("PK\u0003\u0004 but no more");
        using MemoryStream stream = new();
        using (ZipArchive zip = new(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            Add(zip, "lake.json", "{}"u8.ToArray());
            if (kind == "bomb") Add(zip, "survey.csv", new byte[64 << 20]);
            if (kind == "outside") Add(zip, "../../outside.csv", [1]);
            if (kind == "rooted") Add(zip, "/etc/outside.csv", [1]);
            if (kind == "twice") Add(zip, "lake.json", "{ }"u8.ToArray());
            if (kind == "many") for (int i = 0; i < 4001; i++) Add(zip, $"f{i}.csv", []);
            if (kind == "cut") Add(zip, "noise.csv", [.. Enumerable.Range(0, 20_000).Select(i => (byte)((i * 2654435761) >> 13))]);
        }

        byte[] bytes = stream.ToArray();
        return kind == "cut" ? bytes[..(bytes.Length / 2)] : bytes;
    }

    private static void Add(ZipArchive zip, string name, byte[] bytes)
    {
        using Stream entry = zip.CreateEntry(name).Open();
        entry.Write(bytes);
    }
}
