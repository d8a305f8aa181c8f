using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.TestKit.Synthetic.Odd;

/// <summary>A made-up lake of a simple bowl within rising land, so that contours and heights of any form are known exactly.</summary>
public sealed class OddLake
{
    private readonly double _halfM, _sideM, _turn;

    /// <summary>Makes a lake near a place.</summary>
    public OddLake(SeededRandom random, double latDeg, double lonDeg, double spreadDeg = 0.3)
    {
        ArgumentNullException.ThrowIfNull(random);
        Middle = new GeoPoint(Math.Round(latDeg + random.NextDouble(-spreadDeg, spreadDeg), 5), Math.Round(lonDeg + random.NextDouble(-spreadDeg, spreadDeg), 5));
        _halfM = random.NextDouble(350, 1800);
        _sideM = _halfM * random.NextDouble(0.4, 0.8);
        _turn = random.NextDouble(0, Math.PI);
        DeepestM = Math.Min(Math.Round(random.NextDouble(6, 32), 1), 0.05 * _sideM);
        SurfaceM = Math.Round(random.NextDouble(90, 480), 2);
        Sound(random);
    }

    /// <summary>Middle of the lake, where it is deepest.</summary>
    public GeoPoint Middle { get; }

    /// <summary>Greatest depth, m.</summary>
    public double DeepestM { get; }

    /// <summary>Elevation of its surface, m.</summary>
    public double SurfaceM { get; set; }

    /// <summary>Soundings, in the order taken: lines across, out and back.</summary>
    public List<GeoPoint> Places { get; } = [];

    /// <summary>Depth at a place, m; negative on land.</summary>
    public double DepthM(GeoPoint place)
    {
        PlanePoint p = new LocalProjection(Middle).ToPlane(place.LatDeg, place.LonDeg);
        double u = ((p.XM * Math.Cos(_turn)) + (p.YM * Math.Sin(_turn))) / _halfM, v = ((p.YM * Math.Cos(_turn)) - (p.XM * Math.Sin(_turn))) / _sideM;
        return DeepestM * (1 - (u * u) - (v * v));
    }

    /// <summary>The contour of a depth; below 0 one on land.</summary>
    public List<GeoPoint> Ring(double depthM, int points = 48)
    {
        double radius = Math.Sqrt(1 - (depthM / DeepestM));
        LocalProjection plane = new(Middle);
        return [.. Enumerable.Range(0, points).Select(i =>
        {
            double a = 2 * Math.PI * i / points, u = radius * Math.Cos(a) * _halfM, v = radius * Math.Sin(a) * _sideM;
            return plane.ToGeo(new PlanePoint((u * Math.Cos(_turn)) - (v * Math.Sin(_turn)), (u * Math.Sin(_turn)) + (v * Math.Cos(_turn))));
        })];
    }

    /// <summary>Half the box that holds the lake with some land around, degrees of latitude and longitude.</summary>
    public (double LatDeg, double LonDeg) Half(double share = 1.35) => (share * _halfM / 111_000, share * _halfM / 111_000 / Math.Cos(Middle.LatDeg * Math.PI / 180));

    private void Sound(SeededRandom random)
    {
        LocalProjection plane = new(Middle);
        int lines = 9 + random.NextInt(8), along = 22 + random.NextInt(20);
        for (int k = 0; k < lines * along; k++)
        {
            int line = k / along, step = k % along;
            double u = -1 + (2 * (line + 0.5) / lines), v = -1 + (2 * (step + 0.5) / along);
            if (line % 2 == 1) v = -v;
            GeoPoint place = plane.ToGeo(new PlanePoint((u + random.NextDouble(-0.01, 0.01)) * _halfM, (v + random.NextDouble(-0.004, 0.004)) * _halfM));
            if (DepthM(place) > 0.3) Places.Add(place);
        }
    }
}
