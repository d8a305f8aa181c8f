using System.Globalization;
using System.Text;
using SecondShore.Engine.Core.Grid;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.AsciiGrid;

/// <summary>Reads ESRI ASCII grids: a few header lines, then rows of numbers from north to south.</summary>
internal sealed class AsciiGridReader : ISurveyReader
{
    public string Format => "ESRI ASCII grid";

    public double Sniff(SurveySource source)
    {
        ReadOnlySpan<byte> head = source.Bytes.AsSpan(0, Math.Min(source.Bytes.Length, 400));
        string text = Encoding.Latin1.GetString(head).TrimStart();
        if (text.StartsWith("ncols", StringComparison.OrdinalIgnoreCase) || text.StartsWith("nrows", StringComparison.OrdinalIgnoreCase)) return 0.98;
        return source.Ending is "asc" or "agr" ? 0.3 : 0;
    }

    public RawSurvey? Read(SurveySource source, SurveyOptions options, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation)
    {
        if (AsciiGridHeader.Read(source.Name, source.Bytes, log) is not AsciiGridHeader header) return null;
        long cells = (long)header.Columns * header.Rows;
        long left = source.Bytes.Length - header.ValuesAt;
        if (cells > GridFrame.MaxCells)
        {
            log.Error(source.Name, $"the grid has {header.Columns} x {header.Rows} cells where at most {GridFrame.MaxCells} are taken; cut or coarsen it.");
            return null;
        }

        if (cells > left + 1)
        {
            log.Error(source.Name, $"the header announces {header.Columns} x {header.Rows} cells, but only {left} bytes of numbers follow; the file is cut short or its header is wrong.");
            return null;
        }

        float[] values = new float[cells];
        if (!ReadValues(source, header, values, log, progress, cancellation)) return null;
        RawSurvey raw = new(Format) { Raster = new RawRaster(header.Columns, header.Rows, values, header.Place()) };
        if (header.MissingNoData) raw.Doubts.Add("The header names no value for missing cells; -9999 is taken.");
        return raw;
    }

    private static bool ReadValues(SurveySource source, AsciiGridHeader header, float[] values, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation)
    {
        ReadOnlySpan<byte> bytes = source.Bytes;
        int at = header.ValuesAt, cell = 0, line = header.ValuesLine;
        while (cell < values.Length)
        {
            while (at < bytes.Length && bytes[at] <= ' ') if (bytes[at++] == '\n') line++;
            if (at >= bytes.Length) break;
            int start = at;
            while (at < bytes.Length && bytes[at] > ' ') at++;
            ReadOnlySpan<byte> token = bytes[start..at];
            if (!TryNumber(token, out double value))
            {
                log.Add(source.Name, line, ProblemSeverity.Error, $"'{TextDecoding.Excerpt(Encoding.Latin1.GetString(token))}' stands where a number is expected; the grid is not used. Correct or export it again.");
                return false;
            }

            values[cell++] = value == header.NoData || Math.Abs(value) > 1e7 ? float.NaN : (float)value;
            if (cell % 500_000 == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Report((double)cell / values.Length);
            }
        }

        if (cell == values.Length) return true;
        log.Error(source.Name, $"the file ends after {cell} of {values.Length} numbers; it is cut short. Copy or export it again.");
        return false;
    }

    private static bool TryNumber(ReadOnlySpan<byte> token, out double value)
    {
        Span<char> plain = stackalloc char[16];
        if (token.Length <= plain.Length)
        {
            for (int k = 0; k < token.Length; k++) plain[k] = (char)token[k];
            if (NumberText.TryPlain(plain[..token.Length], out value)) return true;
        }

        if (double.TryParse(token, NumberStyles.Float, CultureInfo.InvariantCulture, out value)) return double.IsFinite(value) || double.IsNaN(value);
        if (token.IndexOf((byte)',') < 0 || token.Length > 40) return false;
        return NumberText.TryParse(Encoding.Latin1.GetString(token), decimalComma: true, out value);
    }
}
