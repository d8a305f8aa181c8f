using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Tests.Basin.Gridding;

public class SparseDrawTests
{
    private static readonly GridFrame Frame = new(0, 0, 5, 150, 110);

    [Fact]
    public void A_plane_far_from_data_is_drawn_exactly_from_a_few_places()
    {
        int asked = 0;
        float[] drawn = Draw((x, y) => { Interlocked.Increment(ref asked); return 3 + (0.01 * x) - (0.02 * y); }, new bool[Frame.Count], _ => true);
        for (int i = 0; i < drawn.Length; i++) Assert.Equal(3 + (0.01 * Frame.Centre(i).XM) - (0.02 * Frame.Centre(i).YM), drawn[i], 1e-4);
        Assert.InRange(asked, 1, Frame.Count / 5);
    }

    [Theory]
    [InlineData(40)]
    [InlineData(150)]
    public void A_surface_that_bends_keeps_within_the_error_that_is_allowed(double waveM)
    {
        double Truth(double x, double y) => 8 + (2 * Math.Sin(x / waveM) * Math.Cos(y / waveM));
        float[] drawn = Draw(Truth, new bool[Frame.Count], _ => true);
        for (int i = 0; i < drawn.Length; i++) Assert.Equal(Truth(Frame.Centre(i).XM, Frame.Centre(i).YM), drawn[i], 0.3);
    }

    [Fact]
    public void Beside_data_every_cell_is_asked()
    {
        bool[] data = new bool[Frame.Count];
        data[Frame.Index(75, 55)] = true;
        // A spike at the one sounding, narrow as natural neighbours make it.
        double Truth(double x, double y) => 10 - (4 * Math.Exp(-(Math.Pow(x - 377.5, 2) + Math.Pow(y - 277.5, 2)) / 50));
        float[] drawn = Draw(Truth, data, _ => true);
        for (int dy = -3; dy <= 3; dy++)
            for (int dx = -3; dx <= 3; dx++) Assert.Equal(Truth(Frame.Centre(75 + dx, 55 + dy).XM, Frame.Centre(75 + dx, 55 + dy).YM), drawn[Frame.Index(75 + dx, 55 + dy)], 1e-4);
    }

    [Fact]
    public void Cells_that_are_not_wanted_and_places_without_a_value_are_left_as_they_are()
    {
        float[] drawn = Draw((x, y) => x < 300 ? double.NaN : 5, new bool[Frame.Count], i => i % 7 != 0);
        for (int i = 0; i < drawn.Length; i++) Assert.Equal(i % 7 == 0 || Frame.Centre(i).XM < 300 ? -1 : 5, drawn[i]);
    }

    private static float[] Draw(AskSurface truth, bool[] data, Func<int, bool> wanted)
    {
        float[] target = new float[Frame.Count], far = new float[Frame.Count];
        Array.Fill(target, -1);
        Array.Fill(far, 1e6f);
        if (data.Contains(true)) far = NearestCell.Of(data, Frame.Nx, Frame.Ny).SquaredCells;
        // 1 m of standard error: a tenth of it may be off.
        SparseDraw.Draw(() => truth, [.. Enumerable.Range(0, Frame.Count).Select(wanted)], far, new ErrorModel(1, 0), Frame, target, CancellationToken.None);
        return target;
    }
}
