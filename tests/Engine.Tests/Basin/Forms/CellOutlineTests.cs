using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Tests.Basin.Forms;

public class CellOutlineTests
{
    private static readonly GridFrame Frame = new(100, 200, 10, 12, 9);

    [Fact]
    public void A_block_with_a_hole_has_an_outer_and_an_inner_ring()
    {
        List<int> cells = [];
        for (int y = 2; y < 7; y++)
            for (int x = 3; x < 8; x++)
                if (x != 5 || y != 4) cells.Add(Frame.Index(x, y));
        float[] level = new float[Frame.Count];
        Array.Fill(level, -1f);
        List<IReadOnlyList<PlanePoint>> rings = CellOutline.Trace(Frame, level, [.. cells]);
        Assert.Equal(2, rings.Count);
        // Edges lie midway, corners are cut: five cells square, less four corners of an eighth of a cell each.
        Assert.Equal(2500 - (4 * 12.5), Math.Abs(CellOutline.AreaM2(rings[0])), 0.01);
        Assert.Equal(50, Math.Abs(CellOutline.AreaM2(rings[1])), 0.01);
        Assert.True(CellOutline.AreaM2(rings[0]) * CellOutline.AreaM2(rings[1]) < 0);
    }

    [Fact]
    public void A_whole_grid_has_one_ring_around_it()
    {
        List<IReadOnlyList<PlanePoint>> rings = CellOutline.Trace(Frame, new float[Frame.Count], [.. Enumerable.Range(0, Frame.Count)]);
        Assert.Equal((120 * 90) - 50, Math.Abs(CellOutline.AreaM2(Assert.Single(rings))), 0.01);
    }

    [Fact]
    public void No_cells_have_no_ring() => Assert.Empty(CellOutline.Trace(Frame, new float[Frame.Count], []));
}
