using System.Text;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.AsciiGrid;

/// <summary>The header of an ESRI ASCII grid.</summary>
internal sealed record AsciiGridHeader(int Columns, int Rows, double X, double Y, bool Corner, double CellX, double CellY, double NoData, bool MissingNoData, int ValuesAt, int ValuesLine)
{
    /// <summary>Reads the header; null, with an error, when it is not whole.</summary>
    public static AsciiGridHeader? Read(string file, ReadOnlySpan<byte> bytes, ProblemLog log)
    {
        Dictionary<string, double> keys = new(StringComparer.OrdinalIgnoreCase);
        int at = 0, line = 1;
        while (at < bytes.Length && keys.Count < 12)
        {
            int end = at;
            while (end < bytes.Length && bytes[end] is not ((byte)'\n' or (byte)'\r')) end++;
            string text = Encoding.Latin1.GetString(bytes[at..Math.Min(end, at + 200)]).Trim();
            if (text.Length > 0)
            {
                if (!char.IsLetter(text[0])) break;
                string[] parts = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
                if (parts.Length != 2 || !Number(parts[1], out double value))
                {
                    log.Add(file, line, ProblemSeverity.Error, $"the header line '{TextDecoding.Excerpt(text)}' is not a name and a number, such as ncols 400.");
                    return null;
                }

                keys[parts[0]] = value;
            }

            if (end < bytes.Length && bytes[end] == '\r' && end + 1 < bytes.Length && bytes[end + 1] == '\n') end++;
            if (end < bytes.Length) line++;
            at = Math.Min(end + 1, bytes.Length);
        }

        return Build(file, keys, at, line, log);
    }

    /// <summary>Where pixel centres lie; row 0 is the northmost.</summary>
    public AffinePlace Place()
    {
        double west = Corner ? X + (CellX / 2) : X, south = Corner ? Y + (CellY / 2) : Y;
        return new AffinePlace(west, CellX, 0, south + ((Rows - 1) * CellY), 0, -CellY);
    }

    private static AsciiGridHeader? Build(string file, Dictionary<string, double> keys, int at, int line, ProblemLog log)
    {
        double columns = keys.GetValueOrDefault("ncols", double.NaN), rows = keys.GetValueOrDefault("nrows", double.NaN);
        bool corner = keys.ContainsKey("xllcorner") || keys.ContainsKey("yllcorner");
        double x = keys.GetValueOrDefault(corner ? "xllcorner" : "xllcenter", double.NaN);
        double y = keys.GetValueOrDefault(corner ? "yllcorner" : "yllcenter", double.NaN);
        double cellX = keys.GetValueOrDefault("dx", keys.GetValueOrDefault("cellsize", double.NaN));
        double cellY = keys.GetValueOrDefault("dy", keys.GetValueOrDefault("cellsize", double.NaN));
        string? missing = double.IsNaN(columns) ? "ncols" : double.IsNaN(rows) ? "nrows"
            : double.IsNaN(x) ? "xllcorner" : double.IsNaN(y) ? "yllcorner" : double.IsNaN(cellX) || double.IsNaN(cellY) ? "cellsize" : null;
        if (missing is not null)
        {
            log.Error(file, $"the header of the grid lacks {missing}; it needs ncols, nrows, xllcorner, yllcorner and cellsize.");
            return null;
        }

        if (!(columns is >= 1 and <= int.MaxValue) || !(rows is >= 1 and <= int.MaxValue) || columns % 1 != 0 || rows % 1 != 0)
        {
            log.Error(file, $"the header gives {columns} columns and {rows} rows where whole numbers above 0 are expected.");
            return null;
        }

        if (!(cellX > 0) || !(cellY > 0) || double.IsInfinity(cellX) || double.IsInfinity(cellY))
        {
            log.Error(file, $"the header gives a cell size of {cellX} where a number above 0 is expected.");
            return null;
        }

        bool stated = keys.TryGetValue("nodata_value", out double noData) || keys.TryGetValue("nodata", out noData);
        return new AsciiGridHeader((int)columns, (int)rows, x, y, corner, cellX, cellY, stated ? noData : -9999, !stated, at, line);
    }

    private static bool Number(string text, out double value)
    {
        if (NumberText.TryParse(text, decimalComma: true, out value)) return true;
        value = double.NaN;
        return text.Equals("nan", StringComparison.OrdinalIgnoreCase);
    }
}
