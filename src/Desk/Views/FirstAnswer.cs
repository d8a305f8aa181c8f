namespace SecondShore.Desk.Views;

/// <summary>An answer that was worked out when the app was built, for the first screen.</summary>
/// <param name="Name">The name that a device keeps such an answer under.</param>
/// <param name="Json">The answer as it crosses to the page, which alone reads it.</param>
/// <param name="Drawing">What the chart takes in of it; null for nothing.</param>
public sealed record FirstAnswer(string Name, string Json, Drawing? Drawing);
