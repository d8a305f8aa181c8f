using System.Text;
using System.Text.Json;
using SecondShore.Open.Asking;
using SecondShore.Open.Surveys;
using SecondShore.TestKit;

namespace SecondShore.Open.Tests;

public class ServiceCatalogueTests
{
    private static readonly string[] Keys =
        ["id", "agency", "region", "address", "layer", "depth_field", "unit", "unit_from", "datum", "licence", "documented_at", "tried"];

    [Fact]
    public void Every_service_of_the_catalogue_says_whose_it_is_and_where_that_is_written()
    {
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(Path.Combine(SharedData.RepositoryRoot, "docs", "catalogue.json")));
        JsonElement[] services = [.. json.RootElement.GetProperty("services").EnumerateArray()];
        Assert.NotEmpty(services);
        foreach (JsonElement service in services)
        {
            Assert.Equal(Keys.Order(), service.EnumerateObject().Select(p => p.Name).Order());
            foreach (string key in Keys.Except(["depth_field", "unit"])) Assert.NotEqual("", service.GetProperty(key).GetString());
            Assert.Contains(service.GetProperty("unit").GetString(), (string[])["", "m", "ft", "fathoms", "dm", "cm", "mm"]);
            Assert.Matches("^[a-z][a-z0-9-]+$", service.GetProperty("id").GetString()!);
            Assert.Equal("https", new Uri(service.GetProperty("address").GetString()!).Scheme);
            Assert.Equal("https", new Uri(service.GetProperty("documented_at").GetString()!).Scheme);
            Assert.NotEqual(SurveyStandard.File, SurveySearch.StandardOf(new Uri(service.GetProperty("address").GetString()!)));
        }

        Assert.Equal(services.Length, ServiceCatalogue.Own().Select(e => e.Id).Distinct().Count());
    }

    [Theory]
    [InlineData("{", "is no JSON")]
    [InlineData("{}", "lists no 'services'")]
    [InlineData("""{"services":[{"id":"x","address":"file:///etc/passwd"}]}""", "without a web address")]
    public void A_list_of_another_form_is_told(string json, string said) =>
        Assert.Contains(said, Assert.Throws<OpenException>(() => ServiceCatalogue.Read(Encoding.UTF8.GetBytes(json), "mine.json")).Said(),
            StringComparison.Ordinal);
}
