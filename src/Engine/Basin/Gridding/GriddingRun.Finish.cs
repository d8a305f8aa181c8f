namespace SecondShore.Engine.Basin.Gridding;

/// <content>Sheets laid together, and the lake that comes of them.</content>
internal sealed partial class GriddingRun
{
    // Where a raster leaves gaps inside the shoreline, its rim joins the points that fill them.
    private void AddRasterRim(bool[]? mask, float[] sheet)
    {
        if (mask is null) return;
        List<int> rim = [];
        for (int i = 0; i < sheet.Length; i++)
        {
            if (!float.IsFinite(sheet[i]) || !mask[i]) continue;
            int x = i % _frame.Nx, y = i / _frame.Nx;
            for (int k = 1; k < 9; k += 2)
            {
                int nx = x + (k % 3) - 1, ny = y + (k / 3) - 1;
                if (!_frame.Contains(nx, ny) || !mask[_frame.Index(nx, ny)] || float.IsFinite(sheet[_frame.Index(nx, ny)])) continue;
                rim.Add(i);
                break;
            }
        }

        foreach (int i in rim)
        {
            var p = _frame.Centre(i);
            _cloud.Add(p.XM, p.YM, sheet[i], PointKind.Raster, -1);
        }
    }

    private DepthGrid? Lay(bool[]? mask, float[]? sheet, PointSurface? surface)
    {
        if (sheet is null && surface is null) return null;
        if (sheet is not null)
        {
            bool[] rasterCells = new bool[sheet.Length];
            for (int i = 0; i < sheet.Length; i++) rasterCells[i] = float.IsFinite(sheet[i]);
            RasterCorrection.Apply(sheet, _cloud, _frame, _done, cancel);
            float[] depthM = surface?.DepthM ?? sheet;
            if (surface is not null) RasterMerge.Lay(depthM, sheet, _frame);
            Trim(mask, depthM);
            float[] sdM = new float[depthM.Length];
            for (int i = 0; i < sdM.Length; i++)
                sdM[i] = float.IsNaN(depthM[i]) ? 0 : rasterCells[i] || surface is null ? 0.3f + (0.03f * depthM[i]) : surface.SdM[i];
            return new DepthGrid(_projection, _frame, depthM, sdM);
        }

        HoldToSoundings(surface!.DepthM);
        Trim(mask, surface.DepthM);
        return new DepthGrid(_projection, _frame, surface.DepthM, surface.SdM) { EdgeIsShore = mask is not null };
    }

    // A surface through steep soundings may swing beyond them, as a bottom may: but not by much (choice). Contours tell of hollows under them.
    private void HoldToSoundings(float[] depthM)
    {
        if (survey.Contours.Count > 0 || _soundings.Count == 0) return;
        float deepestM = 0;
        foreach (float sounding in _soundings.DepthM) deepestM = Math.Max(deepestM, sounding);
        float mostM = MostOverDeepest * deepestM;
        for (int i = 0; i < depthM.Length; i++)
            if (depthM[i] > mostM) depthM[i] = mostM;
    }

    // Land to NaN; water inside a shoreline gets a depth whatever the data leave out.
    private void Trim(bool[]? mask, float[] depthM)
    {
        if (mask is null)
        {
            for (int i = 0; i < depthM.Length; i++)
                if (!(depthM[i] > 0) || float.IsInfinity(depthM[i])) depthM[i] = float.NaN;
            return;
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
    }

    private GriddedLake Finish(DepthGrid grid, bool shored, PointSurface? surface)
    {
        if (!shored && _rasters.Count > 0) KeepTheLake(grid.DepthM);
        Hypsography? hypsography = Hypsography.FromGrid(grid);
        if (hypsography is null) return GriddedLake.Refused(BasinFindings.NoWater.Of(), _assumed);
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

        _assumed.Add(BasinFindings.SeparateWaters.Of(pieces.Count, pieces.Cells[lake] * _frame.CellAreaM2 / 10_000, dropped));
    }
}
