namespace SecondShore.Desk;

/// <summary>Steps of long work, as the page's texts name them: <c>step.files</c> and so on.</summary>
internal static class Steps
{
    public const string Files = "files", Bottom = "bottom", Season = "season", Forms = "forms", Places = "places",
        Water = "water", Route = "route", Others = "others", Papers = "papers", Weather = "weather";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } = [Files, Bottom, Season, Forms, Places, Water, Route, Others, Papers, Weather];
}
