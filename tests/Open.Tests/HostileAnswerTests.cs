using System.Net;
using System.Text;
using SecondShore.Formats.Lake;
using SecondShore.Open.Asking;
using SecondShore.Open.Lakes;
using SecondShore.Open.Outlines;
using SecondShore.Open.Places;
using SecondShore.TestKit;

namespace SecondShore.Open.Tests;

/// <summary>Whatever a service answers, it ends in a lake or a sentence, in bounded memory.</summary>
public class HostileAnswerTests
{
    private const long MostBytes = 300L << 20;

    [Fact]
    [LongerCheck]
    public async Task A_damaged_answer_ends_in_a_lake_or_a_sentence()
    {
        byte[] places = Encoding.UTF8.GetBytes(OpenMapStandIn.Places("Ferncombe")),
            list = Encoding.UTF8.GetBytes(OpenMapStandIn.Map("44.73,")),
            shape = Encoding.UTF8.GetBytes(OpenMapStandIn.Map($"relation({OpenMapStandIn.FerncombeId});out geom;"));
        int cases = LongCheck.Number(300, 10_000), lakes = 0, sentences = 0;
        for (int k = 0; k < cases; k++)
        {
            Mutator mutator = new((ulong)k + 1);
            // One answer is damaged, in turn each of the three, every seventh time all of them.
            byte[] Sent(byte[] whole, int turn) => k % 3 == turn || k % 7 == 0 ? mutator.Damage(whole) : whole;
            using HttpClient http = new(new Canned(Sent(places, 0), Sent(list, 1), Sent(shape, 2)));
            long before = GC.GetTotalAllocatedBytes();
            string? said = await LakeAsync(http);
            Assert.True(GC.GetTotalAllocatedBytes() - before < MostBytes, $"case {k}");
            if (said is null) lakes++;
            else sentences++;
            if (said is not null) Assert.EndsWith(".", said, StringComparison.Ordinal);
        }

        // Both ends are met: the damage is neither nothing nor everything.
        Assert.True(lakes > cases / 20 && sentences > cases / 20, $"{lakes} lakes, {sentences} sentences");
    }

    // Null for a lake, else the sentence.
    private static async Task<string?> LakeAsync(HttpClient http)
    {
        using PoliteClient client = Quick.Client(http, Quick.Patience with { Attempts = 0 });
        OpenServices services = OpenServices.At(new Uri("http://places.example/search"), new Uri("http://map.example/map"));
        try
        {
            FoundPlace place = (await new PlaceSearch(client, services).FindAsync("Ferncombe"))[0];
            WaterSearch search = new(client, services);
            IReadOnlyList<FoundWater> waters = await search.NearAsync(place.Place, "Ferncombe Water");
            LakeOutline? outline = waters.Count == 0 ? null : await search.OutlineAsync(waters[0]);
            LakeDraft draft =
                new(place.Name, place.Place) { ElevationM = place.ElevationM, TimeZoneId = place.TimeZoneId, Outline = outline };
            LakeFolder lake = LakeFolderReader.Read(LakeDraftFiles.Of(draft, DateTimeOffset.UnixEpoch));
            Assert.True(lake.IsUsable, string.Join("; ", lake.Problems.Select(p => p.Say(UnitSystem.Metric))));
            Assert.InRange(lake.Site.Position.LatDeg, -89, 89);
            return null;
        }
        catch (OpenException e)
        {
            return e.Said();
        }
    }

    private sealed class Canned(byte[] places, byte[] list, byte[] shape) : HttpMessageHandler
    {
        protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            string form = request.Content is null ? "" : await request.Content.ReadAsStringAsync(cancellationToken);
            return new HttpResponseMessage(HttpStatusCode.OK)
            {
                Content = new ByteArrayContent(request.RequestUri!.Host == "places.example" ? places
                    : form.Contains("geom", StringComparison.Ordinal) ? shape : list),
            };
        }
    }
}
