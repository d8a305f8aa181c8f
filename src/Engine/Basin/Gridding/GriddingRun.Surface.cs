namespace SecondShore.Engine.Basin.Gridding;

/// <content>From points to a sheet of depths with their standard errors.</content>
internal sealed partial class GriddingRun
{
    /// <summary>A sheet drawn from points.</summary>
    private sealed record PointSurface(float[] DepthM, float[] SdM, GriddingMethod Method, double? LeaveOutRmseM);

    private PointSurface? DrawPoints(bool[]? mask, float[]? sheet)
    {
        Triangulation mesh = new(_cloud.XM, _cloud.YM, cancel);
        if (mesh.EdgeCount == 0) return null;
        bool[]? used = mask is null ? DigHull(mesh) : null;
        float[] depthM = new float[_frame.Count];
        Array.Fill(depthM, float.NaN);
        LinearSurface.Draw(mesh, _cloud.DepthM, used, _frame, depthM);
        LocalKriging near = new(_cloud);
        float[] toDatum = ToCells(_ => true);
        LeaveOutResult? tried = new LeaveOut(_soundings, _cloud, near, _frame, mask, cancel).Try(options.Method, survey.Contours.Count == 0, GapM(mask, depthM, toDatum), options.Seed);
        GriddingMethod method = tried?.Method ?? (options.Method == GriddingMethod.Auto ? GriddingMethod.NaturalNeighbour : options.Method);
        progress?.Report(0.5);
        if (method != GriddingMethod.Linear)
        {
            // Under a raster only the flat triangles are drawn, where nothing of them shows.
            bool[]? open = sheet is null || mask is null ? mask : RasterMerge.ShowsThrough(mask, sheet, _frame);
            bool[] wanted = new bool[depthM.Length];
            for (int i = 0; i < wanted.Length; i++) wanted[i] = (open is null || open[i]) && !float.IsNaN(depthM[i]);
            Func<AskSurface> surface = method == GriddingMethod.NaturalNeighbour ? new NaturalNeighbour(mesh, _cloud.DepthM).Ask : () => near.Ask(method == GriddingMethod.Kriging);
            SparseDraw.Draw(surface, wanted, toDatum, tried?.Error ?? ErrorModel.Usual, _frame, depthM, cancel);
        }

        if (mask is null) FillSounded(depthM, toDatum, near);
        if (_soundings.Count > 0 && tried?.Settles != false) new SheetFit(_frame).Settle(depthM, mask, _soundings);
        progress?.Report(0.75);
        SayMethod(method, tried);
        double intervalM = RoundTerraces(mesh, depthM);
        return new PointSurface(depthM, Doubt(mask, depthM, toDatum, tried, intervalM), method, tried?.RmseM);
    }

    // Squared distance to the nearest cell with a point that counts, cells squared.
    private float[] ToCells(Predicate<int> counts) => NearestCell.Of(CellsOf(counts), _frame.Nx, _frame.Ny).SquaredCells;

    private bool[] CellsOf(Predicate<int> counts)
    {
        bool[] cells = new bool[_frame.Count];
        for (int i = 0; i < _cloud.Count; i++)
            if (counts(i) && _frame.TryCellAt(new(_cloud.XM[i], _cloud.YM[i]), out int ix, out int iy)) cells[_frame.Index(ix, iy)] = true;
        return cells;
    }

    // Distance to data within which three quarters of the drawn water lie.
    private double GapM(bool[]? mask, float[] depthM, float[] toDatum)
    {
        // Counted by whole cells: exact enough for the length of a run.
        int[] within = new int[Math.Max(_frame.Nx, _frame.Ny) + 2];
        int all = 0;
        for (int i = 0; i < depthM.Length; i++)
        {
            if (!(depthM[i] > 0) || (mask is not null && !mask[i])) continue;
            within[Math.Min(within.Length - 1, (int)Math.Sqrt(toDatum[i]))]++;
            all++;
        }

        int cells = 0;
        for (int seen = within[0]; seen < 0.75 * all; seen += within[cells]) cells++;
        return (cells + 0.5) * _frame.CellM;
    }

    private bool[] DigHull(Triangulation mesh)
    {
        double longestM = ConcaveHull.LongestM(mesh, _cloud.DepthM);
        _assumed.Add(BasinFindings.EdgeDrawn.Of(Told.Length(longestM)));
        return ConcaveHull.Dig(mesh, _cloud.DepthM, longestM);
    }

    // Where a boat has sounded there is water, though the hull was dug away around its track. Triangles that reach across to
    // the next track are no guide there: the soundings about the cell are. Behind marks of depth 0 there is none.
    private void FillSounded(float[] depthM, float[] toDatum, LocalKriging near)
    {
        bool[] open = new bool[depthM.Length];
        bool marks = _cloud.DepthM.ContainsAnyExceptInRange(float.Epsilon, float.MaxValue);
        float[] squared = marks ? ToCells(i => _cloud.DepthM[i] > 0) : toDatum;
        float[]? toShore = marks ? ToCells(i => !(_cloud.DepthM[i] > 0)) : null;
        for (int i = 0; i < open.Length; i++) open[i] = float.IsNaN(depthM[i]) && squared[i] <= 2 && (toShore is null || squared[i] <= toShore[i]);
        SparseDraw.Draw(() => near.Ask(false), open, squared, ErrorModel.Usual, _frame, depthM, cancel);
    }

    private void SayMethod(GriddingMethod method, LeaveOutResult? tried)
    {
        string how = method switch
        {
            GriddingMethod.Linear => "as flat triangles",
            GriddingMethod.Kriging => "by kriging",
            GriddingMethod.Distance => "as the mean of the nearest soundings of each direction",
            _ => "by natural neighbours",
        };
        _done.Add(tried is null
            ? $"Depth between soundings was drawn {how}; there were too few soundings to leave some out and measure the error."
            : FormattableString.Invariant($"Depth between soundings was drawn {how}; {tried.Count} soundings left out were predicted to {tried.RmseM:0.00} m."));
    }

    // Returns the usual step between contours, 0 without any.
    private double RoundTerraces(Triangulation mesh, float[] depthM)
    {
        List<double> levels = [];
        foreach (ContourLine line in survey.Contours) if (double.IsFinite(line.DepthM) && !levels.Contains(line.DepthM)) levels.Add(line.DepthM);
        if (levels.Count == 0) return 0;
        levels.Add(0);
        levels.Sort();
        List<double> steps = [];
        for (int k = 1; k < levels.Count; k++) if (levels[k] > levels[k - 1]) steps.Add(levels[k] - levels[k - 1]);
        if (steps.Count == 0) return 0;
        steps.Sort();
        double intervalM = steps[steps.Count / 2];
        FlatContours.Round(depthM, FlatContours.Find(mesh, _cloud, _frame), intervalM, _frame);
        _done.Add("Inside contours and across their bends the bed goes on as outside, by no more than half the step between contours.");
        return intervalM;
    }

    // Standard error by cell, and depth where only banks speak.
    private float[] Doubt(bool[]? mask, float[] depthM, float[] toDatum, LeaveOutResult? tried, double contourIntervalM)
    {
        bool[] sounded = CellsOf(i => _cloud.Kind[i] != PointKind.Shore);
        // The centre of an outermost sounding's cell may lie off the sheet: what has no depth says none of the water about it.
        for (int i = 0; i < sounded.Length; i++) sounded[i] &= !float.IsNaN(depthM[i]);
        double sum = 0, squares = 0;
        foreach (float depth in _cloud.DepthM) (sum, squares) = (sum + depth, squares + ((double)depth * depth));
        float[] guessedM = new float[depthM.Length];
        if (mask is not null)
        {
            int guessed = new UnsoundedWater(mask, sounded, _frame).Deepen(depthM, sounded, mask, guessedM);
            if (guessed * _frame.CellAreaM2 > 1000)
                _assumed.Add(BasinFindings.GuessedShallows.Of(guessed * _frame.CellAreaM2 / 10_000));
        }

        ErrorModel error = tried?.Error ?? ErrorModel.Usual;
        double contour2 = contourIntervalM * contourIntervalM / 16;
        // However far from data: nothing is less certain than a depth of which only the lake is known.
        float mostM = (float)Math.Max(0.1, Math.Sqrt(Math.Max(0, (squares / _cloud.Count) - Math.Pow(sum / _cloud.Count, 2))));
        float[] sdM = new float[depthM.Length];
        double farthest = _frame.Nx + _frame.Ny;
        for (int i = 0; i < sdM.Length; i++)
        {
            // Water that no triangle reached gets the depth of the nearest cell later on, and is as doubtful as its distance says.
            if (float.IsNaN(depthM[i]) && mask?[i] != true) continue;
            float own = error.SdM(Math.Min(Math.Sqrt(toDatum[i]), farthest) * _frame.CellM);
            own = (float)Math.Sqrt((own * own) + contour2);
            sdM[i] = Math.Max(Math.Min(own, mostM), 0.5f * guessedM[i]);
        }

        return sdM;
    }
}
