using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Motion;

/// <summary>Share of the stress that reaches each cell of the computing grid, for the wind's direction of a step.</summary>
internal sealed class ShelterByHour
{
    private readonly MotionGrid _motion;
    private readonly FetchField _fetch;
    private readonly WindHistory _wind;
    private readonly double _bankM;
    private readonly int[] _fetchCells;

    public ShelterByHour(MotionGrid motion, FetchField fetch, WindHistory wind, double bankM)
    {
        _motion = motion;
        _fetch = fetch;
        _wind = wind;
        _bankM = bankM;
        _fetchCells = new int[motion.Cells.Length];
        for (int w = 0; w < _fetchCells.Length; w++) _fetchCells[w] = fetch.CellAt(motion.Frame.Centre(motion.Cells[w]));
    }

    /// <summary>Fills [Frame.Count] shares for a step of the wind; 0 on land.</summary>
    public void Fill(int step, Span<float> openShare)
    {
        BearingShare bearing = _fetch.Bearing(_wind.FromDeg(step));
        if (_bankM == 0)
        {
            foreach (int cell in _motion.Cells) openShare[cell] = 1f;
            return;
        }

        // Shelter.StressShare, written out: this runs for every cell of every hour.
        ReadOnlySpan<float> low = _fetch.FetchRow(bearing.Low), high = _fetch.FetchRow(bearing.High);
        int[] fetchCells = _fetchCells, cells = _motion.Cells;
        float t = (float)bearing.Share, perM = (float)(1.0 / (10.0 * _bankM));
        for (int w = 0; w < fetchCells.Length; w++)
        {
            int cell = fetchCells[w];
            float share = cell < 0 ? 0f : (low[cell] + (t * (high[cell] - low[cell]))) * perM;
            openShare[cells[w]] = share < 1f ? share : 1f;
        }
    }

    /// <summary>The share at a place.</summary>
    public static double At(FetchField fetch, PlanePoint place, double fromDeg, double bankM) =>
        Shelter.StressShare(fetch.FetchM(place, fromDeg), bankM);
}
