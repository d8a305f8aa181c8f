using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>Where a raster holds several waters apart from each other, as terrain does at a level: keeps the one that is meant, or asks which.</summary>
internal sealed class RasterWaters(string file, RawRaster raster, CoordinateSystem crs, SurveyOptions options, SurveyContext context, ProblemLog log)
{
    private const int MostChoices = 8;
    private const double LeastShare = 0.03;

    // As among contours: basins of one lake lie near each other.
    private const double NearShare = 0.6;

    // A net of so many cells a side is fine enough to tell lakes apart, and quick on a raster of millions.
    private const int FinestNet = 400;

    private int _step, _columns, _rows;

    private sealed record Water(int Cells, int West, int North, int East, int South);

    /// <summary>Keeps what the options or the lake's position say; else a question, null where there is nothing to ask.</summary>
    public SurveyQuestion? KeepOrAsk(DepthScale scale)
    {
        if (!raster.Place.IsUsable) return null;
        _step = Math.Max(1, Math.Max(raster.Columns, raster.Rows) / FinestNet);
        (_columns, _rows) = ((raster.Columns + _step - 1) / _step, (raster.Rows + _step - 1) / _step);
        int[] label = Labels(scale, out List<Water> all);
        if (all.Count < 2) return null;
        int largest = all.Max(w => w.Cells);
        List<Water> waters = [.. all.Where(w => w.Cells >= LeastShare * largest).OrderByDescending(w => w.Cells)];
        if (waters.Count < 2) return null;
        if (options.Area is { Count: 4 } area)
        {
            // The box that holds all of them says that they are one.
            if (waters.Exists(w => !Inside(w, area))) Keep(label, all, [.. waters.Where(w => Inside(w, area))]);
            return null;
        }

        if (context.Position is GeoPoint at && waters.Find(w => Holds(w, at)) is Water own)
        {
            // Of depths, parts near each other are one lake with a causeway; of terrain, what else lies as low is the valley below.
            Keep(label, all, [.. waters.Where(w => w == own || (scale.Sense != DepthSense.Elevation && Near(w, own)))]);
            return null;
        }

        List<SurveyChoice> choices = [.. waters.Take(MostChoices).Select(ChoiceOf)];
        choices.Add(new SurveyChoice(new SurveyOptions { Area = [-90, -180, 90, 180] }, $"all {waters.Count} as one"));
        return new SurveyQuestion(file, SurveyQuestionKind.Rows, $"The file holds {waters.Count} separate waters. Which is the lake?", choices, "area");
    }

    private SurveyChoice ChoiceOf(Water water)
    {
        GeoExtent box = Box(water);
        GeoPoint middle = new((box.SouthDeg + box.NorthDeg) / 2, GeoPoint.WrapLongitudeDeg((box.WestDeg + box.EastDeg) / 2));
        double acrossKm = Math.Max(box.NorthDeg - box.SouthDeg, (box.EastDeg - box.WestDeg) * Math.Cos(middle.LatDeg * Math.PI / 180)) * 111;
        return new SurveyChoice(new SurveyOptions { Area = [Down(box.SouthDeg), Down(box.WestDeg), -Down(-box.NorthDeg), -Down(-box.EastDeg)] },
            $"only the water at {middle.LatDeg:F4}, {middle.LonDeg:F4}, {acrossKm:0.0} km across", middle, Places.Country(middle.LatDeg, middle.LonDeg) ?? "");

        static double Down(double degrees) => Math.Floor(degrees * 1e5) / 1e5;
    }

    // Waters by a flood over the net; a cell of the net is wet where its middle is.
    private int[] Labels(DepthScale scale, out List<Water> waters)
    {
        int[] label = new int[_columns * _rows];
        waters = [];
        Stack<int> open = new();
        for (int start = 0; start < label.Length; start++)
        {
            if (label[start] != 0 || !IsWet(start, scale)) continue;
            int own = waters.Count + 1, cells = 0, west = int.MaxValue, north = int.MaxValue, east = 0, south = 0;
            label[start] = own;
            open.Push(start);
            while (open.TryPop(out int at))
            {
                int column = at % _columns, row = at / _columns;
                cells++;
                (west, east, north, south) = (Math.Min(west, column), Math.Max(east, column), Math.Min(north, row), Math.Max(south, row));
                for (int k = 0; k < 9; k++)
                {
                    int c = column + (k % 3) - 1, r = row + (k / 3) - 1;
                    if (c < 0 || r < 0 || c >= _columns || r >= _rows || label[(r * _columns) + c] != 0 || !IsWet((r * _columns) + c, scale)) continue;
                    label[(r * _columns) + c] = own;
                    open.Push((r * _columns) + c);
                }
            }

            waters.Add(new Water(cells, west, north, east, south));
        }

        return label;
    }

    private bool IsWet(int cell, DepthScale scale)
    {
        int column = Math.Min(raster.Columns - 1, (cell % _columns * _step) + (_step / 2)), row = Math.Min(raster.Rows - 1, (cell / _columns * _step) + (_step / 2));
        return scale.ToDepthM(raster.Values[(row * raster.Columns) + column]) > 0;
    }

    // What belongs to another water is nothing; land and small waters beside the lake stay.
    private void Keep(int[] label, List<Water> all, List<Water> kept)
    {
        if (kept.Count == 0) return;
        bool[] own = [true, .. all.Select(kept.Contains)];
        int left = 0;
        for (int i = 0; i < raster.Values.Length; i++)
        {
            int cell = (i / raster.Columns / _step * _columns) + (i % raster.Columns / _step);
            if (own[label[cell]]) continue;
            raster.Values[i] = float.NaN;
            left++;
        }

        if (left > 0) log.Note(file, $"{left} cells belong to other waters of the file and are not used.");
    }

    private GeoExtent Box(Water w)
    {
        ExtentBox box = new();
        foreach ((int column, int row) in new[] { (w.West, w.North), (w.East + 1, w.North), (w.West, w.South + 1), (w.East + 1, w.South + 1) })
        {
            (double x, double y) = raster.Place.At((column * _step) - 0.5, (row * _step) - 0.5);
            if (crs.TryToGeo(x, y, out double lat, out double lon)) box.Add(lat, lon);
        }

        return box.Extent ?? new GeoExtent(0, 0, 0, 0);
    }

    private static bool Near(Water a, Water b)
    {
        int reach = (int)(NearShare * Math.Max(Math.Max(a.East - a.West, a.South - a.North), Math.Max(b.East - b.West, b.South - b.North)));
        return a.West - reach <= b.East && b.West - reach <= a.East && a.North - reach <= b.South && b.North - reach <= a.South;
    }

    private bool Inside(Water w, IReadOnlyList<double> area)
    {
        GeoExtent e = Box(w);
        return e.SouthDeg >= area[0] - 1e-5 && e.WestDeg >= area[1] - 1e-5 && e.NorthDeg <= area[2] + 1e-5 && e.EastDeg <= area[3] + 1e-5;
    }

    private bool Holds(Water w, GeoPoint p)
    {
        GeoExtent e = Box(w);
        return p.LatDeg >= e.SouthDeg && p.LatDeg <= e.NorthDeg && p.LonDeg >= e.WestDeg && p.LonDeg <= e.EastDeg;
    }
}
