using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Tests.Basin.Gridding;

public class SheetFitTests
{
    private static readonly GridFrame Frame = new(0, 0, 10, 20, 20);

    [Fact]
    public void A_coarse_sheet_comes_nearer_to_soundings_between_its_centres_and_to_others_beside_them()
    {
        PointCloud given = Soundings(1), others = Soundings(2);
        float[] sheet = Drawn(Curved);
        double before = Rmse(sheet, others);
        new SheetFit(Frame).Settle(sheet, null, given);
        Assert.True(Rmse(sheet, others) < 0.8 * before, $"{Rmse(sheet, others)} against {before}");
    }

    [Fact]
    public void A_sheet_that_holds_its_soundings_stays_and_cells_without_water_stay_dry()
    {
        static double Plane(double x, double y) => 4 + (0.01 * x) + (0.02 * y);
        PointCloud given = new();
        for (int i = 0; i < 200; i++) given.Add(10 + (i % 18 * 10), 15 + (i / 18 * 12), Plane(10 + (i % 18 * 10), 15 + (i / 18 * 12)), PointKind.Sounding, 0);
        float[] sheet = Drawn(Plane), before = [.. sheet];
        sheet[Frame.Index(3, 3)] = float.NaN;
        new SheetFit(Frame).Settle(sheet, null, given);
        Assert.True(float.IsNaN(sheet[Frame.Index(3, 3)]));
        for (int i = 0; i < sheet.Length; i++)
            if (Math.Abs((i % 20) - 3) > 6 || Math.Abs((i / 20) - 3) > 6) Assert.Equal(before[i], sheet[i], 1e-4f);
    }

    [Fact]
    public void A_wild_sounding_never_dries_the_water_out()
    {
        PointCloud wild = new();
        for (int i = 0; i < 30; i++) wild.Add(55, 55, 0.01, PointKind.Sounding, 0);
        float[] sheet = Drawn((_, _) => 20);
        new SheetFit(Frame).Settle(sheet, null, wild);
        Assert.All(sheet, d => Assert.True(d > 0));
    }

    private static double Curved(double x, double y) => 10 + (4 * Math.Sin(x / 9) * Math.Cos(y / 11));

    private static float[] Drawn(Func<double, double, double> bed) =>
        [.. Enumerable.Range(0, Frame.Count).Select(i => (float)bed(Frame.Centre(i).XM, Frame.Centre(i).YM))];

    private static PointCloud Soundings(ulong seed)
    {
        SeededRandom random = new(seed);
        PointCloud cloud = new();
        for (int i = 0; i < 4000; i++)
        {
            double x = random.NextDouble(6, 194), y = random.NextDouble(6, 194);
            cloud.Add(x, y, Curved(x, y), PointKind.Sounding, 0);
        }

        return cloud;
    }

    private static double Rmse(float[] sheet, PointCloud cloud)
    {
        double sum = 0;
        for (int i = 0; i < cloud.Count; i++)
        {
            double off = SheetFit.At(sheet, null, Frame, cloud.XM[i], cloud.YM[i]) - cloud.DepthM[i];
            sum += off * off;
        }

        return Math.Sqrt(sum / cloud.Count);
    }
}
