namespace SecondShore.App.Shell;

/// <summary>Speed over ground of the last half minute: how fast, and whether steadily.</summary>
public sealed class SpeedTrack
{
    private static readonly TimeSpan Window = TimeSpan.FromSeconds(30);
    private readonly List<BoatFix> _fixes = [];

    /// <summary>Adds a fix; older ones fall out. A fix without a speed gets one from the way since the last.</summary>
    public void Add(BoatFix fix)
    {
        if (_fixes.Count > 0 && fix.At < _fixes[^1].At) _fixes.Clear();
        _fixes.Add(fix.SpeedMps is null && _fixes.Count > 0 ? fix with { SpeedMps = Between(_fixes[^1], fix) } : fix);
        _fixes.RemoveAll(old => fix.At - old.At > Window);
    }

    /// <summary>Mean speed over ground, m/s; null with fewer than three fixes.</summary>
    public double? MeanMps
    {
        get
        {
            double[] speeds = Speeds();
            return speeds.Length < 3 ? null : speeds.Average();
        }
    }

    /// <summary>Whether the speed stayed within a fifth of its mean (or 0.05 m/s); null with fewer than three fixes.</summary>
    public bool? IsSteady
    {
        get
        {
            double[] speeds = Speeds();
            if (speeds.Length < 3) return null;
            double mean = speeds.Average(), sd = Math.Sqrt(speeds.Sum(v => (v - mean) * (v - mean)) / (speeds.Length - 1));
            return sd <= Math.Max(0.05, 0.2 * mean);
        }
    }

    private double[] Speeds() => [.. _fixes.Where(f => f.SpeedMps is not null).Select(f => f.SpeedMps!.Value)];

    private static double? Between(BoatFix from, BoatFix to)
    {
        double s = (to.At - from.At).TotalSeconds;
        if (from.Point is not { } a || to.Point is not { } b || s <= 0.2) return null;
        return Math.Sqrt(((b.XM - a.XM) * (b.XM - a.XM)) + ((b.YM - a.YM) * (b.YM - a.YM))) / s;
    }
}
