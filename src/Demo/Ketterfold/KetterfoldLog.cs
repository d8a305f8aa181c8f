using System.Globalization;
using System.Text;
using SecondShore.Demo.Terrain;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Demo.Ketterfold;

/// <summary>A log of a few invented trips, blanks included: fish bite more often near the thermocline and on edges.</summary>
internal sealed class KetterfoldLog(GeneratedLake lake, LocalProjection plane, KetterfoldWater water, ulong seed)
{
    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;
    private static readonly string[] Trailers = ["slim craw", "bulky craw", "paddle tail"];
    private static readonly FormClass[] Sought = [FormClass.ChannelBend, FormClass.MainPoint, FormClass.Hump, FormClass.Ledge, FormClass.BluffEnd, FormClass.Junction, FormClass.Saddle];
    private readonly SeededRandom _random = new(seed, 733);
    private readonly StringBuilder _text = new();
    private int _id;

    // Where and with what a stop was fished.
    private sealed record Stop(PlanePoint Place, TruthForm Form, double DepthM, double WindMps, string Jig, double WeightG, string Trailer);

    public byte[] Csv()
    {
        _text.Append("id,time,kind,effort_min,count,latitude_deg,longitude_deg,form,bottom_depth_m,step_depth_m,surface_temp_c,wind_speed_m_s,sky,jig,jig_weight_g,trailer,presentation,speed_m_s,species,fish_length_cm,note\n");
        foreach ((int month, int day) in ((int, int)[])[(9, 12), (9, 19), (9, 26), (10, 3)]) Trip(new DateTimeOffset(2026, month, day, 13, 0, 0, TimeSpan.Zero));
        return Encoding.UTF8.GetBytes(_text.ToString());
    }

    private void Trip(DateTimeOffset start)
    {
        List<TruthForm> forms = [.. lake.Forms.Where(f => Sought.Contains(f.Class) && f.DepthM < 22)];
        DateTimeOffset at = start;
        double windMps = 2 + (3 * _random.NextDouble());
        for (int stop = 0; stop < 9; stop++)
        {
            TruthForm form = forms[_random.NextInt(forms.Count)];
            PlanePoint place = PlaceAt(form, water.ThermoclineM(at) + _random.NextDouble(-4, 5));
            double depthM = lake.DepthAtM(place) - KetterfoldWater.DropM(at);
            if (!(depthM > 2)) continue;
            int minutes = 20 + _random.NextInt(30), trailer = _random.NextInt(3);
            bool deep = depthM > 10;
            Stop fished = new(place, form, depthM, windMps, deep ? "drag 3/4" : "drag 1/2", deep ? 21.3 : 14.2, Trailers[trailer]);
            double off = (depthM - water.ThermoclineM(at)) / 2.2;
            double perHour = 0.25 + (2.4 * Math.Exp(-0.5 * off * off) * (trailer == 1 ? 1.3 : 0.85));
            int bites = _random.NextPoisson(perHour * minutes / 60), fish = 0;
            for (int b = 0; b < bites; b++)
                if (_random.NextDouble() < 0.6) fish++;
            Row(at, bites == 0 ? "nothing" : "effort", minutes, 0, fished, "");
            for (int b = 0; b < bites; b++)
            {
                string length = b < fish ? string.Create(Plain, $"{Math.Min(58, 31 + (4.5 * _random.NextGamma(1.8))):0}") : "";
                Row(at.AddMinutes(_random.NextDouble(2, minutes)), b < fish ? "fish" : "bite", 0, 1, fished, length);
            }

            if (_random.NextDouble() < 0.2) Row(at.AddMinutes(5), "snag", 0, 1, fished, "");
            at = at.AddMinutes(minutes + 12);
        }
    }

    // A place near the form whose bottom lies near the depth wanted.
    private PlanePoint PlaceAt(TruthForm form, double depthM)
    {
        PlanePoint best = form.Place;
        double bestM = double.MaxValue;
        for (int k = 0; k < 60; k++)
        {
            PlanePoint p = new(form.Place.XM + (70 * _random.NextNormal()), form.Place.YM + (70 * _random.NextNormal()));
            double miss = Math.Abs(lake.DepthAtM(p) - depthM);
            if (miss < bestM) { bestM = miss; best = p; }
        }

        return best;
    }

    private void Row(DateTimeOffset at, string kind, int minutes, int count, Stop stop, string lengthCm)
    {
        GeoPoint g = plane.ToGeo(stop.Place);
        string effort = minutes > 0 ? minutes.ToString(Plain) : "", number = count > 0 ? count.ToString(Plain) : "";
        string species = kind == "fish" ? "black bass" : "";
        _text.Append(Plain, $"k{++_id:000},{at.UtcDateTime:yyyy-MM-ddTHH:mm}Z,{kind},{effort},{number},{g.LatDeg:0.00000},{g.LonDeg:0.00000},")
            .Append(Plain, $"{SurveyText.WordOf(stop.Form.Class)},{stop.DepthM:0.0},");
        _text.Append(Plain, $"{water.ThermoclineM(at) + (0.4 * _random.NextNormal()):0.0},{water.SurfaceC(at):0.0},{stop.WindMps:0.0},")
            .Append(Plain, $"{(_random.NextInt(2) == 0 ? "clear" : "cloudy")},{stop.Jig},{stop.WeightG},{stop.Trailer},drag,")
            .Append(Plain, $"{0.25 + (0.2 * _random.NextDouble()):0.00},{species},{lengthCm},\n");
    }
}
