using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Units;

namespace SecondShore.Formats.Surveys.Nmea;

/// <summary>
/// Gathers fixes and depths in the order of the log and ties them together: one depth after a fix lies at the fix,
/// several spread evenly to the next one, none over a gap.
/// </summary>
internal sealed class NmeaTrack
{
    private static readonly double GapS = 30;
    private static readonly double JumpDeg = 0.01;
    private readonly List<Event> _events = [];
    private readonly int[] _depthCounts = new int[3];
    private int _wrong, _without, _lost, _keelOffsets, _unplaced;
    private double _coldest = double.NaN, _warmest = double.NaN, _offset = double.NaN;
    private double _lastFixS = double.NaN;

    public int Sentences { get; private set; }

    public int Fixes { get; private set; }

    /// <summary>Takes a sentence in the order of the log.</summary>
    public void Take(NmeaSentence s)
    {
        Sentences++;
        if (s.Checksum == NmeaChecksum.Wrong)
        {
            _wrong++;
            return;
        }

        if (s.Checksum == NmeaChecksum.None) _without++;
        switch (s.Kind)
        {
            case "GGA": if (s.Number(6) > 0) Fix(s.Angle(2), s.Angle(4), s.DaySeconds(1)); break;
            case "RMC": if (s.Field(2) is "A") Fix(s.Angle(3), s.Angle(5), s.DaySeconds(1)); break;
            case "GLL": if (s.Field(6) is "A" or "") Fix(s.Angle(1), s.Angle(3), s.DaySeconds(5)); break;
            case "DPT": Depth(1, s.Number(1) + Offset(s.Number(2))); break;
            case "DBS": Depth(0, InMetres(s)); break;
            case "DBT": Depth(2, InMetres(s)); break;
            case "MTW" when s.Number(1) is double c && c > -5 && c < 45:
                _coldest = double.IsNaN(_coldest) ? c : Math.Min(_coldest, c);
                _warmest = double.IsNaN(_warmest) ? c : Math.Max(_warmest, c);
                break;
            default: break;
        }
    }

    /// <summary>Says what was met.</summary>
    public void Tell(RawSurvey raw, string file, ProblemLog log, SurveyOptions options)
    {
        int kind = ChosenKind();
        string[] names = ["DBS (below the surface)", "DPT (below the transducer, with its offset)", "DBT (below the transducer)"];
        if (kind >= 0) raw.RolesTaken.Add($"depths: {names[kind]}");
        raw.RolesTaken.Add(FormattableString.Invariant($"fixes: {Fixes}"));
        if (!double.IsNaN(_coldest)) raw.RolesTaken.Add(FormattableString.Invariant($"water temperature {_coldest} to {_warmest} degC"));
        if (_wrong > 0) log.Warn(file, $"{_wrong} of {Sentences} sentences have a wrong checksum and are not used.");
        if (_without > 0) log.Note(file, $"{_without} sentences carry no checksum; they are used.");
        if (_lost > 0) log.Note(file, $"the sounder lost the bottom {_lost} times; those have no depth.");
        bool belowTransducer = kind == 2 || (kind == 1 && !(_offset > 0));
        if (belowTransducer && options.TransducerDepthM is null)
            raw.Doubts.Add("Depths are below the transducer, and the log does not say how deep that hangs: set transducer_depth_m (0.2 to 0.5 m is usual) to add it.");
        if (_keelOffsets > 0) raw.Doubts.Add("The offset in the log is negative (to the keel); it is left out.");
    }

    /// <summary>Says how many depths had no fix near them; after <see cref="ToPoints"/>.</summary>
    public void TellUnplaced(string file, ProblemLog log)
    {
        if (_unplaced > 0) log.Warn(file, $"{_unplaced} depths lie in gaps between fixes and are not used.");
    }

    /// <summary>Soundings in order, or, without any depth, the bare fixes.</summary>
    public RawPoints ToPoints()
    {
        int kind = ChosenKind();
        Placed placed = new();
        Event? fix = null;
        List<double> pending = [];
        foreach (Event e in _events)
        {
            if (!e.IsFix)
            {
                if (e.Kind == kind) pending.Add(e.DepthM);
                continue;
            }

            if (fix is null)
            {
                // A depth of the same second may stand before the first fix.
                if (pending.Count > 0) placed.Add(e.LatDeg, e.LonDeg, pending[^1], false);
            }
            else
            {
                Spread(placed, fix.Value, e, pending);
            }

            if (kind < 0) placed.Add(e.LatDeg, e.LonDeg, double.NaN, fix is Event before && IsGap(before, e));
            fix = e;
            pending.Clear();
        }

        if (fix is Event last && pending.Count > 0) placed.Add(last.LatDeg, last.LonDeg, pending[0], false);
        return placed.ToPoints();
    }

    private void Spread(Placed placed, Event from, Event to, List<double> depths)
    {
        bool gap = IsGap(from, to);
        if (gap) _unplaced += Math.Max(0, depths.Count - 1);
        for (int k = 0; k < depths.Count && !(gap && k > 0); k++)
        {
            double t = (double)k / depths.Count;
            double east = GeoPoint.WrapLongitudeDeg(to.LonDeg - from.LonDeg);
            placed.Add(from.LatDeg + (t * (to.LatDeg - from.LatDeg)), GeoPoint.WrapLongitudeDeg(from.LonDeg + (t * east)), depths[k], false);
        }

        if (gap) placed.Break();
    }

    private static bool IsGap(Event a, Event b)
    {
        double s = b.DayS - a.DayS;
        if (s < -43200) s += 86400;
        return s > GapS || s < 0 || Math.Abs(b.LatDeg - a.LatDeg) > JumpDeg || Math.Abs(GeoPoint.WrapLongitudeDeg(b.LonDeg - a.LonDeg)) > JumpDeg * 2;
    }

    private int ChosenKind()
    {
        int most = _depthCounts.Max();
        for (int kind = 0; kind < 3; kind++) if (most > 0 && _depthCounts[kind] * 2 >= most) return kind;
        return -1;
    }

    private void Fix(double latDeg, double lonDeg, double dayS)
    {
        if (double.IsNaN(latDeg) || double.IsNaN(lonDeg) || (latDeg == 0 && lonDeg == 0)) return;
        // GGA and RMC of one instant are one fix.
        if (dayS == _lastFixS) return;
        _lastFixS = dayS;
        Fixes++;
        _events.Add(new Event(true, -1, latDeg, lonDeg, dayS, double.NaN));
    }

    private void Depth(int kind, double depthM)
    {
        if (!(depthM > 0))
        {
            _lost++;
            return;
        }

        _depthCounts[kind]++;
        _events.Add(new Event(false, kind, 0, 0, double.NaN, depthM));
    }

    private double Offset(double offset)
    {
        if (double.IsNaN(offset)) return 0;
        if (offset < 0) _keelOffsets++;
        _offset = offset;
        return Math.Max(0, offset);
    }

    private static double InMetres(NmeaSentence s)
    {
        double m = s.Number(3), ft = s.Number(1), fathoms = s.Number(5);
        return !double.IsNaN(m) ? m : !double.IsNaN(ft) ? ft * Length.MetresPerFoot : fathoms * Length.MetresPerFathom;
    }

    private readonly record struct Event(bool IsFix, int Kind, double LatDeg, double LonDeg, double DayS, double DepthM);

    private sealed class Placed
    {
        private readonly List<double> _x = [], _y = [], _z = [];
        private readonly List<int> _breaks = [];

        public void Add(double latDeg, double lonDeg, double depthM, bool newTrack)
        {
            if (newTrack) Break();
            _x.Add(lonDeg);
            _y.Add(latDeg);
            _z.Add(depthM);
        }

        public void Break()
        {
            if (_x.Count > 0 && (_breaks.Count == 0 || _breaks[^1] != _x.Count)) _breaks.Add(_x.Count);
        }

        public RawPoints ToPoints() => new([.. _x], [.. _y], [.. _z], _breaks);
    }
}
