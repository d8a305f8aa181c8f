using System.Globalization;
using System.Text;
using SecondShore.Engine.Core.Units;

namespace SecondShore.Answers.Sheet;

/// <summary>The wind by hour as SVG: bars are wind, stems gusts, arrows fly with it, dark hours are hatched, stops lie on the axis.</summary>
internal static class WindStrip
{
    private const double Left = 30, Right = 222, Top = 34, Floor = 126;

    public static string Draw(DaySheetModel model)
    {
        if (model.Wind.Count == 0) return $"<p class=\"small\">{SheetHtml.Escape(model.Units.Speech.Plain("No wind in the folder's weather for this day."))}</p>";
        DateTimeOffset start = model.Wind[0].At, end = model.Wind[^1].At.AddHours(1);
        double hours = (end - start).TotalHours, perUnit = model.Units.IsMetric ? 1.0 : 1.0 / Speed.MpsPerMph;
        double most = model.Units.IsMetric ? 10 : 20;
        foreach (SheetWind hour in model.Wind) most = Math.Max(most, hour.GustMps * perUnit);
        double X(DateTimeOffset at) => Left + ((Right - Left) * Math.Clamp((at - start).TotalHours / hours, 0, 1));
        double Y(double mps) => Floor - ((Floor - Top) * mps * perUnit / most);

        StringBuilder svg = new();
        svg.Append(Fmt($"<svg class=\"chart\" viewBox=\"0 0 226 148\" role=\"img\" aria-label=\"{SheetHtml.Escape(Alternative(model))}\">"))
            .Append("<defs><pattern id=\"dark\" width=\"5\" height=\"5\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><path class=\"hx\" d=\"M0,0V5\"/></pattern></defs>");
        if (model.LightAt is DateTimeOffset light && light > start) svg.Append(Fmt($"<rect x=\"{Left}\" y=\"10\" width=\"{X(light) - Left:0.#}\" height=\"{Floor - 10}\" fill=\"url(#dark)\"/>"));
        if (model.DarkAt is DateTimeOffset dark && dark < end) svg.Append(Fmt($"<rect x=\"{X(dark):0.#}\" y=\"10\" width=\"{Right - X(dark):0.#}\" height=\"{Floor - 10}\" fill=\"url(#dark)\"/>"));
        double step = model.Units.IsMetric ? 5 : 10;
        for (double level = step; level <= most; level += step)
            svg.Append(Fmt($"<path class=\"gr\" d=\"M{Left},{Y(level / perUnit):0.#}H{Right}\"/><text x=\"{Left - 5}\" y=\"{Y(level / perUnit) + 4:0.#}\" text-anchor=\"end\">{level:0}</text>"));
        int label = 0;
        foreach (SheetWind hour in model.Wind)
        {
            double x = X(hour.At.AddMinutes(30)), width = (Right - Left) / hours * 0.55;
            svg.Append(Fmt($"<path class=\"cv\" d=\"M{x:0.#},{Y(hour.WindMps):0.#}V{Y(hour.GustMps):0.#}M{x - 4:0.#},{Y(hour.GustMps):0.#}h8\"/>"))
                .Append(Fmt($"<rect class=\"f\" x=\"{x - (0.5 * width):0.#}\" y=\"{Y(hour.WindMps):0.#}\" width=\"{width:0.#}\" height=\"{Floor - Y(hour.WindMps):0.#}\"/>"));
            if (double.IsFinite(hour.FromDeg))
                svg.Append(Fmt($"<path class=\"cv\" transform=\"translate({x:0.#},20) rotate({hour.FromDeg + 180:0})\" d=\"M0,7V-7M-3.2,-3L0,-7L3.2,-3\"/>"));
            // An hour's name stands where the hour begins: where a stop at that time begins, too.
            if (label++ % Math.Max(1, (int)Math.Ceiling(hours / 6)) == 0 && X(hour.At) < Right - 8)
                svg.Append(Fmt($"<text x=\"{X(hour.At):0.#}\" y=\"143\" text-anchor=\"middle\">{(model.Units.Speech.Language == "en" ? hour.At.ToString("h tt", CultureInfo.InvariantCulture).ToLowerInvariant() : model.Units.Speech.Say($"{hour.At.Hour} h"))}</text>"));
        }

        svg.Append(Fmt($"<path class=\"ax\" d=\"M{Left},{Floor}H{Right}\"/>"));
        foreach (SheetStop stop in model.Stops) svg.Append(Fmt($"<path class=\"ac\" d=\"M{X(stop.Arrive):0.#},{Floor + 1}H{X(stop.Leave):0.#}\"/>"));
        return svg.Append("</svg>").ToString();
    }

    private static string Alternative(DaySheetModel model)
    {
        SheetWind worst = model.Wind[0];
        foreach (SheetWind hour in model.Wind)
            if (hour.GustMps > worst.GustMps) worst = hour;
        return model.Units.Speech.Say($"Wind by hour from {model.Units.Wind(model.Wind[0].WindMps)}; the strongest gust is {model.Units.Wind(worst.GustMps)} at {model.Units.Speech.Clock(worst.At)}.");
    }

    private static string Fmt(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
