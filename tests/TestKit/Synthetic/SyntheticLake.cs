using SecondShore.Atlas;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Surveys;

namespace SecondShore.TestKit.Synthetic;

/// <summary>A made-up lake somewhere on land, and the soundings somebody took on it: the truth behind a synthetic survey file.</summary>
public sealed class SyntheticLake
{
    private readonly double _lengthM, _widthM, _turn, _humps, _phase;

    /// <summary>Makes a lake.</summary>
    /// <param name="random">Chance.</param>
    /// <param name="named">Whether the file has a header that can name a unit.</param>
    public SyntheticLake(SeededRandom random, bool named)
    {
        ArgumentNullException.ThrowIfNull(random);
        (Middle, Country) = Place(random);
        _lengthM = Math.Exp(random.NextDouble(Math.Log(300), Math.Log(9000)));
        _widthM = _lengthM * random.NextDouble(0.25, 0.9);
        DeepestM = Math.Min(Math.Exp(random.NextDouble(Math.Log(2.5), Math.Log(70))), 0.07 * _widthM);
        (_turn, _humps, _phase) = (random.NextDouble(0, Math.PI), random.NextDouble(0, 0.35), random.NextDouble(0, 6));
        SurfaceM = Math.Round(Math.Exp(random.NextDouble(Math.Log(2), Math.Log(1500))), 2);
        Unit = UnitOf(random, named);
        double roll = random.NextDouble();
        Sense = roll < 0.62 ? DepthSense.Depth : roll < 0.78 ? DepthSense.NegativeDepth : DepthSense.Elevation;
        Sound(random);
    }

    /// <summary>Middle of the lake.</summary>
    public GeoPoint Middle { get; }

    /// <summary>Country it lies in.</summary>
    public string Country { get; }

    /// <summary>Greatest depth, m.</summary>
    public double DeepestM { get; }

    /// <summary>Elevation of its surface, m.</summary>
    public double SurfaceM { get; }

    /// <summary>Unit the surveyor filed.</summary>
    public DepthUnit Unit { get; }

    /// <summary>Sense the surveyor filed.</summary>
    public DepthSense Sense { get; }

    /// <summary>Places sounded, in the order sounded.</summary>
    public IReadOnlyList<GeoPoint> Places => _places;

    private readonly List<GeoPoint> _places = [];

    /// <summary>True depth at a place, m; negative on land.</summary>
    public double DepthM(GeoPoint place)
    {
        PlanePoint p = new LocalProjection(Middle).ToPlane(place.LatDeg, place.LonDeg);
        double u = ((p.XM * Math.Cos(_turn)) + (p.YM * Math.Sin(_turn))) / (_lengthM / 2), v = ((p.YM * Math.Cos(_turn)) - (p.XM * Math.Sin(_turn))) / (_widthM / 2);
        double bowl = 1 - (u * u) - (v * v), hump = 1 + (_humps * Math.Sin((4 * u) + _phase) * Math.Cos((5 * v) - _phase));
        return DeepestM * (bowl < 0 ? bowl : Math.Pow(bowl, 0.8)) * hump / 1.2;
    }

    /// <summary>What the surveyor wrote down for a depth.</summary>
    public double Filed(double depthM)
    {
        double metres = Sense switch { DepthSense.NegativeDepth => -depthM, DepthSense.Elevation => SurfaceM - depthM, _ => depthM };
        return metres / Unit switch { DepthUnit.Feet => 0.3048, DepthUnit.Centimetres => 0.01, DepthUnit.Fathoms => 1.8288, _ => 1 };
    }

    private DepthUnit UnitOf(SeededRandom random, bool named)
    {
        double roll = random.NextDouble();
        if (Country == "United States of America") return roll < 0.5 ? DepthUnit.Feet : roll < 0.52 ? DepthUnit.Fathoms : DepthUnit.Metres;
        // Elsewhere metres are the custom, and who files something else says so: without a header one file in 500 is in feet.
        if (!named) return roll < 0.002 ? DepthUnit.Feet : DepthUnit.Metres;
        return roll < 0.06 ? DepthUnit.Feet : roll < 0.08 ? DepthUnit.Centimetres : DepthUnit.Metres;
    }

    // Half of the surveys come from where many are made, half from anywhere on land.
    private static (GeoPoint Place, string Country) Place(SeededRandom random)
    {
        bool usual = random.NextDouble() < 0.6;
        while (true)
        {
            double lat = random.NextDouble(-45, 67), lon = random.NextDouble(-179, 179);
            if (usual && random.NextDouble() < 0.5) (lat, lon) = (random.NextDouble(30, 48), random.NextDouble(-122, -72));
            else if (usual) (lat, lon) = (random.NextDouble(43, 65), random.NextDouble(-5, 28));
            string country = LandTable.CountryAt(lat, lon, 0);
            if (country.Length > 0) return (new GeoPoint(Math.Round(lat, 5), Math.Round(lon, 5)), country);
        }
    }

    // Zigzag lines across, a net, or places anywhere; on the water only.
    private void Sound(SeededRandom random)
    {
        int wanted = (int)Math.Exp(random.NextDouble(Math.Log(90), Math.Log(1600)));
        LocalProjection plane = new(Middle);
        double kind = random.NextDouble(), reach = Math.Sqrt((_lengthM * _lengthM) + (_widthM * _widthM)) / 2;
        int lines = Math.Max(6, (int)Math.Sqrt(wanted / 2.0)), along = Math.Max(8, 2 * wanted / lines);
        for (int k = 0; k < lines * along; k++)
        {
            int line = k / along, step = k % along;
            double u = -1 + (2 * (line + 0.5) / lines), v = -1 + (2 * (step + 0.5) / along);
            if (line % 2 == 1) v = -v;
            if (kind < 0.2) (u, v) = (random.NextDouble(-1, 1), random.NextDouble(-1, 1));
            else if (kind < 0.7) (u, v) = (u + random.NextDouble(-0.01, 0.01), v + random.NextDouble(-0.003, 0.003));
            GeoPoint place = plane.ToGeo(new PlanePoint(u * reach, v * reach));
            if (DepthM(place) > 0.04 * DeepestM) _places.Add(place);
        }
    }
}
