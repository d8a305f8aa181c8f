using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Motion.Layers;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Motion;

/// <summary>Thermocline, currents and waves of a lake by place and hour, with spread. Immutable; made by <see cref="WindRun"/>.</summary>
public sealed partial class WindField : IWaterMotion
{
    private readonly DepthGrid _grid;
    private readonly FetchField _fetch;
    private readonly WindWaves _waves;
    private readonly MemberMotion[] _members;
    private readonly int _middle;
    private readonly double _bankM;
    private readonly double _errorShare;
    private readonly IReadOnlyList<StationWind> _stations;
    private readonly double[] _weights;

    internal WindField(DepthGrid grid, MotionGrid motion, FetchField fetch, WindHistory wind, DateTimeOffset[] hours,
        MemberMotion[] members, int middle, double? periodS, WindFieldOptions options)
    {
        _grid = grid;
        Motion = motion;
        _fetch = fetch;
        Wind = wind;
        Hours = hours;
        _members = members;
        _middle = middle;
        PeriodS = periodS;
        _bankM = options.Interface.BankM;
        _errorShare = options.ErrorShare;
        _stations = options.Stations;
        _waves = new WindWaves(grid, fetch, wind);
        _weights = new double[members.Length];
        double sum = 0;
        foreach (MemberMotion member in members) sum += member.Layers.Weight;
        for (int m = 0; m < members.Length; m++) _weights[m] = members[m].Layers.Weight / sum;
    }

    /// <summary>The hours computed, first to last.</summary>
    public IReadOnlyList<DateTimeOffset> Hours { get; }

    /// <summary>The computing grid.</summary>
    public MotionGrid Motion { get; }

    /// <summary>The wind that drove it.</summary>
    public WindHistory Wind { get; }

    /// <summary>Whether there are layers to move.</summary>
    public bool IsLayered => _members.Length > 0;

    /// <summary>Period of the slowest rocking, s; null without layers.</summary>
    public double? PeriodS { get; }

    /// <summary>Density of the lower layer less that of the upper at an instant, the members' mean, kg m-3; null without layers.</summary>
    public double? DensityStepKgPerM3(DateTimeOffset at)
    {
        if (!IsLayered) return null;
        (int low, int high, double t) = Between(at);
        double sum = 0;
        for (int m = 0; m < _members.Length; m++)
        {
            LayerPair[] course = _members[m].Course;
            sum += _weights[m] * (((1.0 - t) * course[low].ReducedGravityMps2) + (t * course[high].ReducedGravityMps2));
        }

        return sum * PhysicalConstants.RoundWaterDensityKgPerM3 / PhysicalConstants.GravityMps2;
    }

    /// <summary>Computes a field in one go; see <see cref="WindRun"/> for the arguments and for stepwise work.</summary>
    public static WindField Compute(DepthGrid grid, IReadOnlyList<TwoLayers> layers, WeatherSeries weather, DateTimeOffset from, int hours,
        WindFieldOptions? options = null, IProgress<double>? progress = null, CancellationToken cancel = default) =>
        new WindRun(grid, layers, weather, from, hours, options, cancel).Compute(progress, cancel);

    /// <inheritdoc/>
    public double ThermoclineOffsetM(PlanePoint place, DateTimeOffset at)
    {
        Span<int> cells = stackalloc int[4];
        Span<double> weights = stackalloc double[4];
        int count = Motion.Around(place, cells, weights);
        (int low, int high, double t) = Between(at);
        double sum = 0;
        for (int m = 0; m < _members.Length; m++) sum += _weights[m] * Read(_members[m].OffsetM, cells[..count], weights, low, high, t);
        return sum;
    }

    /// <summary>Depth of the thermocline below the surface, m, over the members; null without layers. May lie below the bottom: there is none at such a place.</summary>
    public SampleDistribution? ThermoclineM(PlanePoint place, DateTimeOffset at)
    {
        if (!IsLayered) return null;
        Span<int> cells = stackalloc int[4];
        Span<double> weights = stackalloc double[4];
        int count = Motion.Around(place, cells, weights);
        (int low, int high, double t) = Between(at);
        double[] depthsM = new double[_members.Length];
        for (int m = 0; m < depthsM.Length; m++)
            depthsM[m] = _members[m].UpperM(low, high, t) + Read(_members[m].OffsetM, cells[..count], weights, low, high, t);
        return MotionError.Widened(depthsM, _weights, ErrorM(cells[..count], weights), 0.0);
    }

    /// <summary>Displacement of the thermocline with its spread, m positive down; null without layers.</summary>
    public SampleDistribution? OffsetM(PlanePoint place, DateTimeOffset at)
    {
        if (!IsLayered) return null;
        Span<int> cells = stackalloc int[4];
        Span<double> weights = stackalloc double[4];
        int count = Motion.Around(place, cells, weights);
        (int low, int high, double t) = Between(at);
        double[] offsetsM = new double[_members.Length];
        for (int m = 0; m < offsetsM.Length; m++) offsetsM[m] = Read(_members[m].OffsetM, cells[..count], weights, low, high, t);
        return MotionError.Widened(offsetsM, _weights, ErrorM(cells[..count], weights), double.MinValue);
    }

    private double ErrorM(ReadOnlySpan<int> cells, ReadOnlySpan<double> weights)
    {
        double sum = 0;
        for (int k = 0; k < cells.Length; k++) sum += weights[k] * _members[_middle].RmsM[cells[k]];
        return _errorShare * sum;
    }

    /// <summary>The same for a distribution at rest: each of its depths moves with the member of the nearest upper layer.</summary>
    /// <param name="atRestM">Thermocline depth at rest, m.</param>
    /// <param name="place">The place.</param>
    /// <param name="at">The instant.</param>
    public SampleDistribution ThermoclineM(SampleDistribution atRestM, PlanePoint place, DateTimeOffset at)
    {
        Require.NotNull(atRestM);
        if (!IsLayered) return atRestM;
        Span<int> cells = stackalloc int[4];
        Span<double> weights = stackalloc double[4];
        int count = Motion.Around(place, cells, weights);
        (int low, int high, double t) = Between(at);
        double[] depthsM = new double[atRestM.Count], shares = new double[atRestM.Count];
        for (int i = 0; i < depthsM.Length; i++)
        {
            int nearest = 0;
            double OffM(int m) => Math.Abs(_members[m].UpperM(low, high, t) - atRestM.Values[i]);
            for (int m = 1; m < _members.Length; m++)
                if (OffM(m) < OffM(nearest)) nearest = m;
            depthsM[i] = atRestM.Values[i] + Read(_members[nearest].OffsetM, cells[..count], weights, low, high, t);
            shares[i] = atRestM.Weights[i];
        }

        return MotionError.Widened(depthsM, shares, ErrorM(cells[..count], weights), 0.0);
    }

    /// <inheritdoc/>
    public Current CurrentAt(PlanePoint place, double depthM, DateTimeOffset at) => ColumnAt(place, at)?.At(depthM) ?? default;

    /// <inheritdoc/>
    public WaveState WavesAt(PlanePoint place, DateTimeOffset at) => _waves.At(place, at);

    /// <summary>The current from surface to bottom; null off the water.</summary>
    public ColumnCurrent? ColumnAt(PlanePoint place, DateTimeOffset at)
    {
        double depthM = _grid.DepthAtM(place);
        if (!(depthM > 0)) return null;
        double thermoclineM = double.PositiveInfinity;
        Current upper = default, lower = default;
        if (IsLayered)
        {
            Span<int> cells = stackalloc int[4];
            Span<double> weights = stackalloc double[4];
            int count = Motion.Around(place, cells, weights);
            (int low, int high, double t) = Between(at);
            MemberMotion member = _members[_middle];
            thermoclineM = member.UpperM(low, high, t) + Read(member.OffsetM, cells[..count], weights, low, high, t);
            Current difference = new(Read(member.EastMps!, cells[..count], weights, low, high, t), Read(member.NorthMps!, cells[..count], weights, low, high, t));
            double upperShare = Math.Clamp(thermoclineM / depthM, 0.0, 1.0);
            upper = difference.Times(1.0 - upperShare);
            lower = difference.Times(-upperShare);
        }

        double layerM = Math.Min(depthM, thermoclineM);
        int step = Wind.StepAt(at);
        // The circulation follows the wind over the time that mixing takes to cross the layer: h2/nu = h/(0.067 u*), 1 to 6 h.
        double crossS = Math.Clamp(layerM / (0.067 * Math.Max(1e-3, WindStress.WaterFrictionMps(Wind.WindMps(step)))), 3600.0, 6 * 3600.0);
        (double eastPa, double northPa) = PlacedWinds.MeanStress(_stations, Wind, place, at, crossS);
        double fromDeg = _stations.Count == 0 || (eastPa == 0 && northPa == 0) ? Wind.FromDeg(step) : Bearings.OfVectorDeg(-eastPa, -northPa);
        double open = ShelterByHour.At(_fetch, place, fromDeg, _bankM);
        return new ColumnCurrent(depthM, thermoclineM, open * eastPa, open * northPa, WavesAt(place, at), upper, lower);
    }

    /// <summary>How to drag with the water at a place; null off the water.</summary>
    /// <param name="place">The place.</param>
    /// <param name="jigDepthM">Depth of the jig, m.</param>
    /// <param name="at">The instant.</param>
    /// <param name="throughWaterMps">Wanted speed of the jig through the water, m s-1; null takes the usual.</param>
    /// <param name="windageShare">Boat's windage; null takes the usual.</param>
    public DragAdvice? DragAt(PlanePoint place, double jigDepthM, DateTimeOffset at, double? throughWaterMps = null, double? windageShare = null)
    {
        if (ColumnAt(place, at) is not { } column) return null;
        int step = Wind.StepAt(at);
        return DragAdvice.For(column, jigDepthM, Wind.WindMps(step), Wind.FromDeg(step), throughWaterMps, windageShare);
    }

    private (int Low, int High, double T) Between(DateTimeOffset at)
    {
        double hour = Math.Clamp((at - Hours[0]).TotalHours, 0.0, Hours.Count - 1.0);
        int low = (int)hour, high = Math.Min(low + 1, Hours.Count - 1);
        return (low, high, hour - low);
    }

    private static double Read(float[][] field, ReadOnlySpan<int> cells, ReadOnlySpan<double> weights, int low, int high, double t)
    {
        double sum = 0;
        for (int k = 0; k < cells.Length; k++)
            sum += weights[k] * (((1.0 - t) * field[low][cells[k]]) + (t * field[high][cells[k]]));
        return sum;
    }
}
