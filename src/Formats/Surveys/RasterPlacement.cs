using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys;

/// <summary>A raster's affine place in a coordinate system.</summary>
internal sealed class RasterPlacement(AffinePlace affine, CoordinateSystem crs) : IRasterPlacement
{
    public GeoPoint PlaceOf(double column, double row)
    {
        (double x, double y) = affine.At(column, row);
        return crs.TryToGeo(x, y, out double latDeg, out double lonDeg) ? new GeoPoint(latDeg, lonDeg) : default;
    }

    public (double Column, double Row) PixelOf(GeoPoint place)
    {
        (double x, double y) = crs.FromGeo(place);
        if (!crs.IsGeographic) return affine.Inverse(x, y);
        // A raster over the date line may count longitudes past 180: take the turn nearest to its own.
        double middle = affine.X0;
        return affine.Inverse(middle + GeoPoint.WrapLongitudeDeg(x - middle), y);
    }
}
