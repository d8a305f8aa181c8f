using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Terrain;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Tests.Basin.Terrain;

/// <summary>Check values J01-J06, J10-J12: worked out from the printed formulas by a program apart, and kept here so that a fresh clone proves them.</summary>
public class BedCheckValuesTests
{
    private static readonly double[] Window = [-5.1, -4.82, -4.46, -5.16, -5, -4.76, -5.06, -5.02, -4.9];

    [Fact]
    public void Slope_and_aspect_match_the_check_values()
    {
        BedGradient gradient = BedGradient.Of(FromNorth(Window, 3, 3, 2));
        Assert.Equal(6.37937, gradient.SlopeDeg[4], 0.01);
        Assert.Equal(243.435, gradient.AspectDeg[4], 0.05);
    }

    [Fact]
    public void Curvatures_match_the_check_values()
    {
        BedCurvature curvature = BedCurvature.Of(FromNorth(Window, 3, 3, 2));
        Assert.Equal(-0.0471139, curvature.ProfilePerM[4], 0.0001);
        Assert.Equal(-0.107331, curvature.PlanPerM[4], 0.0005);
    }

    [Fact]
    public void Position_index_of_the_ring_matches_the_check_value() =>
        Assert.Equal(-0.09, BedPosition.Of(FromNorth(Window, 3, 3, 2), 3.0).IndexM[4], 0.0001);

    [Fact]
    public void Bend_radius_matches_the_check_value() =>
        Assert.Equal(60.8333, BendRadius.ThroughM(new(0, 0), new(40, 15), new(80, 0)), 0.05);

    [Fact]
    public void Flow_to_the_steepest_neighbour_matches_the_check_values()
    {
        // Elevations 1 to 9 m, shifted below the surface by 10 m.
        double[] elevationM = [9, 8, 7, 6, 8, 5, 4, 3, 9, 6, 5, 1];
        DepthGrid grid = FromNorth([.. elevationM.Select(e => e - 10)], 4, 3, 1);
        DrainedBed bed = DrainedBed.Of(grid, [grid.Frame.Index(3, 0)]);
        FlowD8 flow = FlowD8.Of(bed);
        Assert.Equal(12f, flow.CellsAbove[grid.Frame.Index(3, 0)]);
        Assert.Equal(4f, flow.CellsAbove[grid.Frame.Index(1, 1)]);
        Assert.Equal(0, bed.FilledShare);
    }

    [Fact]
    public void Steepest_slope_of_a_facet_matches_the_check_value() =>
        Assert.Equal(1.11803, FlowDInfinity.Facet(10, 9, 8.5, 1).Slope, 0.0001);

    internal static DepthGrid FromNorth(double[] elevationM, int nx, int ny, double cellM)
    {
        float[] depthM = new float[nx * ny];
        for (int row = 0; row < ny; row++)
            for (int x = 0; x < nx; x++) depthM[((ny - 1 - row) * nx) + x] = (float)-elevationM[(row * nx) + x];
        return new DepthGrid(new LocalProjection(new GeoPoint(45, 7)), new GridFrame(0, 0, cellM, nx, ny), depthM);
    }
}
