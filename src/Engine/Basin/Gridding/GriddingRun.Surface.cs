namespace SecondShore.Engine.Basin.Gridding;

/// <content>From points to a sheet of depths, and the sheets together.</content>
internal sealed partial class GriddingRun
{
    /// <summary>A sheet drawn from points.</summary>
    private sealed record PointSurface(float[] DepthM, GriddingMethod Method, double? LeaveOutRmseM);

    private PointSurface? DrawPoints(bool[]? mask, float[]? sheet)
    {
        if (sheet is not null) return null;
        Triangulation mesh = new(_cloud.XM, _cloud.YM, cancel);
        if (mesh.EdgeCount == 0) return null;
        progress?.Report(0.5);
        bool[]? used = null;
        if (mask is null)
        {
            double longestM = ConcaveHull.LongestM(mesh);
            used = ConcaveHull.Dig(mesh, longestM);
            _assumed.Add(FormattableString.Invariant(
                $"No shoreline is given: the edge of the water was drawn around the soundings, across gaps of up to {longestM:0} m."));
        }

        float[] depthM = new float[_frame.Count];
        Array.Fill(depthM, float.NaN);
        LinearSurface.Draw(mesh, _cloud.DepthM, used, _frame, depthM);
        _done.Add("Depth between soundings was drawn as flat triangles.");
        return new PointSurface(depthM, GriddingMethod.Linear, null);
    }

    private float[] Combine(bool[]? mask, float[]? sheet, PointSurface? surface)
    {
        float[] depthM = surface?.DepthM ?? sheet!;
        if (mask is null)
        {
            for (int i = 0; i < depthM.Length; i++)
                if (!(depthM[i] > 0) || float.IsInfinity(depthM[i])) depthM[i] = float.NaN;
            return depthM;
        }

        bool[] known = new bool[depthM.Length];
        for (int i = 0; i < known.Length; i++) known[i] = mask[i] && float.IsFinite(depthM[i]);
        int[]? nearest = null;
        for (int i = 0; i < known.Length; i++)
        {
            if (!mask[i]) { depthM[i] = float.NaN; continue; }
            if (!known[i])
            {
                nearest ??= NearestCell.Of(known, _frame.Nx, _frame.Ny).Nearest;
                depthM[i] = nearest[i] >= 0 ? depthM[nearest[i]] : LeastDepthM;
            }

            depthM[i] = Math.Max(depthM[i], LeastDepthM);
        }

        return depthM;
    }

    private GriddedLake Finish(float[] depthM, bool shored, PointSurface? surface)
    {
        if (!shored && _rasters.Count > 0) KeepTheLake(depthM);
        DepthGrid grid = new(_projection, _frame, depthM) { EdgeIsShore = shored || _rasters.Count > 0 };
        Hypsography? hypsography = Hypsography.FromGrid(grid);
        if (hypsography is null) return GriddedLake.Refused("No cell of the grid came out as water: check the shoreline against the depths.", _assumed);
        return new GriddedLake
        {
            Grid = grid,
            Hypsography = hypsography,
            Done = _done,
            Assumed = _assumed,
            Method = surface?.Method,
            LeaveOutRmseM = surface?.LeaveOutRmseM,
        };
    }

    // A terrain raster may hold other hollows below full pool: only the water joined to the lake is the lake.
    private void KeepTheLake(float[] depthM)
    {
        WaterPieces pieces = WaterPieces.Of(depthM, _frame);
        if (pieces.Count < 2) return;
        int lake = pieces.Largest;
        if (options.OnTheLake is { } place && _frame.TryCellAt(_projection.ToPlane(place), out int ix, out int iy)
            && pieces.Label[_frame.Index(ix, iy)] >= 0)
        {
            lake = pieces.Label[_frame.Index(ix, iy)];
        }

        int dropped = 0;
        for (int i = 0; i < depthM.Length; i++)
        {
            if (pieces.Label[i] < 0 || pieces.Label[i] == lake) continue;
            depthM[i] = float.NaN;
            dropped++;
        }

        _assumed.Add(FormattableString.Invariant(
            $"The raster holds {pieces.Count} separate waters: only the one of {pieces.Cells[lake] * _frame.CellAreaM2 / 10_000:0.#} ha was kept ({dropped} cells left out)."));
    }
}
