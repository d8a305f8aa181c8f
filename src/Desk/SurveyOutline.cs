using System.Globalization;
using System.Text;

namespace SecondShore.Desk;

/// <summary>The outline of a survey on a field of 100 x 100, as the data of an SVG path.</summary>
internal static class SurveyOutline
{
    // The line runs this far outside of the places; so far apart may lines of soundings lie.
    private const double Reach = 6;
    private const double Step = 4;
    private const int Nodes = 31;
    private const double From = -10;

    /// <summary>Lines as they are.</summary>
    public static string Of(IEnumerable<IEnumerable<(double X, double Y)>> lines)
    {
        StringBuilder path = new();
        foreach (IEnumerable<(double X, double Y)> line in lines)
        {
            char letter = 'M';
            foreach ((double x, double y) in line)
            {
                path.Append(CultureInfo.InvariantCulture, $"{letter}{x:0.#} {y:0.#}");
                letter = 'L';
            }
        }

        return path.ToString();
    }

    /// <summary>A line around places: where the nearest of them is as far away as the reach.</summary>
    public static string Around(IReadOnlyList<(double X, double Y)> places)
    {
        double[] away = new double[Nodes * Nodes];
        for (int i = 0; i < away.Length; i++)
        {
            double x = From + (i % Nodes * Step), y = From + (i / Nodes * Step), nearest = double.PositiveInfinity;
            foreach ((double px, double py) in places) nearest = Math.Min(nearest, ((px - x) * (px - x)) + ((py - y) * (py - y)));
            away[i] = Math.Sqrt(nearest) - Reach;
        }

        List<(double X, double Y)[]> pieces = [];
        for (int row = 0; row + 1 < Nodes; row++)
            for (int column = 0; column + 1 < Nodes; column++) Square(away, column, row, pieces);
        return Of(pieces);
    }

    // The line crosses the edges of a square whose ends lie on either side of it, in pairs.
    private static void Square(double[] away, int column, int row, List<(double X, double Y)[]> pieces)
    {
        ReadOnlySpan<(int C, int R)> corners = [(0, 0), (1, 0), (1, 1), (0, 1)];
        List<(double X, double Y)> crossings = [];
        for (int k = 0; k < 4; k++)
        {
            (int C, int R) a = corners[k], b = corners[(k + 1) % 4];
            double from = away[((row + a.R) * Nodes) + column + a.C], to = away[((row + b.R) * Nodes) + column + b.C];
            if (from <= 0 == to <= 0) continue;
            double share = from / (from - to);
            crossings.Add((From + ((column + a.C + ((b.C - a.C) * share)) * Step), From + ((row + a.R + ((b.R - a.R) * share)) * Step)));
        }

        for (int k = 0; k + 1 < crossings.Count; k += 2) pieces.Add([crossings[k], crossings[k + 1]]);
    }
}
