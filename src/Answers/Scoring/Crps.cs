using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Answers.Scoring;

/// <summary>Continuous ranked probability scores (source: GneitingRaftery2007): mean distance to the truth less half the mean distance among members.</summary>
public static class Crps
{
    /// <summary>Score of equally likely members, in their unit.</summary>
    public static double Equal(ReadOnlySpan<double> members, double truth)
    {
        double[] weights = new double[members.Length];
        Array.Fill(weights, 1.0 / members.Length);
        return Weighted(members, weights, truth);
    }

    /// <summary>Score of weighted members; weights sum to 1.</summary>
    public static double Weighted(ReadOnlySpan<double> members, ReadOnlySpan<double> weights, double truth)
    {
        double near = 0, apart = 0;
        for (int i = 0; i < members.Length; i++)
        {
            near += weights[i] * Math.Abs(members[i] - truth);
            for (int j = 0; j < i; j++) apart += weights[i] * weights[j] * Math.Abs(members[i] - members[j]);
        }

        return near - apart;
    }

    /// <summary>Fair score: what an ensemble of any size would get on average (Ferro2014).</summary>
    public static double Fair(ReadOnlySpan<double> members, double truth)
    {
        double near = 0, apart = 0;
        int n = members.Length;
        for (int i = 0; i < n; i++)
        {
            near += Math.Abs(members[i] - truth) / n;
            for (int j = 0; j < i; j++) apart += Math.Abs(members[i] - members[j]);
        }

        return near - (n > 1 ? apart / (n * (n - 1.0)) : 0);
    }

    /// <summary>Score of a normal law.</summary>
    public static double Normal(double mean, double sd, double truth)
    {
        double z = (truth - mean) / sd;
        return sd * ((z * ((2 * NormalLaw.ShareBelow(z)) - 1)) + (2 * NormalLaw.Density(z)) - (1 / Math.Sqrt(Math.PI)));
    }
}

/// <summary>Weather shortened.</summary>
internal static class WeatherCut
{
    public static Engine.Season.WeatherSeries Until(Engine.Season.WeatherSeries w, DateTimeOffset cut)
    {
        int n = (int)Math.Clamp((cut - w.StartUtc).TotalHours, 0, w.Count);
        return new Engine.Season.WeatherSeries(w.StartUtc, w.StepS, w.AirTempC[..n], w.RelativeHumidity[..n], w.WindMps[..n], w.WindFromDeg[..n],
            w.ShortwaveWPerM2[..n], w.LongwaveWPerM2[..n], w.CloudFraction[..n], w.PrecipitationMmPerH[..n], w.GustMps[..n]);
    }
}
