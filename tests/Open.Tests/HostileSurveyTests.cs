using System.Net;
using System.Net.Http.Headers;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats;
using SecondShore.Formats.Lake;
using SecondShore.Open.Asking;
using SecondShore.Open.Lakes;
using SecondShore.Open.Outlines;
using SecondShore.Open.Surveys;
using SecondShore.TestKit;

namespace SecondShore.Open.Tests;

/// <summary>Whatever a depth service answers, it ends in a survey, a question or a sentence, in bounded memory and few questions.</summary>
public class HostileSurveyTests
{
    private const long MostBytes = 300L << 20;
    private static readonly string[] Links =
        ["ogc", "rest/services/Depths/FeatureServer", "rest/services/Bottom/ImageServer", "wfs", "wcs", "files/depths.csv"];
    private static readonly GeoPoint Place = new(OpenMapStandIn.LatDeg, OpenMapStandIn.LonDeg);

    private static readonly LakeFolder Lake = LakeFolderReader.Read(LakeDraftFiles.Of(
        new LakeDraft("Ferncombe Water", Place) { Outline = LakeOutline.Round(Place, 4e6) }, DateTimeOffset.UnixEpoch));

    [Fact]
    [LongerCheck]
    public async Task A_damaged_answer_ends_in_a_survey_or_a_sentence()
    {
        int cases = LongCheck.Number(240, 10_000), surveys = 0, sentences = 0;
        for (int k = 0; k < cases; k++)
        {
            Damaging answers = new(new Mutator((ulong)k + 1), k / Links.Length % 4);
            using HttpClient http = new(answers);
            long before = GC.GetTotalAllocatedBytes();
            bool isSurvey = await SurveyAsync(http, new Uri($"http://depths.example/{Links[k % Links.Length]}"));
            Assert.True(GC.GetTotalAllocatedBytes() - before < MostBytes, $"case {k}");
            Assert.InRange(answers.Count, 1, 210);
            if (isSurvey) surveys++;
            else sentences++;
        }

        Assert.True(surveys > cases / 20 && sentences > cases / 20, $"{surveys} surveys, {sentences} sentences");
    }

    private static async Task<bool> SurveyAsync(HttpClient http, Uri link)
    {
        using PoliteClient client = Quick.Client(http, Quick.Patience with { Attempts = 0 });
        SurveySearch search = new(client, TimeProvider.System);
        try
        {
            SurveyLayer layer = (await search.LayersAsync(link))[0];
            FetchedSurvey survey = await search.FetchAsync(layer, SurveyFolder.BoxOf(Lake));
            LakeFolder read = LakeFolderReader.Read(SurveyFolder.With(Lake, survey, DateTimeOffset.UnixEpoch).Files);
            Assert.All(read.Problems.Where(p => p.Severity == ProblemSeverity.Error),
                p => Assert.StartsWith("survey/", p.File, StringComparison.Ordinal));
            return true;
        }
        catch (OpenException e)
        {
            Assert.EndsWith(".", e.Said(), StringComparison.Ordinal);
            return false;
        }
    }

    // Damages the answer of one turn, or each with the last kind.
    private sealed class Damaging(Mutator mutator, int turn) : HttpMessageHandler
    {
        public int Count { get; private set; }

        protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            ServiceReply reply =
                DepthServiceStandIn.Answer(
                new ServiceQuestion(request.RequestUri!.AbsolutePath, Uri.UnescapeDataString(request.RequestUri.Query), ""));
            byte[] body = turn == 3 || Count == turn ? mutator.Damage(reply.Body) : reply.Body;
            Count++;
            ByteArrayContent content = new(body);
            content.Headers.ContentType = MediaTypeHeaderValue.Parse(reply.Type);
            return Task.FromResult(new HttpResponseMessage((HttpStatusCode)reply.Status) { Content = content });
        }
    }
}
