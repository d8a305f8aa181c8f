using SecondShore.Engine.Rig;

namespace SecondShore.Cli.Console;

/// <summary>Draws the line under water: true to its shape, water on top, bottom below, boat to the right.</summary>
internal static class LineChart
{
    private const int Wide = 66;
    private const int High = 14;

    // A character cell is about twice as high as wide.
    private const double CellRatio = 2.0;

    public static IEnumerable<string> Draw(TowShape shape, double depthM, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(units);
        double behindM = Math.Max(shape.Tow.TrailM, 0.1), scaleM = Math.Max(behindM / (Wide - 4), depthM / (High * CellRatio));
        int rows = Math.Max((int)Math.Round(depthM / (scaleM * CellRatio)), 2);
        char[][] grid = new char[rows + 1][];
        for (int row = 0; row <= rows; row++)
        {
            grid[row] = new char[Wide];
            Array.Fill(grid[row], row == 0 ? '~' : row == rows ? '_' : ' ');
        }

        for (int i = 1; i < shape.Points.Count; i++)
        {
            (LinePoint a, LinePoint b) = (shape.Points[i - 1], shape.Points[i]);
            for (int k = 0; k <= 20; k++)
            {
                double t = k / 20.0, height = a.HeightM + (t * (b.HeightM - a.HeightM)), behind = a.BehindM + (t * (b.BehindM - a.BehindM));
                if (height <= depthM) Put(behind, height, '.');
            }
        }

        Put(shape.Points[0].BehindM, shape.Points[0].HeightM, 'o');
        for (int row = 0; row <= rows; row++)
            yield return new string(grid[row]).TrimEnd() + (row == 0 ? $" {units.ShortDistance(0)}" : row == rows ? $" {units.Depth(depthM)}" : "");
        yield return $"o jig, {units.ShortDistance(behindM)} behind the rod tip; height and length to one scale";

        void Put(double behind, double height, char mark)
        {
            int row = Math.Clamp((int)Math.Round((depthM - height) / (scaleM * CellRatio)), 0, rows);
            int column = Math.Clamp(Wide - 2 - (int)Math.Round(behind / scaleM), 0, Wide - 1);
            grid[row][column] = mark;
        }
    }
}
