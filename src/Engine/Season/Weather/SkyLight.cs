using SecondShore.Engine.Basin;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

/// <summary>Completes shortwave, cloud and longwave from one another.</summary>
internal static class SkyLight
{
    private const double AverageCloudShare = 0.55, MostShortwaveWPerM2 = 1400;

    public static void Complete(HourlyTable table, LakeSite site, List<Finding> notes)
    {
        // The sun's path is only wanted where something is missing.
        if (IsWhole(table))
        {
            WeatherPreparation.Clamp(table.ShortwaveWPerM2, 0, MostShortwaveWPerM2);
            WeatherPreparation.Clamp(table.CloudFraction, 0, 1);
            return;
        }

        int n = table.Count;
        double pressurePa = MoistAir.PressureAtElevationPa(Math.Clamp(site.ElevationM, -450, 6000));
        double[] clear = new double[n], cosZenith = new double[n];
        for (int i = 0; i < n; i++)
        {
            DateTimeOffset middle = table.TimeAt(i).AddMinutes(30);
            cosZenith[i] = SolarPosition.At(middle, site.Position).CosZenith;
            double vapourPa = table.RelativeHumidity[i] * MoistAir.SaturationVapourPa(table.AirTempC[i]);
            clear[i] = Sunlight.ClearSkyWPerM2(cosZenith[i], pressurePa, vapourPa, Sunlight.SolarConstantWPerM2 * Sunlight.DistanceFactor(middle.DayOfYear));
        }

        bool hasLight = table.ShortwaveWPerM2.Any(v => !double.IsNaN(v)), hasCloud = table.CloudFraction.Any(v => !double.IsNaN(v));
        double[] cloud = [.. table.CloudFraction];
        if (!hasCloud && hasLight) FromShortwave(table, clear, cosZenith, cloud);
        else if (!hasLight && !hasCloud) FromTemperatureRange(table, site, clear, cloud, notes);
        WeatherPreparation.Fill(cloud, SeasonFindings.Cloud, hasCloud ? notes : [], _ => AverageCloudShare);
        FillShortwave(table, clear, cloud, notes, hasLight);
        FillLongwave(table, cloud, LostShares(table, clear, cosZenith), notes);
        for (int i = 0; i < n; i++) table.CloudFraction[i] = Math.Clamp(cloud[i], 0, 1);
    }

    private static bool IsWhole(HourlyTable table)
    {
        for (int i = 0; i < table.Count; i++)
            if (double.IsNaN(table.ShortwaveWPerM2[i]) || double.IsNaN(table.CloudFraction[i]) || !IsLongwave(table.LongwaveWPerM2[i])) return false;
        return true;
    }

    private static bool IsLongwave(double wPerM2) => wPerM2 is > 50 and < 700;

    // By day from the light, carried through the night by the fill that follows.
    private static void FromShortwave(HourlyTable table, double[] clear, double[] cosZenith, double[] cloud)
    {
        int n = table.Count;
        for (int day = 0; day < n; day += 24)
        {
            double light = 0, under = 0;
            for (int i = day; i < Math.Min(n, day + 24); i++)
            {
                if (cosZenith[i] < 0.26 || double.IsNaN(table.ShortwaveWPerM2[i])) continue;
                light += table.ShortwaveWPerM2[i];
                under += clear[i];
            }

            if (under < 200) continue;
            double share = Sunlight.CloudFromRatioShare(Math.Clamp(light / under, 0, 1));
            for (int i = day; i < Math.Min(n, day + 24); i++) cloud[i] = share;
        }
    }

    private static void FromTemperatureRange(HourlyTable table, LakeSite site, double[] clear, double[] cloud, List<Finding> notes)
    {
        notes.Add(SeasonFindings.NoSunNoCloud.Of());
        int n = table.Count;
        for (int day = 0; day < n; day += 24)
        {
            int end = Math.Min(n, day + 24);
            double low = double.MaxValue, high = double.MinValue, sum = 0;
            for (int i = day; i < end; i++)
            {
                low = Math.Min(low, table.AirTempC[i]);
                high = Math.Max(high, table.AirTempC[i]);
                sum += clear[i];
            }

            double top = Sunlight.DailyTopOfAirWPerM2(site.Position.LatDeg, table.TimeAt(day).DayOfYear), mean = sum / (end - day);
            double ratio = mean < 5 ? 0.6 : Math.Clamp(Sunlight.FromTemperatureRangeWPerM2(low, high, top) / mean, 0.2, 1.0);
            for (int i = day; i < end; i++) cloud[i] = Sunlight.CloudFromRatioShare(ratio);
        }
    }

    private static void FillShortwave(HourlyTable table, double[] clear, double[] cloud, List<Finding> notes, bool hasLight)
    {
        int filled = 0;
        for (int i = 0; i < table.Count; i++)
        {
            if (!double.IsNaN(table.ShortwaveWPerM2[i]))
            {
                table.ShortwaveWPerM2[i] = Math.Clamp(table.ShortwaveWPerM2[i], 0, MostShortwaveWPerM2);
                continue;
            }

            table.ShortwaveWPerM2[i] = clear[i] * Sunlight.CloudTransmissionShare(cloud[i]);
            filled++;
        }

        if (filled > 0 && hasLight) notes.Add(SeasonFindings.SunMissing.Of(filled));
        else if (filled > 0) notes.Add(SeasonFindings.SunFromCloud.Of());
    }

    // Share of the day's clear-sky light lost to cloud, held through the night; NaN where the sun tells nothing.
    private static double[] LostShares(HourlyTable table, double[] clear, double[] cosZenith)
    {
        int n = table.Count;
        double[] lost = new double[n];
        Array.Fill(lost, double.NaN);
        for (int day = 0; day < n; day += 24)
        {
            double light = 0, under = 0;
            int end = Math.Min(n, day + 24);
            for (int i = day; i < end; i++)
            {
                if (cosZenith[i] < 0.26) continue;
                light += table.ShortwaveWPerM2[i];
                under += clear[i];
            }

            if (under < 200) continue;
            for (int i = day; i < end; i++) lost[i] = Math.Clamp(1.0 - (light / under), 0, 1);
        }

        return lost;
    }

    private static void FillLongwave(HourlyTable table, double[] cloud, double[] lost, List<Finding> notes)
    {
        int filled = 0;
        for (int i = 0; i < table.Count; i++)
        {
            if (IsLongwave(table.LongwaveWPerM2[i])) continue;
            double air = table.AirTempC[i], vapourPa = table.RelativeHumidity[i] * MoistAir.SaturationVapourPa(air);
            double clearSky = Longwave.ClearSkyWPerM2(air, vapourPa);
            table.LongwaveWPerM2[i] = double.IsNaN(lost[i])
                ? Longwave.AllSkyWPerM2(clearSky, air, Math.Clamp(cloud[i], 0, 1))
                : Longwave.FromShortwaveLossWPerM2(clearSky, air, lost[i]);
            filled++;
        }

        if (filled > 0) notes.Add(filled == table.Count ? SeasonFindings.NoLongwave.Of() : SeasonFindings.LongwaveMissing.Of(filled));
    }
}
