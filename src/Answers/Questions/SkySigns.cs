using SecondShore.Answers.Lake;

namespace SecondShore.Answers.Questions;

/// <summary>Hours whose weather calls for a caution: showers, and damp calm air in which fog forms.</summary>
internal static class SkySigns
{
    private const double ShowerMmPerH = 0.5;
    private const double FogHumidityShare = 0.97;
    private const double FogWindMps = 2.0;

    public static (IReadOnlyList<DateTimeOffset> Showers, IReadOnlyList<DateTimeOffset> Fog) Between(PreparedLake lake, DateTimeOffset from, DateTimeOffset to)
    {
        List<DateTimeOffset> showers = [], fog = [];
        if (lake.Folder.Weather is not { } weather) return (showers, fog);
        for (int i = 0; i < weather.Count; i++)
        {
            DateTimeOffset at = weather.TimesUtc[i];
            if (at < from || at > to) continue;
            DateTimeOffset local = AnswerTime.ToLocal(at, lake.Folder);
            if (weather.PrecipitationMmPerH is { } rain && rain[i] >= ShowerMmPerH) showers.Add(local);
            if (weather.RelativeHumidity is { } damp && damp[i] >= FogHumidityShare && weather.WindMps is { } wind && wind[i] <= FogWindMps) fog.Add(local);
        }

        return (showers, fog);
    }
}
