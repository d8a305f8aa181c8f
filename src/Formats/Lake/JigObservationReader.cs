using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>Reads one of a jig's observations in tackle.json.</summary>
internal static class JigObservationReader
{
    /// <summary>The observation, or null with a sentence that says what it lacks.</summary>
    public static JigObservationItem? Read(JsonFields item)
    {
        string kind = item.Text("kind").Trim();
        if (!JigObservationItem.Kinds.Contains(kind))
        {
            item.Warn($"kind is '{TextDecoding.Excerpt(kind)}' where one of {string.Join(", ", JigObservationItem.Kinds)} is expected; it is not used.");
            return null;
        }

        JigObservationItem seen = new()
        {
            Kind = kind,
            DepthM = item.Number(Quantity.Length, 0.3, 100, "depth") ?? double.NaN,
            SpeedMps = item.Number(Quantity.Speed, 0, 3, "speed"),
            LineOutM = item.Number(Quantity.Length, 0.3, 400, "line_out"),
            CurrentMps = item.Number(Quantity.Speed, -3, 3, "current"),
            Seconds = item.Number(Quantity.Number, 0.2, 3600, "seconds"),
            LineName = item.Text("line"),
            Time = item.Text("time"),
            Note = item.Text("note"),
        };
        Told[] lacking = [.. Lacking(seen).Select(l => (Told)l)];
        if (lacking.Length > 0)
        {
            item.Warn($"an observation of {kind} needs {Told.Row(lacking)}; it is not used.");
            return null;
        }

        if (seen.LineOutM < seen.DepthM)
        {
            item.Warn($"line_out is {seen.LineOutM:0.##} m where at least the depth, {seen.DepthM:0.##} m, is expected; it is not used. Check its unit.");
            return null;
        }

        return seen;
    }

    private static IEnumerable<Finding> Lacking(JigObservationItem seen)
    {
        if (double.IsNaN(seen.DepthM)) yield return Finding.Of("depth_m or depth_ft");
        if (seen.Kind == "fall")
        {
            if (seen.Seconds is null) yield return Finding.Of("seconds");
            yield break;
        }

        if (seen.SpeedMps is null) yield return Finding.Of("speed_mps or speed_mph");
        if (seen.LineOutM is null) yield return Finding.Of("line_out_m or line_out_ft");
    }
}
