using SecondShore.Engine.Motion.Layers;

namespace SecondShore.Engine.Motion;

/// <summary>One member on its way from rest through the days before and the hours asked for.</summary>
internal sealed class MemberRun
{
    // The wind's stress is taken anew as often as the model's own refresh.
    private const double LongestPartS = 900.0;
    private readonly LivingLayers _layers;
    private readonly MotionGrid _motion;
    private readonly IForcing _forcing;
    private readonly DateTimeOffset[] _hours;
    private readonly DateTimeOffset _start;
    private int[] _nearest;
    private readonly double[] _squareM2;
    private DateTimeOffset _now;
    private int _nextHour;
    private int _squares;

    public MemberRun(LivingLayers layers, MotionGrid motion, IForcing forcing, DateTimeOffset start, DateTimeOffset[] hours,
        bool keepsCurrents)
    {
        _layers = layers;
        _motion = motion;
        _forcing = forcing;
        _squareM2 = new double[motion.Cells.Length];
        _hours = hours;
        _start = start < hours[0] ? start : hours[0];
        _now = _start;
        _nearest = Nearest();
        float[][]? East() => keepsCurrents ? new float[hours.Length][] : null;
        Result = new MemberMotion(layers.Course(hours.Length), new float[hours.Length][], East(), East(), new float[motion.Cells.Length]);
    }

    private InterfaceModel Model => _layers.Model;

    private int[] Nearest()
    {
        bool[] active = new bool[_motion.Frame.Count];
        for (int i = 0; i < active.Length; i++) active[i] = Model.Grid.Active[Model.Grid.Entry(i % _motion.Frame.Nx, i / _motion.Frame.Nx)];
        return _motion.NearestWith(active);
    }

    /// <summary>What is computed so far.</summary>
    public MemberMotion Result { get; }

    /// <summary>Whether the last hour is computed.</summary>
    public bool IsDone => _nextHour == _hours.Length;

    /// <summary>Share of the time computed, 0 to 1.</summary>
    public double ShareDone
    {
        get
        {
            double total = (_hours[^1] - _start).TotalSeconds;
            return IsDone ? 1.0 : total > 0 ? (_now - _start).TotalSeconds / total : 0.0;
        }
    }

    /// <summary>Advances by at most an hour, to the next hour asked for at most.</summary>
    public void Step()
    {
        double sinceH = (_now - _hours[0]).TotalHours;
        if (sinceH > 0 && Math.Abs(sinceH - Math.Round(sinceH)) < 1e-6 && _layers.Follow((int)Math.Round(sinceH)))
        {
            _nearest = Nearest();
            _forcing.Renew();
        }

        double leftS = Math.Min(3600.0, (_hours[_nextHour] - _now).TotalSeconds);
        while (leftS > 1e-3)
        {
            double partS = Math.Min(leftS, LongestPartS);
            _forcing.Apply(_now.AddSeconds(0.5 * partS), Model);
            Model.Advance(partS);
            _now = _now.AddSeconds(partS);
            leftS -= partS;
        }

        AddSquares();
        while (!IsDone && (_hours[_nextHour] - _now).TotalSeconds < 1e-3) Keep(_nextHour++);
        if (!IsDone) return;
        for (int w = 0; w < _squareM2.Length; w++) Result.RmsM[w] = (float)Math.Sqrt(_squareM2[w] / _squares);
    }

    // How much the thermocline moves at a place, hour by hour from the start: by that its error is measured.
    private void AddSquares()
    {
        InterfaceGrid grid = Model.Grid;
        int nx = _motion.Frame.Nx;
        _squares++;
        for (int w = 0; w < _squareM2.Length; w++)
        {
            int from = _nearest[w];
            if (from < 0) continue;
            double offsetM = Model.Fields.OffsetM[grid.Entry(from % nx, from / nx)];
            _squareM2[w] += offsetM * offsetM;
        }
    }

    private void Keep(int hour)
    {
        InterfaceGrid grid = Model.Grid;
        int count = _motion.Cells.Length, nx = _motion.Frame.Nx;
        float[] offsetM = new float[count];
        float[]? east = Result.EastMps is null ? null : new float[count], north = east is null ? null : new float[count];
        for (int w = 0; w < count; w++)
        {
            int from = _nearest[w];
            if (from < 0) continue;
            offsetM[w] = (float)Model.Fields.OffsetM[grid.Entry(from % nx, from / nx)];
            // Only cells that compute have a current of their own.
            if (east is null || from != _motion.Cells[w]) continue;
            Current difference = InterfaceState.Difference(Model, from);
            east[w] = (float)difference.EastMps;
            north![w] = (float)difference.NorthMps;
        }

        Result.OffsetM[hour] = offsetM;
        if (east is null) return;
        Result.EastMps![hour] = east;
        Result.NorthMps![hour] = north!;
    }
}
