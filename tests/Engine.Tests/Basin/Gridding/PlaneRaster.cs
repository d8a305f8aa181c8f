using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Tests.Basin.Gridding;

/// <summary>A depth grid as if it had been filed as a raster in its own plane, north row first.</summary>
internal sealed class PlaneRaster(LocalProjection projection, GridFrame frame) : IRasterPlacement
{
    public static SurveyRaster Of(DepthGrid grid, string name = "lake.tif")
    {
        int nx = grid.Frame.Nx, ny = grid.Frame.Ny;
        float[] rows = new float[nx * ny];
        for (int iy = 0; iy < ny; iy++) Array.Copy(grid.DepthM, iy * nx, rows, (ny - 1 - iy) * nx, nx);
        return new SurveyRaster(name, nx, ny, rows, new PlaneRaster(grid.Projection, grid.Frame));
    }

    public GeoPoint PlaceOf(double column, double row) => projection.ToGeo(new PlanePoint(
        frame.WestM + ((column + 0.5) * frame.CellM), frame.NorthM - ((row + 0.5) * frame.CellM)));

    public (double Column, double Row) PixelOf(GeoPoint place)
    {
        PlanePoint p = projection.ToPlane(place);
        return (frame.ColumnAt(p.XM), frame.Ny - 1 - frame.RowAt(p.YM));
    }
}
