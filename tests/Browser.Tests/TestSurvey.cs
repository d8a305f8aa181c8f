using System.Globalization;
using System.Text;

namespace SecondShore.Browser.Tests;

/// <summary>A survey of an invented bowl with a point and a hump, as soundings in feet: what a newcomer may drop.</summary>
internal static class TestSurvey
{
    /// <summary>Its file name.</summary>
    public static readonly string Name = "bowl.csv";

    /// <summary>Its bytes.</summary>
    public static byte[] Bytes()
    {
        StringBuilder text = new("lat,lon,depth_ft\n");
        for (int i = -24; i <= 24; i++)
        {
            for (int j = -24; j <= 24; j++)
            {
                double r = Math.Sqrt((i * i) + (j * j)) / 24.0;
                if (r > 1) continue;
                double bowl = 68 * (1 - (r * r));
                double hump = 30 * Math.Exp(-(((i - 6) * (i - 6)) + ((j - 5) * (j - 5))) / 14.0);
                double point = i < 0 ? 24 * Math.Exp(-(j * j) / 10.0) * Math.Min(1, -i / 14.0) : 0;
                text.Append(string.Create(CultureInfo.InvariantCulture, $"{39.5 + (i * 0.0004):0.000000},{-97.2 + (j * 0.0005):0.000000},{Math.Max(0, bowl - hump - point):0.0}\n"));
            }
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
