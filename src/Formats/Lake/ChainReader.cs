using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>One profile of a chain.</summary>
/// <param name="At">When it was measured, UTC.</param>
/// <param name="DepthM">Depths, m, rising.</param>
/// <param name="TempC">Temperatures, degC, same length.</param>
public sealed record ChainCast(DateTimeOffset At, double[] DepthM, double[] TempC);

/// <summary>A chain of thermometers at one place. Immutable.</summary>
/// <param name="Site">Its name; empty where the file names none.</param>
/// <param name="Casts">Its profiles in order of time.</param>
public sealed record MeasuredChain(string Site, IReadOnlyList<ChainCast> Casts);

/// <summary>Reads a file of measured chains: time, [site,] depth_m, temp_c.</summary>
public static class ChainReader
{
    /// <summary>Reads the file.</summary>
    /// <param name="file">Its name, for messages.</param>
    /// <param name="bytes">What it holds.</param>
    /// <param name="zone">The zone of times without an offset.</param>
    /// <param name="problems">What was found wrong with it.</param>
    /// <returns>The chains in order of name; empty when the file cannot serve, which a problem then says.</returns>
    public static IReadOnlyList<MeasuredChain> Read(string file, byte[] bytes, TimeZoneInfo zone, out IReadOnlyList<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ProblemLog log = new();
        IReadOnlyList<MeasuredChain> chains = Read(file, bytes, new ReadContext(log, zone, null));
        problems = log.ToList();
        return chains;
    }

    private static MeasuredChain[] Read(string file, byte[] bytes, ReadContext context)
    {
        TimedRows? rows = TimedRows.Open(file, bytes, context);
        if (rows is null) return [];
        CsvSheet sheet = rows.Sheet;
        CsvColumn? depth = sheet.Find(Quantity.Length, 0, 1700, "depth"), temp = sheet.Find(Quantity.Temperature, -2, 45, "temp", "water_temp", "temperature");
        if (depth is null || temp is null)
        {
            context.Log.Error(file, "the file needs the columns time, depth_m (or depth_ft) and temp_c (or temp_f), and site where it holds more than one chain.");
            return [];
        }

        int site = sheet.Find("site", "mooring", "station", "chain");
        Dictionary<string, Dictionary<DateTimeOffset, SortedList<double, double>>> sites = new(StringComparer.Ordinal);
        foreach ((int row, DateTimeOffset at) in rows.Rows())
        {
            double depthM = sheet.Number(row, depth), tempC = sheet.Number(row, temp);
            if (double.IsNaN(depthM) || double.IsNaN(tempC)) continue;
            string name = sheet.TextOf(row, site);
            if (!sites.TryGetValue(name, out Dictionary<DateTimeOffset, SortedList<double, double>>? casts)) sites[name] = casts = [];
            if (!casts.TryGetValue(at, out SortedList<double, double>? cast)) casts[at] = cast = [];
            if (!cast.TryAdd(depthM, tempC))
                context.Log.Row(file, sheet.Line(row), "depth given twice", "this time and depth were already given; the row is not used.");
        }

        if (sites.Count == 0) context.Log.Error(file, "no row of the file can be used.");
        return [.. sites.OrderBy(s => s.Key, StringComparer.Ordinal).Select(s => new MeasuredChain(s.Key,
            [.. s.Value.OrderBy(c => c.Key).Select(c => new ChainCast(c.Key, [.. c.Value.Keys], [.. c.Value.Values]))]))];
    }
}
