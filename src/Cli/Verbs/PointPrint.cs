using System.Globalization;
using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Wind;

namespace SecondShore.Cli.Verbs;

/// <summary>Prints the series of places that <c>wind --point</c> asks for.</summary>
internal static class PointPrint
{
    public static void Write(string lake, WindResult result, IReadOnlyList<PointSeries> points, UnitSystem units, bool json, Surroundings surroundings)
    {
        PointsDocument document = PointsDocument.Of(lake, result, points, units);
        if (json) surroundings.Out.WriteLine(JsonSerializer.Serialize(document, AnswersJson.Default.PointsDocument));
        else Print(document, units, surroundings.Out);
    }

    private static void Print(PointsDocument document, UnitSystem units, TextWriter output)
    {
        output.WriteLine($"{document.Lake}, {document.At.ToString("ddd d MMM yyyy, HH:mm", CultureInfo.InvariantCulture)}");
        foreach (PointSeries point in document.Points)
        {
            output.WriteLine();
            output.Write(string.Create(CultureInfo.InvariantCulture, $"{point.Lat}, {point.Lon}{(point.Arm.Length > 0 ? $" ({point.Arm})" : "")}: {units.Depth(point.DepthM)} of water"));
            output.WriteLine(point.AtRestM is { } rest ? $", thermocline {units.Depth(rest.P50)} at rest" : ", no layers");
            output.WriteLine($"{"",12}{"thermocline",22}{"off rest",16}{"drift",14}{"at the thermocline",22}{"waves",9}");
            foreach (PointHour hour in point.Hours) output.WriteLine(Row(hour, units));
        }

        foreach (string line in document.Cautions.Concat(document.Assumed)) output.WriteLine($"  {line}");
    }

    private static string Row(PointHour hour, UnitSystem units)
    {
        string depth = hour.ThermoclineM is { } t ? $"{units.Depth(t.P50)} ({units.DepthNumber(t.P10)} to {units.DepthNumber(t.P90)})" : "-";
        string off = hour.DisplacementM is { } d ? units.Difference(Math.Abs(d.P50)) + (d.P50 > 0 ? " deeper" : " up") : "-";
        return string.Create(CultureInfo.InvariantCulture,
            $"{hour.Time,12:ddd HH:mm}{depth,22}{off,16}{Flow(hour.Currents[0], units),14}{Flow(hour.Deep, units),22}{WindWords.Height(hour.WaveHeightM, units),9}");
    }

    private static string Flow(PointCurrent current, UnitSystem units) => $"{units.Pace(current.Mps)} {WindWords.ShortPoint(current.ToDeg)}";
}
