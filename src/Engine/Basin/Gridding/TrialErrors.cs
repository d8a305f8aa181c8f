namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Errors of every tried method at the same left-out soundings.</summary>
/// <param name="DistanceM">Distance to the nearest kept datum, m.</param>
/// <param name="DrawnM">[method][sounding] errors of the sheets as drawn, m, in the order of <see cref="Methods"/>; empty where a method was not tried.</param>
/// <param name="SettledM">The same once the sheets were settled on the kept soundings.</param>
internal sealed record TrialErrors(double[] DistanceM, double[][] DrawnM, double[][] SettledM)
{
    /// <summary>The methods that can be tried.</summary>
    public static readonly GriddingMethod[] Methods = [GriddingMethod.Linear, GriddingMethod.NaturalNeighbour, GriddingMethod.Kriging, GriddingMethod.Distance];

    /// <summary>Number of soundings.</summary>
    public int Count => DistanceM.Length;

    /// <summary>Errors of a method, m.</summary>
    public double[] ErrorsM(GriddingMethod method, bool settled) => (settled ? SettledM : DrawnM)[Array.IndexOf(Methods, method)];

    /// <summary>All but the fiftieth of the soundings that the best method of each misses most: a wild sounding says nothing about the methods.</summary>
    public bool[] Fair()
    {
        double[] least = new double[Count];
        Array.Fill(least, double.PositiveInfinity);
        foreach (double[] errors in DrawnM)
            for (int i = 0; i < errors.Length; i++) least[i] = Math.Min(least[i], Math.Abs(errors[i]));
        double[] sorted = [.. least];
        Array.Sort(sorted);
        double most = sorted[(int)(0.98 * (sorted.Length - 1))];
        return Array.ConvertAll(least, e => e <= most);
    }

    /// <summary>Root mean square of the errors that count.</summary>
    public static double Rmse(double[] errorsM, bool[]? counts = null)
    {
        double sum = 0;
        int number = 0;
        for (int i = 0; i < errorsM.Length; i++)
        {
            if (counts is not null && !counts[i]) continue;
            sum += errorsM[i] * errorsM[i];
            number++;
        }

        return Math.Sqrt(sum / number);
    }
}
