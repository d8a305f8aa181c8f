using SecondShore.Answers.Lake;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Arms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Wind;

/// <summary>
/// Where a forecast of the wind is asked for beside the lake's own: one place an arm, and on open water none further than ten
/// kilometres from the next. Few lakes want any.
/// </summary>
public static class WindPoints
{
    // Nearer than this a forecast tells the same wind twice; further off than that it is another one's (choices).
    private const double NearM = 3_000, FarM = 10_000;

    /// <summary>The places; none on a lake that one wind serves, and where the user filed winds of their own.</summary>
    /// <param name="lake">The lake.</param>
    public static IReadOnlyList<WindStation> Of(PreparedLake lake)
    {
        ArgumentNullException.ThrowIfNull(lake);
        if (lake.FullPool is not { } grid) return [];
        if (!lake.Folder.Document.WindStations.All(ForecastPlaces.IsOne)) return [];
        List<PlanePoint> places = [];
        foreach (Arm arm in lake.Arms?.Arms ?? [])
            if (places.Count < ForecastPlaces.Most && NearestM(places, arm.Deepest) >= NearM) places.Add(arm.Deepest);
        AddFar(places, grid);
        return places.Count < 2 ? [] : ForecastPlaces.Of(places.Select(grid.Projection.ToGeo));
    }

    // The water furthest from all places so far, as long as it is far.
    private static void AddFar(List<PlanePoint> places, DepthGrid grid)
    {
        int every = Math.Max(1, (int)(500 / grid.Frame.CellM));
        while (places.Count < ForecastPlaces.Most)
        {
            PlanePoint? furthest = null;
            double most = FarM;
            for (int iy = 0; iy < grid.Frame.Ny; iy += every)
            {
                for (int ix = 0; ix < grid.Frame.Nx; ix += every)
                {
                    int cell = (iy * grid.Frame.Nx) + ix;
                    if (!(grid.DepthM[cell] > 0)) continue;
                    PlanePoint at = grid.Frame.Centre(cell);
                    double offM = NearestM(places, at);
                    if (offM > most) (furthest, most) = (at, offM);
                }
            }

            if (furthest is not { } found) return;
            places.Add(found);
        }
    }

    private static double NearestM(List<PlanePoint> places, PlanePoint at)
    {
        double least = double.PositiveInfinity;
        foreach (PlanePoint place in places) least = Math.Min(least, place.DistanceToM(at));
        return least;
    }
}
