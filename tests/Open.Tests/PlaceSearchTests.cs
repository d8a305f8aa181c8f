using System.Text;
using SecondShore.Engine.Core.Geo;
using SecondShore.Open.Asking;
using SecondShore.Open.Places;
using SecondShore.TestKit;

namespace SecondShore.Open.Tests;

public sealed class PlaceSearchTests : IDisposable
{
    private readonly ServiceStandIn _service = OpenMapStandIn.Start();
    private readonly HttpClient _http = Quick.Http();
    private readonly List<string> _told = [];

    public void Dispose()
    {
        _http.Dispose();
        _service.Dispose();
    }

    private PlaceSearch Search => new(Quick.Client(_http, told: _told), Quick.Services(_service));

    [Fact]
    public async Task Lakes_come_before_towns_of_the_name_with_height_and_zone()
    {
        IReadOnlyList<FoundPlace> found = await Search.FindAsync("Ferncombe");
        Assert.Equal(["Ferncombe Water", "Ferncombe"], found.Select(p => p.Name));
        Assert.Equal([true, false], found.Select(p => p.IsWater));
        Assert.Equal((241.0, "America/Detroit", "North Shire, Nowhere"), (found[0].ElevationM, found[0].TimeZoneId, found[0].Region));
        Assert.Equal(new GeoPoint(OpenMapStandIn.LatDeg, OpenMapStandIn.LonDeg), found[0].Place);
    }

    [Fact]
    public async Task Only_the_name_goes_out_and_that_is_told_before()
    {
        await Search.FindAsync("Ferncombe & Söhne");
        ServiceQuestion asked = Assert.Single(_service.Asked);
        Assert.Equal("?name=Ferncombe & Söhne&count=20&language=en&format=json", asked.Query);
        Assert.Equal("To 127.0.0.1 goes: the name 'Ferncombe & Söhne'.", Assert.Single(_told));
    }

    [Theory]
    [InlineData("""{"generationtime_ms":1}""", "No place named 'Nowhere' was found")]
    [InlineData("""{"error":true,"reason":"Limit exceeded"}""", "says: Limit exceeded.")]
    [InlineData("<html>", "not of the documented form")]
    [InlineData("[1,2]", "not of the documented form")]
    [InlineData("""{"results":[{"name":"a","latitude":99,"longitude":0},{"name":7,"latitude":1,"longitude":0},{"latitude":"1"}]}""", "No place named")]
    public async Task What_does_not_help_is_a_sentence_that_says_how_to_go_on(string body, string said)
    {
        _service.Faults.Enqueue(ServiceReply.Of(body));
        OpenException refused = await Assert.ThrowsAsync<OpenException>(() => Search.FindAsync("Nowhere"));
        Assert.Contains(said, refused.Said(), StringComparison.Ordinal);
        Assert.EndsWith("Or give the place itself, as latitude and longitude: 45.123,-84.567.", refused.Said(), StringComparison.Ordinal);
    }

    [Fact]
    public void Control_characters_and_turned_text_of_a_service_are_not_shown()
    {
        FoundPlace place = Assert.Single(PlaceSearch.Read(Encoding.UTF8.GetBytes("""{"results":[{"name":"a\u001b[2Jb\u202ec","latitude":1,"longitude":2,"timezone":"x/../y;z"}]}"""), "x"));
        Assert.Equal("a[2Jbc", place.Name);
        Assert.Null(place.TimeZoneId);
    }

    [Theory]
    [InlineData("45.12,-84.5", true)]
    [InlineData(" -45.12 , 170 ", true)]
    [InlineData("90,0", false)]
    [InlineData("Lake 1,2", false)]
    [InlineData("1,2,3", false)]
    [InlineData("1e1,2", false)]
    [InlineData("NaN,2", false)]
    public void A_place_by_its_numbers_is_told_from_a_name(string text, bool isPlace) =>
        Assert.Equal(isPlace, PlaceSearch.TryCoordinates(text, out _));
}
