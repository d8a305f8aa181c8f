using SecondShore.Engine.Core;

namespace SecondShore.Engine.Season;

/// <summary>How long the deep water has been shut off when a season begins with a cast.</summary>
public static class OxygenStart
{
    private const int WindowDays = 21, MostDays = 120;
    private const double LayeredK = 1.0;

    /// <summary>
    /// Days since the lake last mixed to the bottom: since the air of three weeks last was no warmer than the deep water is now.
    /// </summary>
    /// <param name="weather">Hourly weather.</param>
    /// <param name="step">Step of the cast.</param>
    /// <param name="surfaceC">Its temperature at the top, degC.</param>
    /// <param name="deepC">At the bottom, degC.</param>
    /// <returns>0 where the lake is mixed; at most 120, or as far back as the weather goes.</returns>
    public static int DaysShut(WeatherSeries weather, int step, double surfaceC, double deepC)
    {
        double[] air = Require.NotNull(weather).AirTempC;
        if (surfaceC - deepC < LayeredK) return 0;
        int days = Math.Min(MostDays, (step / 24) - WindowDays);
        for (int back = 0; back < days; back++)
        {
            int to = step - (24 * back), from = to - (24 * WindowDays);
            double sum = 0;
            for (int i = from; i < to; i += 3) sum += air[i];
            if (MixedStart.TempC(sum / (8 * WindowDays)) <= Math.Max(deepC, 4.0)) return back;
        }

        return Math.Clamp(step / 24, 0, MostDays);
    }
}
