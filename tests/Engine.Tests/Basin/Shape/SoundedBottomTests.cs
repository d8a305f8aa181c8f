using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Shape;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Tests.Basin.Shape;

public class SoundedBottomTests
{
    private static readonly PlanePoint Middle = new(0, 0);

    [Fact]
    public void A_sounding_is_believed_where_it_lies_and_the_error_shrinks_about_it()
    {
        GuessedBottom guess = Lake();
        SoundedBottom bottom = guess.Sound();
        PlanePoint at = new(150, 40);
        double guessedM = guess.Grid!.DepthAtM(at);
        SoundingEffect effect = bottom.Add(new Sounding(at, guessedM + 2, 0.1));
        DepthGrid after = bottom.Grid();
        Assert.True(effect.IsTaken);
        Assert.Equal(guessedM + 2, after.DepthAtM(at), 0.35);
        Assert.True(Sd(after, at) < 0.15 * Sd(guess.Grid, at), $"{Sd(after, at)} after {Sd(guess.Grid, at)}");
        for (int i = 0; i < after.DepthM.Length; i++) Assert.True(after.DepthSdM[i] <= guess.Grid.DepthSdM[i] + 1e-5);
        Assert.True(Sd(after, new PlanePoint(190, 40)) < Sd(after, new PlanePoint(-300, -40)) * 1.2);
    }

    [Fact]
    public void Soundings_one_by_one_are_the_kriging_of_all_at_once()
    {
        GuessedBottom guess = Lake();
        GuessModel model = guess.Model!;
        SoundedBottom bottom = guess.Sound();
        int[] at = [.. new[] { new PlanePoint(100, 0), new PlanePoint(-200, 50), new PlanePoint(110, 10) }.Select(p => bottom.CellAt(p))];
        double[] offM = [1.5, -2, 0.5];
        const double sdM = 0.4;
        for (int q = 0; q < 3; q++) bottom.Add(new Sounding(model.Frame.Centre(model.Cells[at[q]]), model.MeanM[at[q]] + offM[q], sdM));
        // Written out: (K + e) w = k for three places.
        double[,] k = new double[3, 3];
        for (int a = 0; a < 3; a++)
            for (int b = 0; b < 3; b++) k[a, b] = a == b ? model.VarianceM2(at[a]) + (sdM * sdM) : model.CovarianceM2(at[a], at[b]);
        int asked = bottom.CellAt(new PlanePoint(60, -30));
        double[] toAsked = [.. at.Select(a => model.CovarianceM2(a, asked))], weight = Solve(k, toAsked);
        Assert.Equal(model.MeanM[asked] + weight.Zip(offM, (w, o) => w * o).Sum(), bottom.MeanM[asked], 1e-3);
        Assert.Equal(model.VarianceM2(asked) - weight.Zip(toAsked, (w, c) => w * c).Sum(), bottom.VarianceM2[asked], 1e-3);
    }

    [Fact]
    public void A_lake_of_unknown_depth_learns_its_depth_from_one_sounding()
    {
        GuessedBottom guess = BottomGuesser.Guess(Outlines.Sketch(Outlines.Ellipse(500, 200)));
        SoundedBottom bottom = guess.Sound();
        bottom.Add(new Sounding(Middle, 2 * guess.DeepestM, 0.2));
        // Far beyond the reach of a single hollow.
        PlanePoint far = new(-400, 0);
        Assert.True(bottom.Grid().DepthAtM(far) > 1.1 * guess.Grid!.DepthAtM(far));
    }

    [Fact]
    public void Land_and_nonsense_are_not_taken()
    {
        SoundedBottom bottom = Lake().Sound();
        Assert.False(bottom.Add(new Sounding(new PlanePoint(5000, 0), 3, 0.1)).IsTaken);
        Assert.Equal(0, bottom.Count);
        Assert.Throws<ArgumentOutOfRangeException>(() => bottom.Add(new Sounding(Middle, double.NaN, 0.1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => bottom.Add(new Sounding(Middle, 3, 0)));
        Assert.True(bottom.Add(new Sounding(Middle, 300, 0.1)).SurpriseSd > 4, "a depth in the wrong unit must stand out");
    }

    [Fact]
    public void Water_stays_water_whatever_is_sounded_beside_it()
    {
        SoundedBottom bottom = Lake().Sound();
        SeededRandom random = new(3);
        for (int q = 0; q < 60; q++)
            bottom.Add(new Sounding(new PlanePoint(random.NextDouble(-480, 480), random.NextDouble(-180, 180)), 0.1, 0.05));
        DepthGrid grid = bottom.Grid();
        Assert.Equal(Lake().Grid!.DepthM.Count(z => z > 0), grid.DepthM.Count(z => z > 0));
        Assert.All(grid.DepthSdM, sd => Assert.True(float.IsFinite(sd)));
    }

    [Fact]
    public void A_days_track_is_drawn_together_and_costs_no_more_than_its_squares()
    {
        GuessedBottom guess = Lake();
        SoundedBottom bottom = guess.Sound();
        Sounding[] track = [.. Enumerable.Range(0, 5000).Select(k => new PlanePoint(-450 + (0.18 * k), 60 * Math.Sin(k / 300.0)))
            .Select(p => new Sounding(p, Math.Max(0.2, guess.Grid!.DepthAtM(p) * 1.2), 0.3))];
        Assert.Equal(5000, bottom.AddAll(track));
        Assert.InRange(bottom.Count, 50, SoundedBottom.MostSoundings);
        Assert.True(bottom.NextCellsCount <= (SoundedBottom.MostSoundings + 1L) * 5000);
        DepthGrid after = bottom.Grid();
        foreach (Sounding s in track.Where((_, i) => i % 250 == 0)) Assert.Equal(s.DepthM, after.DepthAtM(s.Place), 0.15 * s.DepthM + 0.3);
    }

    [Fact]
    public void Sound_here_asks_where_the_thermocline_may_meet_the_bottom_and_not_twice_at_one_place()
    {
        GuessedBottom guess = Lake();
        SoundedBottom bottom = guess.Sound();
        IReadOnlyList<SoundingWish> wishes = SoundHere.Best(bottom, 5, 0.3, 6);
        Assert.Equal(6, wishes.Count);
        Assert.All(wishes, w => Assert.True(w.GainShare > 0 && w.GainShare < 1));
        for (int a = 0; a < wishes.Count; a++)
            for (int b = 0; b < a; b++) Assert.True(wishes[a].Place.DistanceToM(wishes[b].Place) > 30, "two wishes at one place");
        // A depth where the first wish lies leaves less to gain there.
        bottom.Add(new Sounding(wishes[0].Place, wishes[0].LikelyDepthM, 0.1));
        Assert.True(SoundHere.Best(bottom, 5, 0.3, 1)[0].Place.DistanceToM(wishes[0].Place) > 30);
    }

    [Fact]
    public void Sound_here_takes_more_from_the_error_of_the_crossing_than_the_same_number_elsewhere()
    {
        GuessedBottom guess = Lake();
        SoundedBottom wished = guess.Sound(), others = guess.Sound();
        foreach (SoundingWish wish in SoundHere.Best(wished, 5, 0.3, 8)) wished.Add(new Sounding(wish.Place, wish.LikelyDepthM, 0.2));
        SeededRandom random = new(11);
        while (others.Count < 8)
        {
            PlanePoint p = new(random.NextDouble(-480, 480), random.NextDouble(-180, 180));
            if (others.CellAt(p) is int k and >= 0) others.Add(new Sounding(p, others.MeanM[k], 0.2));
        }

        Assert.True(Crossing(wished) < 0.95 * Crossing(others), $"{Crossing(wished)} against {Crossing(others)}");

        double Crossing(SoundedBottom bottom)
        {
            double sum = 0;
            for (int k = 0; k < bottom.MeanM.Length; k++)
                if (Math.Abs(guess.Model!.MeanM[k] - 5) < 1) sum += bottom.VarianceM2[k];
            return sum;
        }
    }

    private static GuessedBottom Lake() => BottomGuesser.Guess(Outlines.Sketch(Outlines.Ellipse(500, 200)) with { DeepestM = 12 });

    private static double Sd(DepthGrid grid, PlanePoint at) =>
        grid.Frame.TryCellAt(at, out int x, out int y) ? grid.DepthSdM[grid.Frame.Index(x, y)] : double.NaN;

    private static double[] Solve(double[,] a, double[] b)
    {
        double[,] m = (double[,])a.Clone();
        double[] x = (double[])b.Clone();
        int n = b.Length;
        for (int p = 0; p < n; p++)
        {
            for (int r = p + 1; r < n; r++)
            {
                double f = m[r, p] / m[p, p];
                for (int c = p; c < n; c++) m[r, c] -= f * m[p, c];
                x[r] -= f * x[p];
            }
        }

        for (int r = n - 1; r >= 0; r--)
        {
            for (int c = r + 1; c < n; c++) x[r] -= m[r, c] * x[c];
            x[r] /= m[r, r];
        }

        return x;
    }
}
