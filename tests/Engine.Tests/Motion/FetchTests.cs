using CsCheck;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;
using SecondShore.TestKit;
using Xunit;

namespace SecondShore.Engine.Tests.Motion;

public class FetchTests
{
    [Fact]
    public void Fetch_in_a_wide_box_is_the_distance_to_the_upwind_wall()
    {
        DepthGrid grid = TestBasins.Box(100, 400, 20, 10);
        FetchField fetch = FetchOf(grid);
        PlanePoint place = new(510, 4010);
        // A fan of +/-13 deg meets the wall ahead a few per cent further off than the straight line.
        Assert.InRange(fetch.FetchM(place, 270), 500, 530);
        Assert.InRange(fetch.FetchM(place, 90), 1480, 1540);
        Assert.Equal(10, fetch.Sample(fetch.CellAt(place), 270).MeanDepthM, 3);
    }

    [Fact]
    public void Fetch_agrees_with_marching_rays_cell_by_cell()
    {
        DepthGrid grid = TestBasins.Winding(3);
        FetchField fetch = FetchOf(grid);
        double error = 0, total = 0;
        int counted = 0;
        foreach (double fromDeg in new[] { 0.0, 40, 130, 200, 310 })
        {
            for (int i = 0; i < grid.Frame.Count; i += 7)
            {
                PlanePoint place = grid.Frame.Centre(i);
                if (!(grid.DepthM[i] > 0)) continue;
                double expected = 0;
                for (int k = -4; k <= 4; k++) expected += MarchM(grid, place, fromDeg + (k * 10.0 / 3.0)) / 9;
                error += Math.Abs(fetch.FetchM(place, fromDeg) - expected);
                total += expected;
                counted++;
            }
        }

        Assert.True(counted > 500);
        Assert.InRange(error / total, 0, 0.05);
    }

    [Fact]
    public void Turning_the_lake_turns_its_fetch()
    {
        DepthGrid grid = TestBasins.Winding(1, 50, 50);
        DepthGrid turned = TestBasins.Of(50, 50, 50, (x, y) => grid.DepthAtM(new PlanePoint(y, 2500 - x)) is var d && double.IsNaN(d) ? 0 : d);
        FetchField fetch = FetchOf(grid), turnedFetch = FetchOf(turned);
        double differ = 0, sum = 0;
        for (int i = 0; i < grid.Frame.Count; i++)
        {
            PlanePoint p = turned.Frame.Centre(i);
            // The turned lake's point p is the lake's point (y, 2500 - x); its east is the lake's south: bearings grow by 90.
            double a = turnedFetch.FetchM(p, 30), b = fetch.FetchM(new PlanePoint(p.YM, 2500 - p.XM), 120);
            differ += Math.Abs(a - b);
            sum += b;
        }

        Assert.InRange(differ / sum, 0, 0.02);
    }

    [Fact]
    public void No_fetch_is_negative_longer_than_the_grid_or_missing()
    {
        Gen.Select(Gen.Int[0, 200], Gen.Double[-720, 720]).Hold((seed, fromDeg) =>
        {
            DepthGrid grid = TestBasins.Winding(seed, 40, 30);
            FetchField fetch = FetchOf(grid);
            for (int cell = 0; cell < fetch.Count; cell++)
            {
                (double fetchM, double depthM) = fetch.Sample(cell, fromDeg);
                if (!(fetchM > 0 && fetchM < 2600 && depthM > 0 && depthM < 40)) return false;
            }

            return true;
        }, 12);
    }

    [Fact]
    public void A_fine_grid_is_stored_on_blocks_and_keeps_its_fetch()
    {
        DepthGrid coarse = TestBasins.Round(60, 50, 12), fine = TestBasins.Round(300, 10, 12);
        FetchField a = FetchOf(coarse), b = FetchOf(fine);
        Assert.True(b.Count <= FetchField.MaxStoredCells);
        PlanePoint place = new(1525, 905);
        Assert.InRange(b.FetchM(place, 0) / a.FetchM(place, 0), 0.97, 1.03);
    }

    [Fact]
    public void Off_the_water_there_is_no_fetch()
    {
        FetchField fetch = FetchOf(TestBasins.Round(30, 50, 12));
        Assert.Equal(0, fetch.FetchM(new PlanePoint(10, 10), 90));
        Assert.Equal(0, fetch.FetchM(new PlanePoint(-5000, 10), 90));
    }

    [Fact]
    public void A_grid_without_water_is_refused() =>
        Assert.Throws<ArgumentException>(() => FetchOf(TestBasins.Box(5, 5, 10, 0)));

    [Fact]
    public void Shelter_grows_with_fetch_and_ends_ten_bank_heights_out()
    {
        Assert.Equal(0.5, Shelter.StressShare(50, 10));
        Assert.Equal(1.0, Shelter.StressShare(100, 10));
        Assert.Equal(1.0, Shelter.StressShare(0, 0));
    }

    private static FetchField FetchOf(DepthGrid grid) => FetchField.Of(grid, null, TestContext.Current.CancellationToken);

    private static double MarchM(DepthGrid grid, PlanePoint from, double bearingDeg)
    {
        (double east, double north) = Bearings.Unit(bearingDeg);
        double stepM = 0.05 * grid.Frame.CellM, distanceM = 0;
        while (grid.Frame.TryCellAt(new PlanePoint(from.XM + (east * distanceM), from.YM + (north * distanceM)), out int ix, out int iy)
            && grid.IsWater(ix, iy)) distanceM += stepM;
        return distanceM;
    }
}
