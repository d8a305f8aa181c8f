using SecondShore.Engine.Core.Geo;

namespace SecondShore.Demo.Terrain;

/// <summary>An open line in the plane with even steps, walked by its station (metres from its start).</summary>
internal sealed class PathLine
{
    private readonly PlanePoint[] _points;

    public PathLine(IReadOnlyList<PlanePoint> corners, double stepM)
    {
        _points = Resample(corners, stepM);
        StepM = stepM;
    }

    public double StepM { get; }

    public int Count => _points.Length;

    public double LengthM => (Count - 1) * StepM;

    public PlanePoint this[int index] => _points[index];

    public int IndexAt(double stationM) => Math.Clamp((int)Math.Round(stationM / StepM), 0, Count - 1);

    /// <summary>Unit vector along the line at a point, over two neighbours either side.</summary>
    public (double X, double Y) Tangent(int index)
    {
        PlanePoint a = _points[Math.Max(0, index - 2)], b = _points[Math.Min(Count - 1, index + 2)];
        double length = Math.Max(1e-9, a.DistanceToM(b));
        return ((b.XM - a.XM) / length, (b.YM - a.YM) / length);
    }

    /// <summary>The point beside the line, positive to the left.</summary>
    public PlanePoint Beside(int index, double leftM)
    {
        (double tx, double ty) = Tangent(index);
        return new PlanePoint(_points[index].XM - (ty * leftM), _points[index].YM + (tx * leftM));
    }

    /// <summary>Squared distance to the nearest point of the line and that point's index.</summary>
    public (double SquaredM2, int Index) Nearest(PlanePoint place)
    {
        double best = double.MaxValue;
        int at = 0;
        for (int i = 0; i < Count; i++)
        {
            double d = _points[i].SquaredDistanceToM2(place);
            if (d < best) { best = d; at = i; }
        }

        return (best, at);
    }

    /// <summary>A smooth curve through corners (Catmull-Rom), as closely spaced points.</summary>
    public static List<PlanePoint> Smooth(IReadOnlyList<PlanePoint> corners, int perSpan = 24)
    {
        List<PlanePoint> points = [];
        for (int i = 0; i + 1 < corners.Count; i++)
        {
            PlanePoint a = corners[Math.Max(0, i - 1)], b = corners[i], c = corners[i + 1], d = corners[Math.Min(corners.Count - 1, i + 2)];
            for (int k = 0; k < perSpan; k++)
            {
                double t = (double)k / perSpan;
                points.Add(new PlanePoint(Cubic(a.XM, b.XM, c.XM, d.XM, t), Cubic(a.YM, b.YM, c.YM, d.YM, t)));
            }
        }

        points.Add(corners[^1]);
        return points;

        static double Cubic(double a, double b, double c, double d, double t) =>
            0.5 * ((2 * b) + ((c - a) * t) + (((2 * a) - (5 * b) + (4 * c) - d) * t * t) + (((3 * b) - a - (3 * c) + d) * t * t * t));
    }

    private static PlanePoint[] Resample(IReadOnlyList<PlanePoint> corners, double stepM)
    {
        List<PlanePoint> points = [corners[0]];
        double carryM = 0;
        for (int i = 1; i < corners.Count; i++)
        {
            double spanM = corners[i - 1].DistanceToM(corners[i]);
            double atM = stepM - carryM;
            while (atM <= spanM)
            {
                double t = atM / spanM;
                points.Add(new PlanePoint(
                    corners[i - 1].XM + (t * (corners[i].XM - corners[i - 1].XM)),
                    corners[i - 1].YM + (t * (corners[i].YM - corners[i - 1].YM))));
                atM += stepM;
            }

            carryM = spanM - (atM - stepM);
        }

        if (points.Count < 2) points.Add(corners[^1]);
        return [.. points];
    }
}
