using CsCheck;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Basin.Gridding;

public class InterpolationTests
{
    private static readonly double[] X = [0, 50, 0], Y = [0, 0, 80];
    private static readonly float[] Depths = [5, 8, 6];

    [Fact]
    public void Linear_value_in_a_triangle_matches_the_check_value() =>
        Assert.Equal(6.45, LinearSurface.At((0, 0, 5), (50, 0, 8), (0, 80, 6), 20, 20), 0.0001);

    [Fact]
    public void Kriging_estimate_and_variance_match_the_check_values()
    {
        Assert.True(LocalKriging.TrySolve(X, Y, Depths, new Variogram(0.1, 1.0, 100), 20, 20, new double[20], out double value, out double variance));
        Assert.Equal(6.22827, value, 0.005);
        Assert.Equal(0.6726, variance, 0.005);
    }

    [Fact]
    public void Natural_neighbours_give_a_plane_back_and_the_data_at_the_data() =>
        Gen.Select(Gen.Double[0, 100], Gen.Double[0, 100]).Array[8, 60].Hold(points =>
        {
            double[] x = [.. points.Select(p => p.Item1), -1, 101, -1, 101], y = [.. points.Select(p => p.Item2), -1, -1, 101, 101];
            float[] plane = [.. x.Zip(y, (a, b) => (float)(3 + (0.1 * a) - (0.07 * b)))];
            Triangulation mesh = new(x, y);
            NaturalNeighbour.Probe natural = new(new NaturalNeighbour(mesh, plane));
            int triangle = 0;
            for (int k = 0; k < 40; k++)
            {
                double px = 2 + (k * 2.4), py = 97 - (k * 2.3);
                Assert.True(natural.TryAt(px, py, ref triangle, out double value));
                Assert.Equal(3 + (0.1 * px) - (0.07 * py), value, 0.06);
            }

            for (int i = 0; i < x.Length; i++)
            {
                natural.TryAt(x[i], y[i], ref triangle, out double value);
                Assert.Equal(plane[i], value, 0.01);
            }
        }, 100);

    [Fact]
    public void Natural_neighbours_stay_within_the_range_of_the_data() =>
        Gen.Select(Gen.Int[0, 12], Gen.Int[0, 12], Gen.Float[1, 30]).Array[6, 50].Hold(points =>
        {
            Triangulation mesh = new([.. points.Select(p => p.Item1 * 5.0)], [.. points.Select(p => p.Item2 * 5.0)]);
            if (mesh.EdgeCount == 0) return;
            float[] values = [.. points.Select(p => p.Item3)];
            NaturalNeighbour.Probe natural = new(new NaturalNeighbour(mesh, values));
            int triangle = 0;
            for (int k = 0; k < 200; k++)
                if (natural.TryAt((k % 20) * 3.1, (k / 20) * 6.3, ref triangle, out double value))
                    Assert.InRange(value, values.Min() - 1e-3, values.Max() + 1e-3);
        }, 150);

    [Fact]
    public void Kriging_draws_a_curved_bed_better_than_flat_triangles_and_natural_neighbours_as_well()
    {
        SurveyGridderShapes.Wavy wavy = new();
        double linear = wavy.Rmse(GriddingMethod.Linear), natural = wavy.Rmse(GriddingMethod.NaturalNeighbour), kriged = wavy.Rmse(GriddingMethod.Kriging);
        Assert.True(natural < 1.1 * linear, $"{natural} against {linear}");
        Assert.True(kriged < linear, $"{kriged} against {linear}");
    }

    [Fact]
    public void A_fitted_variogram_gives_back_the_one_the_lags_came_from()
    {
        Variogram truth = new(0.2, 3, 120);
        double[] distance = [.. Enumerable.Range(1, 15).Select(k => k * 12.0)];
        Variogram fitted = Variogram.Fit(distance, [.. distance.Select(truth.AtM2)], [.. distance.Select(_ => 100)]);
        Assert.Equal(0.2, fitted.NuggetM2, 0.1);
        Assert.Equal(3, fitted.PartialSillM2, 0.2);
        Assert.Equal(120, fitted.RangeM, 10.0);
    }

    [Fact]
    public void Error_grows_away_from_data_as_the_left_out_soundings_say()
    {
        double[] distance = [.. Enumerable.Range(0, 400).Select(k => k * 0.25)];
        double[] error = [.. distance.Select((d, k) => Math.Sqrt(0.04 + (0.02 * d)) * Math.Sqrt(2) * Math.Sin(k * 1.7))];
        ErrorModel model = ErrorModel.Fit(distance, error);
        Assert.True(model.SdM(100) > 2 * model.SdM(0));
        Assert.Equal(Math.Sqrt(0.04 + 2), model.SdM(100), 0.5);
    }

    [Fact]
    public void Error_that_grows_as_distance_itself_is_told_from_one_that_grows_as_its_root()
    {
        double[] distance = [.. Enumerable.Range(0, 400).Select(k => k * 0.25)];
        double[] error = [.. distance.Select((d, k) => Math.Sqrt(0.04 + (0.001 * d * d)) * Math.Sqrt(2) * Math.Sin(k * 1.7))];
        ErrorModel model = ErrorModel.Fit(distance, error);
        Assert.Equal(0, model.PerM);
        Assert.Equal(Math.Sqrt(10.04 / 0.14), model.SdM(100) / model.SdM(10), 1.5);
    }

    [Fact]
    public void Two_standard_errors_hold_95_percent_of_errors_with_heavy_tails()
    {
        double[] distance = [.. Enumerable.Range(0, 2000).Select(k => k % 40 * 1.0)];
        // One error in eight is five times as large.
        double[] error = [.. distance.Select((d, k) => (0.2 + (0.01 * d)) * Math.Sin(k * 2.3) * (k % 8 == 3 ? 5 : 1))];
        ErrorModel model = ErrorModel.Fit(distance, error);
        double within = distance.Where((d, k) => Math.Abs(error[k]) <= 2 * model.SdM(d)).Count() / 2000.0;
        Assert.Equal(0.95, within, 0.01);
    }
}
