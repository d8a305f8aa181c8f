using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Motion;

/// <summary>The stress of winds known at several places, laid over the water. Immutable.</summary>
/// <remarks>
/// Components of the stress, weighed by the inverse square of the distance to each station that knows the hour; where none does,
/// the lake's own wind. Shelter follows the direction that comes out at each cell.
/// </remarks>
internal sealed class PlacedWinds
{
    // Nearer than this a station tells all (choice: about the length over which a shore wind becomes a lake wind).
    private const double NearM = 500;
    private readonly IReadOnlyList<StationWind> _stations;
    private readonly MotionGrid _motion;
    private readonly FetchField _fetch;
    private readonly WindHistory _lake;
    private readonly double _bankM;
    private readonly float[][] _weights;
    private readonly int[] _fetchCells;

    public PlacedWinds(IReadOnlyList<StationWind> stations, MotionGrid motion, FetchField fetch, WindHistory lake, double bankM)
    {
        (_stations, _motion, _fetch, _lake, _bankM) = (stations, motion, fetch, lake, bankM);
        _fetchCells = Array.ConvertAll(motion.Cells, cell => fetch.CellAt(motion.Frame.Centre(cell)));
        _weights = [.. stations.Select(station => Array.ConvertAll(motion.Cells, cell => (float)Weight(station, motion.Frame.Centre(cell))))];
    }

    /// <summary>Index in the frame of each water cell.</summary>
    public int[] Cells => _motion.Cells;

    /// <summary>An array of the frame's size.</summary>
    public float[] NewFrame() => new float[_motion.Frame.Count];

    /// <summary>Fills the stress of an hour, sheltered.</summary>
    /// <param name="hour">Hours since 1970, UTC.</param>
    /// <param name="into">Receives it.</param>
    public void Fill(long hour, Hour into)
    {
        float[] eastPa = into.EastPa, northPa = into.NorthPa;
        List<(float[] Weights, float East, float North)> known = [];
        for (int s = 0; s < _stations.Count; s++)
        {
            (double e, double n) = _stations[s].StressPa(hour);
            if (!double.IsNaN(e)) known.Add((_weights[s], (float)e, (float)n));
        }

        (double lakeEast, double lakeNorth) = known.Count > 0 ? (0, 0) : _lake.StressAt(DateTimeOffset.FromUnixTimeSeconds((hour * 3600) + 1800));
        int[] cells = _motion.Cells;
        for (int w = 0; w < cells.Length; w++)
        {
            float east = (float)lakeEast, north = (float)lakeNorth, sum = 0;
            foreach ((float[] weights, float e, float n) in known)
            {
                float weight = weights[w];
                east += weight * e;
                north += weight * n;
                sum += weight;
            }

            if (sum > 0) (east, north) = (east / sum, north / sum);
            float open = OpenShare(w, east, north);
            eastPa[cells[w]] = open * east;
            northPa[cells[w]] = open * north;
        }
    }

    /// <summary>Mean stress over the time before an instant at a place, unsheltered, Pa.</summary>
    public static (double EastPa, double NorthPa) MeanStress(IReadOnlyList<StationWind> stations, WindHistory lake, PlanePoint place, DateTimeOffset at, double overS)
    {
        double east = 0, north = 0, sum = 0;
        int parts = Math.Max(1, (int)Math.Ceiling(overS / 3600.0));
        foreach (StationWind station in stations)
        {
            double e = 0, n = 0;
            for (int i = 0; i < parts; i++)
            {
                (double partEast, double partNorth) = station.StressPa(StationWind.HourOf(at.AddSeconds(1800 - (overS * (i + 0.5) / parts))).Hour);
                e += partEast / parts;
                n += partNorth / parts;
            }

            if (double.IsNaN(e)) continue;
            double weight = Weight(station, place);
            east += weight * e;
            north += weight * n;
            sum += weight;
        }

        return sum > 0 ? (east / sum, north / sum) : lake.MeanStress(at, overS);
    }

    private static double Weight(StationWind station, PlanePoint place)
    {
        double dx = place.XM - station.Place.XM, dy = place.YM - station.Place.YM;
        // In square kilometres, so that single precision holds it.
        return 1e6 / ((dx * dx) + (dy * dy) + (NearM * NearM));
    }

    private float OpenShare(int w, float east, float north)
    {
        int cell = _fetchCells[w];
        if (_bankM == 0) return 1f;
        if (cell < 0) return 0f;
        if (east == 0 && north == 0) return 1f;
        double fetchM = _fetch.FetchM(cell, _fetch.Bearing(Bearings.OfVectorDeg(-east, -north)));
        return (float)Shelter.StressShare(fetchM, _bankM);
    }

    /// <summary>The stress of one hour on the frame.</summary>
    internal sealed class Hour(PlacedWinds winds)
    {
        /// <summary>Eastward, Pa.</summary>
        public float[] EastPa { get; } = winds.NewFrame();

        /// <summary>Northward, Pa.</summary>
        public float[] NorthPa { get; } = winds.NewFrame();
    }
}
