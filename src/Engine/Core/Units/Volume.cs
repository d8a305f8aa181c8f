namespace SecondShore.Engine.Core.Units;

/// <summary>Measures of a volume at an edge of the system.</summary>
public static class Volume
{
    /// <summary>Litres in one US gallon of 231 cubic inches, exact.</summary>
    public static readonly double LitresPerUsGallon = 3.785411784;
}
