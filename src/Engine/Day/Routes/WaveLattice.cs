using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Day;

/// <summary>Waves by hour on a lattice of some hundred metres, asked once a node: routes look them up thousands of times.</summary>
internal sealed class WaveLattice
{
    private readonly ISeaState _sea;
    private readonly DateTimeOffset _start;
    private readonly NavigableWater _water;
    private readonly int _nx, _ny, _hours;
    private readonly float[] _waveM;

    public WaveLattice(NavigableWater water, ISeaState sea, DateTimeOffset start, int hours)
    {
        _water = water;
        _sea = sea;
        _start = start;
        _hours = hours;
        GridFrame frame = water.Frame;
        SpacingM = Math.Max(150.0, 2.0 * frame.CellM);
        _nx = (int)Math.Ceiling((frame.EastM - frame.WestM) / SpacingM) + 1;
        _ny = (int)Math.Ceiling((frame.NorthM - frame.SouthM) / SpacingM) + 1;
        _waveM = new float[hours * _nx * _ny];
        Array.Fill(_waveM, float.NaN);
    }

    /// <summary>Spacing, m.</summary>
    public double SpacingM { get; }

    /// <summary>Significant wave height near a point in an hour, m.</summary>
    public double WaveM(PlanePoint point, int hour)
    {
        int kx = Math.Clamp((int)((point.XM - _water.Frame.WestM) / SpacingM), 0, _nx - 1);
        int ky = Math.Clamp((int)((point.YM - _water.Frame.SouthM) / SpacingM), 0, _ny - 1);
        ref float waveM = ref _waveM[(((hour * _ny) + ky) * _nx) + kx];
        if (float.IsNaN(waveM)) waveM = (float)_sea.WaveM(PlaceIn(kx, ky, point), _start.AddHours(hour + 0.5));
        return waveM;
    }

    /// <summary>Factor on times by block of the graph, the mean over the day's hours; empty when no hour slows the boat.</summary>
    /// <remarks>The mean rather than the worst hour: in an hour that closes the whole lake no lee is to be found.</remarks>
    public float[] MeanSlowness(RouteGraph graph)
    {
        float[] slowness = new float[graph.BlocksX * graph.BlocksY];
        Array.Fill(slowness, 1f);
        bool slows = false;
        for (int node = 0; node < graph.Count; node++)
        {
            double sum = 0;
            for (int hour = 0; hour < _hours; hour++) sum += 1.0 / Math.Max(0.12, _water.Boat.SpeedShare(WaveM(graph.Node(node), hour)));
            slowness[graph.BlockOf(node)] = (float)(sum / _hours);
            slows |= sum > _hours * 1.001;
        }

        return slows ? slowness : [];
    }

    // The lattice cell's centre where it is water, so that the answer does not hang on who asked first.
    private PlanePoint PlaceIn(int kx, int ky, PlanePoint asked)
    {
        var centre = new PlanePoint(_water.Frame.WestM + ((kx + 0.5) * SpacingM), _water.Frame.SouthM + ((ky + 0.5) * SpacingM));
        return _water.TryNearestOpen(centre, SpacingM, out PlanePoint open) ? open : asked;
    }
}
