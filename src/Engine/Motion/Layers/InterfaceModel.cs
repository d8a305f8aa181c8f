using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>
/// Two layers rocking under the wind: baroclinic shallow water on a staggered grid (Csanady1975, Gill1982, ArakawaLamb1977).
/// The displacement of the interface is positive down. Not thread-safe; one model a member and thread.
/// </summary>
/// <remarks>
/// The prognostic motion is sqrt(h_r) (u1 - u2) on faces. Cells not deeper than the upper layer are a wall; a layer that
/// would run dry stops flowing (<see cref="ThinCells"/>). No allocation while it advances.
/// </remarks>
public sealed class InterfaceModel
{
    private const double LeastWatchedM = 0.4;
    private const double AlarmedWatchedM = 3.0;
    private readonly InterfaceOptions _options;
    private readonly FaceRefresh _refresh;
    private readonly ThinCells _thin;
    private readonly ThinWatch _watch;
    private readonly double _coriolisPerS;
    private readonly InterfaceArrays? _start;
    private double _eastPa;
    private double _northPa;

    // Thinner layers than this are always watched, m; a surprise raises it for the hour that follows.
    private double _watchedM = LeastWatchedM;

    /// <summary>Makes a model at rest.</summary>
    /// <param name="depths">Depths on the computing grid.</param>
    /// <param name="layers">The layers at rest.</param>
    /// <param name="latDeg">Latitude for the earth's rotation; null leaves it out.</param>
    /// <param name="options">Settings; null takes the defaults.</param>
    public InterfaceModel(CoarseDepths depths, LayerPair layers, double? latDeg, InterfaceOptions? options = null)
    {
        _options = (options ?? new InterfaceOptions()).Checked();
        Layers = Require.NotNull(layers);
        _coriolisPerS = latDeg is { } lat ? CoriolisPerS(lat) : 0.0;
        Grid = InterfaceGrid.Of(depths, layers.UpperM, _options.MinLowerM);
        Fields = new InterfaceArrays(Grid.Length);
        _refresh = new FaceRefresh(Grid, layers, _options);
        _thin = new ThinCells(Grid);
        _watch = new ThinWatch(Grid, layers.UpperM);
        _start = _options.MovingThickness ? new InterfaceArrays(Grid.Length) : null;
        LongestEffectiveM = _refresh.Thicknesses(Fields);
    }

    /// <summary>The layers at rest.</summary>
    public LayerPair Layers { get; }

    /// <summary>Number of cells deep enough for both layers; 0 where the lake is shallower than its upper layer.</summary>
    public int ActiveCells => Grid.ActiveCount;

    /// <summary>Steps taken so far.</summary>
    public long Steps { get; private set; }

    /// <summary>Whether vector loops are used; both paths give the same numbers.</summary>
    public bool UseVectors { get; init; } = InterfaceKernel.UseVectors;

    /// <summary>A fixed step, s, in place of the longest stable one; for tests against the discrete dispersion.</summary>
    public double? FixedStepS { get; init; }

    internal InterfaceGrid Grid { get; }

    internal InterfaceArrays Fields { get; }

    internal double LongestEffectiveM { get; private set; }

    internal double LastStepS { get; private set; }

    internal double CoriolisPerSecond => _coriolisPerS;

    /// <summary>Twice the earth's rotation rate times the sine of a latitude, s-1.</summary>
    public static double CoriolisPerS(double latDeg) =>
        2.0 * PhysicalConstants.EarthRotationRadPerS * Math.Sin(double.DegreesToRadians(Require.InRange(latDeg, -90.0, 90.0)));

    /// <summary>Sets the wind's stress on open water, from now on.</summary>
    /// <param name="eastPa">Eastward, Pa.</param>
    /// <param name="northPa">Northward, Pa.</param>
    public void SetStress(double eastPa, double northPa)
    {
        _eastPa = Require.Finite(eastPa);
        _northPa = Require.Finite(northPa);
    }

    /// <summary>Sets how much of the stress reaches each cell, from now on.</summary>
    /// <param name="openShare">[Ny*Nx] of the depths' frame: 0 to 1.</param>
    public void SetShelter(ReadOnlySpan<float> openShare)
    {
        Lay(openShare, _refresh.EastShare);
        Lay(openShare, _refresh.NorthShare);
    }

    /// <summary>Sets the stress that reaches each cell, from now on, in place of an even stress and its shelter.</summary>
    /// <param name="eastPa">[Ny*Nx] of the depths' frame, eastward, Pa.</param>
    /// <param name="northPa">[Ny*Nx], northward, Pa.</param>
    public void SetStress(ReadOnlySpan<float> eastPa, ReadOnlySpan<float> northPa)
    {
        Lay(eastPa, _refresh.EastShare);
        Lay(northPa, _refresh.NorthShare);
        (_eastPa, _northPa) = (1.0, 1.0);
    }

    /// <summary>Works the thicknesses out again after the state was set.</summary>
    internal void RefreshThickness() => LongestEffectiveM = _refresh.Thicknesses(Fields);

    private void Lay(ReadOnlySpan<float> frame, double[] entries)
    {
        int nx = Grid.Depths.Frame.Nx;
        Require.SameLength(frame.Length, Grid.Depths.Frame.Count, nameof(frame));
        for (int run = 0; run < Grid.RunStarts.Length; run++)
        {
            // Runs hold all that computes; the frame has neither the border row nor the border column.
            int start = Grid.RunStarts[run], from = (((start / Grid.Stride) - 1) * nx) + (start % Grid.Stride) - 1;
            for (int i = start; i < Grid.RunEnds[run]; i++) entries[i] = frame[from + i - start];
        }
    }

    /// <summary>Advances by a time, s, 0 or more.</summary>
    public void Advance(double durationS)
    {
        Require.NotNegative(durationS);
        if (ActiveCells == 0) return;
        int blocks = (int)Math.Ceiling((durationS / _options.RefreshS) - 1e-9);
        for (int block = 0; block < blocks; block++) AdvanceBlock(durationS / blocks);
    }

    private void AdvanceBlock(double blockS)
    {
        if (_start is null)
        {
            Run(blockS);
            return;
        }

        LongestEffectiveM = _refresh.Thicknesses(Fields);
        Fields.CopyMotionTo(_start);
        _thin.Clear();
        _watch.Find(Fields, 4.0 * blockS / Grid.CellM, _watchedM, _thin);
        Run(blockS);
        _watchedM = Math.Max(LeastWatchedM, 0.7 * _watchedM);
        if (!(_watch.ThinnestM(Fields) < 0.5 * ThinCells.FloorM)) return;
        // A sudden gale emptied a layer where none was watched: take the block again and watch every cell.
        _watchedM = AlarmedWatchedM;
        _start.CopyMotionTo(Fields);
        _thin.Clear();
        for (int i = 0; i < Grid.Length; i++)
            if (Grid.Active[i]) _thin.Add(i);
        Run(blockS);
    }

    private void Run(double blockS)
    {
        double wantedS = FixedStepS ?? (_options.StepShare * StableStepS(LongestEffectiveM));
        int steps = Math.Max(1, (int)Math.Ceiling((blockS / wantedS) - 1e-9));
        double stepS = blockS / steps;
        _refresh.Forces(Fields, stepS, _eastPa, _northPa);
        StepFactors factors = new(stepS / Grid.CellM, stepS * Layers.ReducedGravityMps2 / Grid.CellM, 0.25 * stepS * _coriolisPerS);
        for (int step = 0; step < steps; step++)
        {
            _thin.Limit(Fields, factors.Flow, Layers.UpperM);
            InterfaceKernel.Step(Grid, Fields, factors, UseVectors);
        }

        Steps += steps;
        LastStepS = stepS;
    }

    /// <summary>The longest stable step, s: dx/(c sqrt 2) (ArakawaLamb1977).</summary>
    internal double StableStepS(double effectiveM) =>
        effectiveM > 0 ? Grid.CellM / Math.Sqrt(2.0 * Layers.ReducedGravityMps2 * effectiveM) : double.MaxValue;
}
