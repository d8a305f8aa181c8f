using SecondShore.Open.Asking;
using SecondShore.TestKit;

namespace SecondShore.Open.Tests;

/// <summary>What the tests share: no waiting between questions, and a word on what was told.</summary>
internal static class Quick
{
    public static readonly AskPatience Patience =
        new(2, TimeSpan.FromMilliseconds(1), TimeSpan.FromSeconds(20), TimeSpan.Zero, TimeSpan.FromSeconds(60));

    public static HttpClient Http() => new(new HttpClientHandler { AllowAutoRedirect = false }) { Timeout = Timeout.InfiniteTimeSpan };

    public static PoliteClient Client(HttpClient http, AskPatience? patience = null, IAnswerCache? cache = null,
        List<string>? told = null) =>
        new(http, cache ?? new NoAnswerCache(), TimeProvider.System, f => told?.Add(f.Say(UnitSystem.Metric)), patience ?? Patience);

    public static OpenServices Services(ServiceStandIn service) => OpenServices.At(service.At("search"), service.At("map"));

    public static string Said(this OpenException e) => e.Finding.Say(UnitSystem.Metric);
}
