using SecondShore.Engine.Basin;
using SecondShore.Engine.Season;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>Reads what was measured in and of the water: profiles, Secchi depths, levels, flows, hypsography, overturns.</summary>
internal static class WaterReaders
{
    public static List<WaterProfile> Profiles(string file, byte[] bytes, ReadContext context)
    {
        List<WaterProfile> profiles = [];
        TimedRows? rows = TimedRows.Open(file, bytes, context);
        if (rows is null) return profiles;
        CsvSheet sheet = rows.Sheet;
        CsvColumn? depth = sheet.Find(Quantity.Length, 0, 1700, "depth");
        CsvColumn? temp = sheet.Find(Quantity.Temperature, -2, 45, "temp", "water_temp", "temperature");
        CsvColumn? oxygen = sheet.Find(Quantity.Concentration, 0, 40, "oxygen", "dissolved_oxygen");
        if (depth is null || (temp is null && oxygen is null))
        {
            context.Log.Error(file, "the file needs the columns time, depth_m (or depth_ft) and temp_c (or temp_f).");
            return profiles;
        }

        List<(DateTimeOffset At, int Line, double DepthM, double TempC, double Oxygen)> all = new(sheet.Count);
        foreach ((int row, DateTimeOffset at) in rows.Rows())
        {
            double depthM = sheet.Number(row, depth), tempC = sheet.Number(row, temp), oxygenMgPerL = sheet.Number(row, oxygen);
            if (double.IsNaN(depthM))
                context.Log.Row(file, sheet.Line(row), "no depth", "the row has no usable depth; it is not used.");
            else if (!double.IsNaN(tempC) || !double.IsNaN(oxygenMgPerL))
                all.Add((at, sheet.Line(row), depthM, tempC, oxygenMgPerL));
        }

        foreach (var cast in all.GroupBy(r => r.At).OrderBy(g => g.Key)) profiles.Add(Cast(file, cast.Key, cast, context));
        return profiles;
    }

    private static WaterProfile Cast(string file, DateTimeOffset at,
        IEnumerable<(DateTimeOffset At, int Line, double DepthM, double TempC, double Oxygen)> rows, ReadContext context)
    {
        List<double> depths = [], temps = [], oxygens = [];
        int firstLine = int.MaxValue;
        foreach (var row in rows.OrderBy(r => r.DepthM))
        {
            firstLine = Math.Min(firstLine, row.Line);
            if (depths.Count > 0 && row.DepthM == depths[^1])
            {
                // A second row at one depth may carry the oxygen of the first; a real repeat is not used.
                if (double.IsNaN(temps[^1]) && double.IsNaN(row.Oxygen)) temps[^1] = row.TempC;
                else if (double.IsNaN(oxygens[^1]) && double.IsNaN(row.TempC)) oxygens[^1] = row.Oxygen;
                else context.Log.Row(file, row.Line, "depth given twice", "this time and depth were already given; the row is not used.");
                continue;
            }

            depths.Add(row.DepthM);
            temps.Add(row.TempC);
            oxygens.Add(row.Oxygen);
        }

        double[]? oxygen = oxygens.TrueForAll(double.IsNaN) ? null : [.. oxygens];
        return new WaterProfile(at, [.. depths], [.. temps], oxygen, FormattableString.Invariant($"{file} line {firstLine}"));
    }

    public static List<Reading> Secchi(string file, byte[] bytes, ReadContext context)
    {
        List<Reading> readings = [];
        TimedRows? rows = TimedRows.Open(file, bytes, context);
        if (rows is null) return readings;
        CsvColumn? secchi = rows.Sheet.Find(Quantity.Length, 0.02, 60, "secchi", "secchi_depth");
        if (secchi is null) context.Log.Error(file, "the file needs the columns time and secchi_m (or secchi_ft).");
        else
        {
            foreach ((int row, DateTimeOffset at) in rows.Rows())
                if (rows.Sheet.Optional(row, secchi) is double m)
                    readings.Add(new Reading(at, rows.Place(row), ReadingKind.Secchi, m, null, FormattableString.Invariant($"{file} line {rows.Sheet.Line(row)}")));
        }

        return [.. readings.OrderBy(r => r.At)];
    }

    public static List<PoolLevel> Levels(string file, byte[] bytes, ReadContext context)
    {
        List<PoolLevel> levels = [];
        TimedRows? rows = TimedRows.Open(file, bytes, context);
        if (rows is null) return levels;
        CsvSheet sheet = rows.Sheet;
        CsvColumn? below = sheet.Find(Quantity.Length, -60, 300, "below_reference", "below_full_pool");
        CsvColumn? elevation = sheet.Find(Quantity.Length, -450, 6500, "pool_elevation", "level_elevation", "water_level", "level", "elevation");
        if (below is null && elevation is null)
        {
            context.Log.Error(file, "the file needs the columns time and below_full_pool_m (or pool_elevation_m or _ft).");
            return levels;
        }

        if (below is null && context.FullPoolElevationM is null)
        {
            context.Log.Error(file, $"{elevation!.Header} gives elevations, but lake.json has no elevation_m of full pool to count from; add it.");
            return levels;
        }

        foreach ((int row, DateTimeOffset at) in rows.Rows())
        {
            double m = below is not null ? sheet.Number(row, below) : context.FullPoolElevationM!.Value - sheet.Number(row, elevation);
            if (!double.IsNaN(m)) levels.Add(new PoolLevel(at, m));
        }

        levels.Sort((a, b) => a.At.CompareTo(b.At));
        return levels;
    }

    public static List<DailyFlow> Flows(string file, byte[] bytes, ReadContext context)
    {
        List<DailyFlow> flows = [];
        TimedRows? rows = TimedRows.Open(file, bytes, context, TimeSpan.Zero);
        if (rows is null) return flows;
        CsvSheet sheet = rows.Sheet;
        CsvColumn? inflow = sheet.Find(Quantity.Flow, 0, 1e6, "inflow"), outflow = sheet.Find(Quantity.Flow, 0, 1e6, "outflow");
        CsvColumn? temp = sheet.Find(Quantity.Temperature, -1, 45, "inflow_temp");
        if (inflow is null && outflow is null)
        {
            context.Log.Error(file, "the file needs the columns time and inflow_m3_s or outflow_m3_s (or _cfs).");
            return flows;
        }

        if (outflow is null) context.Log.Note(file, "no outflow is given; it is taken equal to the inflow.");
        foreach ((int row, DateTimeOffset at) in rows.Rows())
        {
            double inM3 = sheet.Number(row, inflow), outM3 = outflow is null ? inM3 : sheet.Number(row, outflow);
            if (!double.IsNaN(inM3) || !double.IsNaN(outM3))
                flows.Add(new DailyFlow(at, double.IsNaN(inM3) ? 0 : inM3, sheet.Number(row, temp), double.IsNaN(outM3) ? 0 : outM3));
        }

        flows.Sort((a, b) => a.At.CompareTo(b.At));
        return flows;
    }

    public static Hypsography? Hypsography(string file, byte[] bytes, ReadContext context)
    {
        CsvSheet? sheet = CsvSheet.Open(file, bytes, context.Log);
        if (sheet is null) return null;
        CsvColumn? depth = sheet.Find(Quantity.Length, 0, 2000, "depth"), area = sheet.Find(Quantity.Area, 0, 1e12, "area");
        if (depth is null || area is null)
        {
            context.Log.Error(file, "the file needs the columns depth_m (or depth_ft) and area_m2 (or area_acres, area_ha).");
            return null;
        }

        List<(double DepthM, double AreaM2)> rows = [];
        for (int row = 0; row < sheet.Count; row++)
        {
            double depthM = sheet.Number(row, depth), areaM2 = sheet.Number(row, area);
            if (!double.IsNaN(depthM) && !double.IsNaN(areaM2)) rows.Add((depthM, areaM2));
        }

        rows.Sort((a, b) => a.DepthM.CompareTo(b.DepthM));
        double[] depths = [.. rows.Select(r => r.DepthM)], areas = [.. rows.Select(r => r.AreaM2)];
        if (Engine.Basin.Hypsography.Fault(depths, areas) is not { } fault) return new Hypsography(depths, areas);
        context.Log.Error(file, $"{fault} The area at each depth must be given from the surface (depth 0) down.");
        return null;
    }

    public static List<OverturnRow> Overturns(string file, byte[] bytes, ReadContext context)
    {
        List<OverturnRow> result = [];
        CsvSheet? sheet = CsvSheet.Open(file, bytes, context.Log);
        if (sheet is null) return result;
        CsvColumn? year = sheet.Find(Quantity.Number, LakeClock.FirstYear, LakeClock.EndYear, "year");
        int last = sheet.Find("last_stratified_obs"), first = sheet.Find("first_mixed_obs"), week = sheet.Find("first_7day_mixed_run_start");
        for (int row = 0; row < sheet.Count; row++)
        {
            if (sheet.Optional(row, year) is double y)
                result.Add(new OverturnRow((int)y, Day(sheet.TextOf(row, last)), Day(sheet.TextOf(row, first)), Day(sheet.TextOf(row, week))));
        }

        return result;

        static DateOnly? Day(string text) =>
            DateOnly.TryParseExact(text, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.None, out DateOnly day) ? day : null;
    }
}
