using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>One gridding, step by step.</summary>
internal sealed partial class GriddingRun(Survey survey, GridOptions options, IProgress<double>? progress, CancellationToken cancel)
{
    /// <summary>Water inside a given shoreline is at least this deep, m: the shoreline says that it is water.</summary>
    private const float LeastDepthM = 0.1f;

    /// <summary>Sets of soundings above which each counts as one track of a single survey.</summary>
    private const int MostSets = 24;

    private readonly List<string> _done = [];
    private readonly List<Finding> _assumed = [];
    private readonly List<(SurveyRaster Raster, PixelBox Wet)> _rasters = [];
    private LocalProjection _projection = null!;
    // Our choice: soundings on the shore itself, and boats aground, leave more than this inside a true outline.
    private const int FewestToJudge = 20, MostToJudge = 4000;
    private const double LeastInside = 0.2;
    private const float MostOverDeepest = 1.25f;

    private PlaneShoreline? _shoreline;
    private PointCloud _cloud = null!;
    private PointCloud _soundings = null!;
    private int[] _set = [];
    private GridFrame _frame = null!;

    /// <summary>Grids the survey or refuses it.</summary>
    public GriddedLake Run()
    {
        if ((options.Projection ?? SurveyPlane.Choose(survey)) is not LocalProjection projection)
            return GriddedLake.Refused(BasinFindings.NothingToGrid.Of());
        _projection = projection;
        CollectData();
        if (Nothing() is { } nothing) return GriddedLake.Refused(nothing, _assumed) with { OutlineAreaM2 = OutlineM2() };
        PlaneBox box = DataBox();
        if (Math.Max(box.WidthM, box.HeightM) > 2_000_000)
            return GriddedLake.Refused(BasinFindings.TooWide.Of(Math.Max(box.WidthM, box.HeightM) / 1000), _assumed);
        _frame = options.Frame ?? ChooseFrame(box);
        progress?.Report(0.1);
        bool[]? mask = _shoreline?.Mask(_frame);
        float[]? sheet = RasterSheet();
        progress?.Report(0.3);
        GiveWay();
        _soundings = _cloud;
        _cloud = CloudThinning.ToHalfCells(_cloud, _frame);
        if (sheet is not null) AddRasterRim(mask, sheet);
        AddLines();
        PointSurface? surface = _cloud.Count > 0 ? DrawPoints(mask, sheet) : null;
        progress?.Report(0.85);
        return Lay(mask, sheet, surface) is DepthGrid grid
            ? Finish(grid, mask is not null, surface)
            : GriddedLake.Refused(BasinFindings.OneLine.Of(), _assumed);
    }

    private void CollectData()
    {
        if (survey.Shoreline is { } shoreline)
        {
            PlaneShoreline plane = new(shoreline, _projection);
            if (plane.Polygons.Count > 0 && plane.AreaM2 > 0) _shoreline = plane;
            else _assumed.Add(BasinFindings.EmptyShoreline.Of());
        }

        foreach (SurveyRaster raster in survey.Rasters)
        {
            if (RasterLayer.WetPixels(raster) is { } wet) _rasters.Add((raster, wet));
            else _assumed.Add(BasinFindings.DryRaster.Of(raster.Name));
        }

        _cloud = SurveyPlane.Soundings(survey, _projection, out int leftOut, out _set);
        if (leftOut > 0) _assumed.Add(BasinFindings.UnplacedSoundings.Of(leftOut));
        DropOutlineOfOtherThings();
        DropStrays();
        DropFalseEchoes();
    }

    // Loops of islands, or of another water, enclose next to none of the soundings: as a shore they would leave no lake.
    private void DropOutlineOfOtherThings()
    {
        if (_shoreline is not { } shoreline || _cloud.Count < FewestToJudge) return;
        int step = Math.Max(1, _cloud.Count / MostToJudge), inside = 0, asked = 0;
        for (int i = 0; i < _cloud.Count; i += step, asked++)
            if (shoreline.Holds(new PlanePoint(_cloud.XM[i], _cloud.YM[i]))) inside++;
        if (inside >= LeastInside * asked) return;
        _shoreline = null;
        _assumed.Add(BasinFindings.OtherShore.Of(100.0 * inside / asked));
    }

    private void DropStrays()
    {
        if (_cloud.Count == 0) return;
        bool[] keep = _shoreline is not null ? StraySoundings.Within(_cloud, ShoreBox(), 0.1) : StraySoundings.Keep(_cloud);
        int before = _cloud.Count;
        Keep(keep);
        if (_cloud.Count < before)
            _assumed.Add(BasinFindings.Strays.Of(before - _cloud.Count));
    }

    private void DropFalseEchoes()
    {
        int before = _cloud.Count;
        Keep(FalseEchoes.Keep(_cloud));
        if (_cloud.Count < before)
            _assumed.Add(BasinFindings.FalseEchoes.Of(before - _cloud.Count));
    }

    private void GiveWay()
    {
        if (survey.Soundings.Count is < 2 or > MostSets) return;
        bool[] keep = SetPrecedence.Apply(_cloud, _set, survey.Soundings.Count, _frame, out int dropped);
        if (dropped == 0) return;
        Keep(keep);
        _done.Add(FormattableString.Invariant($"Where files overlap, {dropped} soundings of the earlier or sparser one gave way, with feathered seams."));
    }

    private void Keep(bool[] keep)
    {
        _set = [.. _set.Where((_, i) => keep[i])];
        _cloud = _cloud.Where(i => keep[i]);
    }

    private Finding? Nothing()
    {
        if (_rasters.Count > 0) return null;
        bool wet = false;
        for (int i = 0; i < _cloud.Count && !wet; i++) wet = _cloud.DepthM[i] > 0;
        foreach (ContourLine line in survey.Contours) wet |= line.DepthM > 0 && line.Points.Count > 0;
        if (wet) return null;
        if (_shoreline is not null && _cloud.Count == 0 && survey.Contours.Count == 0)
            return BasinFindings.NoDepths.Of();
        return BasinFindings.NothingBelowPool.Of();
    }

    private double? OutlineM2()
    {
        if (_shoreline is not { } shoreline || _cloud.Count > 0 || survey.Contours.Count > 0) return null;
        if (shoreline.Polygons.Count > 1 && options.OnTheLake is null)
            _assumed.Add(BasinFindings.SeveralWaters.Of(shoreline.Polygons.Count));
        return shoreline.OneWaterM2(options.OnTheLake is { } on ? _projection.ToPlane(on) : null);
    }

    private PlaneBox ShoreBox()
    {
        PlaneBox box = default;
        foreach (List<PlanePoint[]> rings in _shoreline!.Polygons)
            foreach (PlanePoint p in rings[0]) box.Add(p.XM, p.YM);
        return box;
    }

    private PlaneBox DataBox()
    {
        if (_shoreline is not null) return ShoreBox();
        PlaneBox box = default;
        foreach ((SurveyRaster raster, PixelBox wet) in _rasters)
            foreach (PlanePoint p in RasterLayer.Outline(raster, wet, _projection)) box.Add(p.XM, p.YM);
        for (int i = 0; i < _cloud.Count; i++) box.Add(_cloud.XM[i], _cloud.YM[i]);
        foreach (ContourLine line in survey.Contours)
        {
            foreach (GeoPoint place in line.Points)
            {
                PlanePoint p = _projection.ToPlane(place);
                box.Add(p.XM, p.YM);
            }
        }

        return box;
    }

    private GridFrame ChooseFrame(PlaneBox box)
    {
        double areaM2 = Math.Max(_shoreline?.AreaM2 ?? (0.5 * box.WidthM * box.HeightM), 1.0);
        double finestM = double.PositiveInfinity;
        foreach ((SurveyRaster raster, PixelBox wet) in _rasters) finestM = Math.Min(finestM, RasterLayer.PixelM(raster, wet, _projection));
        double leastM = double.IsInfinity(finestM) ? 1.0 : finestM;
        if (_cloud.Count > 0) finestM = Math.Min(finestM, Math.Max(leastM, 0.5 * Math.Sqrt(areaM2 / _cloud.Count)));
        if (survey.Contours.Count > 0) finestM = Math.Min(finestM, Math.Sqrt(areaM2) / 400);
        // A raster alone keeps its own pixels: finer cells would only pretend.
        bool rasterAlone = _rasters.Count > 0 && _cloud.Count == 0 && survey.Contours.Count == 0;
        GridOptions wishes = rasterAlone && options.CellM is null && Fits(box, finestM) ? options with { CellM = finestM } : options;
        GridFrame frame = FrameChoice.Choose(box, areaM2, finestM, wishes, out string note);
        _done.Add(note);
        return frame;
    }

    private bool Fits(PlaneBox box, double cellM) => ((box.WidthM / cellM) + 4) * ((box.HeightM / cellM) + 4) <= options.MaxCells;

    // Rasters in rising rank: finer over coarser, later over earlier.
    private float[]? RasterSheet()
    {
        if (_rasters.Count == 0) return null;
        double[] pixelM = new double[_rasters.Count];
        int[] order = new int[_rasters.Count];
        for (int k = 0; k < order.Length; k++) (order[k], pixelM[k]) = (k, RasterLayer.PixelM(_rasters[k].Raster, _rasters[k].Wet, _projection));
        Array.Sort(order, (a, b) => pixelM[b] > 1.5 * pixelM[a] ? 1 : pixelM[a] > 1.5 * pixelM[b] ? -1 : a.CompareTo(b));
        float[]? sheet = null;
        foreach (int k in order)
        {
            float[] layer = RasterLayer.Resample(_rasters[k].Raster, _frame, _projection, cancel);
            if (sheet is null) sheet = layer; else RasterMerge.Lay(sheet, layer, _frame);
        }

        _done.Add(_rasters.Count == 1
            ? $"Depths were taken from the raster {_rasters[0].Raster.Name}."
            : FormattableString.Invariant($"{_rasters.Count} rasters were merged, the finer and later ones on top, with feathered seams."));
        return sheet;
    }

    private void AddLines()
    {
        int track = 1_000_000_000;
        foreach (ContourLine line in survey.Contours)
        {
            if (!double.IsFinite(line.DepthM) || line.Points.Count < 2) continue;
            PlanePoint[] points = new PlanePoint[line.Points.Count];
            for (int i = 0; i < points.Length; i++) points[i] = _projection.ToPlane(line.Points[i]);
            LineSampling.Add(points, line.Closed, _frame.CellM, line.DepthM, PointKind.Contour, track++, _cloud);
        }

        if (_shoreline is null || _cloud.Count == 0) return;
        double stepM = Math.Max(_frame.CellM, _shoreline.LengthM / 200_000);
        foreach (List<PlanePoint[]> rings in _shoreline.Polygons)
            foreach (PlanePoint[] ring in rings) LineSampling.Add(ring, true, stepM, 0, PointKind.Shore, track++, _cloud);
    }
}
