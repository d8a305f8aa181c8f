namespace SecondShore.Desk.Views;

/// <summary>What is asked of the weather.</summary>
/// <param name="Years">Past years wanted, of which those that the lake has are not asked for.</param>
/// <param name="Forecast">Address of another forecast of the same form; null takes the open service's.</param>
/// <param name="Archive">Address of its archive.</param>
public sealed record WeatherAsk(int Years = 0, string? Forecast = null, string? Archive = null);

/// <summary>Weather that came and stands among the lake's files.</summary>
/// <param name="Source">What its licence asks to be shown.</param>
/// <param name="Notes">What was filled, left out or did not come, in sentences.</param>
public sealed record WeatherView(string Source, IReadOnlyList<string> Notes);
