using SecondShore.Desk.Views;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Formats.Lake;

namespace SecondShore.Desk;

/// <summary>The chart's frame and its fixed marks.</summary>
internal static class Marks
{
    public static WaterDrawing Of(LakeFolder folder, DepthGrid grid)
    {
        float deepest = 0;
        foreach (float depth in grid.DepthM) deepest = Math.Max(deepest, float.IsNaN(depth) ? 0 : depth);
        List<ChartMark> marks = [];
        foreach (RampMark ramp in folder.Ramps) Add("ramp", ramp.Name, ramp.Place);
        foreach (CoverMark cover in folder.Cover) Add(Symbol(cover.Kind), "", cover.Place);
        foreach (PlaceMark mark in folder.Marks) Add(mark.Kind == PlaceMarkKind.NeverVisit ? "hazard" : "land", mark.Name, mark.Place);
        GridFrame f = grid.Frame;
        return new WaterDrawing(new ChartFrame(f.WestM, f.SouthM, f.CellM, f.Nx, f.Ny), deepest, marks);

        void Add(string kind, string name, GeoPoint place)
        {
            PlanePoint at = grid.Projection.ToPlane(place);
            marks.Add(new ChartMark(kind, name, at.XM, at.YM));
        }
    }

    private static string Symbol(CoverKind kind) => kind switch
    {
        CoverKind.Brush => "brush",
        CoverKind.Stumps => "stumps",
        CoverKind.StandingTimber => "timber",
        CoverKind.Rock => "rock",
        CoverKind.Weed => "weed",
        CoverKind.Works => "works",
        _ => "other",
    };
}
