namespace SecondShore.Engine.Season;

/// <summary>The mixed lake that a season starts from where no cast tells better (choice; season.md, "Start").</summary>
public static class MixedStart
{
    /// <summary>Temperature of the whole lake, degC: the air's own above 4, a little under 4 in the cold.</summary>
    /// <param name="airC">Mean air temperature of the first three weeks, degC.</param>
    public static double TempC(double airC) => Math.Clamp(airC > 4 ? airC : 3.6 + (0.1 * Math.Max(-4, airC)), 2.5, 28);
}
