using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Basin.Spots;

/// <summary>The ground about a place: steepest slope, range of depths, nearest deeper water, spread of chance.</summary>
internal readonly record struct Surroundings(double SlopeDeg, double ShallowM, double DeepM, double NearShallowM, double NearDeepM, double DeepWaterM, double ToDeepWaterM, Spread Chance)
{
    public static Surroundings Of(DepthGrid grid, float[]? chance, int cell, double yardstickM, double deepReachM)
    {
        int cx = cell % grid.Frame.Nx, cy = cell / grid.Frame.Nx;
        double cellM = grid.Frame.CellM, slope = 0, shallow = grid.DepthM[cell], deep = grid.DepthM[cell], deepWater = double.NaN, toDeep = double.NaN;
        int near = Math.Max(1, (int)(0.5 * yardstickM / cellM)), wide = Math.Max(1, (int)(yardstickM / cellM));
        List<double> chances = [], depths = [];
        for (int y = cy - wide; y <= cy + wide; y++)
        {
            for (int x = cx - wide; x <= cx + wide; x++)
            {
                if (!grid.IsWater(x, y)) continue;
                int i = grid.Frame.Index(x, y);
                shallow = Math.Min(shallow, grid.DepthM[i]);
                deep = Math.Max(deep, grid.DepthM[i]);
                if (Math.Abs(x - cx) > near || Math.Abs(y - cy) > near) continue;
                slope = Math.Max(slope, Slope(grid, x, y));
                depths.Add(grid.DepthM[i]);
                if (chance is not null) chances.Add(chance[i]);
            }
        }

        PlanePoint at = grid.Frame.Centre(cell);
        for (double r = cellM; r <= deepReachM && double.IsNaN(toDeep); r += Math.Max(cellM, 10))
        {
            for (int k = 0; k < 16; k++)
            {
                double there = grid.DepthAtM(new PlanePoint(at.XM + (r * Math.Cos(k * Math.PI / 8)), at.YM + (r * Math.Sin(k * Math.PI / 8))));
                if (there >= grid.DepthM[cell] + 5) (deepWater, toDeep) = (there, r);
            }
        }

        chances.Sort();
        depths.Sort();
        // On a steep edge most cells about a place lie off the belt; the spread is over the ground that a pass would keep to.
        if (chances.Count > 0) RemoveBelow(chances, 0.25 * chances[^1]);
        Spread spread = chances.Count == 0 ? default : new Spread(At(chances, 0.1), At(chances, 0.5), At(chances, 0.9));
        return new Surroundings(double.RadiansToDegrees(Math.Atan(slope)), shallow, deep, At(depths, 0.15), At(depths, 0.85), deepWater, toDeep, spread);

        static void RemoveBelow(List<double> sorted, double least) => sorted.RemoveAll(c => c < least);

        static double At(List<double> sorted, double share) => sorted[(int)Math.Round(share * (sorted.Count - 1))];
    }

    public static double Slope(DepthGrid grid, int x, int y)
    {
        double dx = Half(x - 1, y, x + 1, y), dy = Half(x, y - 1, x, y + 1);
        return Math.Sqrt((dx * dx) + (dy * dy));

        double Half(int x0, int y0, int x1, int y1)
        {
            bool a = grid.IsWater(x0, y0), b = grid.IsWater(x1, y1);
            float here = grid.DepthM[grid.Frame.Index(x, y)], before = a ? grid.DepthM[grid.Frame.Index(x0, y0)] : here, after = b ? grid.DepthM[grid.Frame.Index(x1, y1)] : here;
            return a || b ? (after - before) / ((a && b ? 2 : 1) * grid.Frame.CellM) : 0;
        }
    }
}
