using SecondShore.Engine.Core.Grid;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.GeoTiff;

/// <summary>Reads the first band of a GeoTIFF: float or integer, tiled or striped, any compression the library knows.</summary>
internal sealed class GeoTiffReader : ISurveyReader
{
    public string Format => "GeoTIFF";

    public double Sniff(SurveySource source)
    {
        ReadOnlySpan<byte> b = source.Bytes;
        bool starts = b.Length >= 4 && ((b[0] == 'I' && b[1] == 'I' && b[2] is 42 or 43 && b[3] == 0) || (b[0] == 'M' && b[1] == 'M' && b[2] == 0 && b[3] is 42 or 43));
        return starts ? 0.99 : source.Ending is "tif" or "tiff" ? 0.4 : 0;
    }

    public RawSurvey? Read(SurveySource source, SurveyOptions options, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation)
    {
        if (Sniff(source) < 0.9)
        {
            log.Error(source.Name, "the file is not a TIFF file, whatever its name says; copy or export it again.");
            return null;
        }

        TiffDirectory? directory = TiffDirectory.Read(source.Bytes, out FindingForm fault);
        TiffShape? shape = directory is null ? null : TiffShape.Of(directory, source.Bytes.Length, out fault);
        if (directory is null || shape is null)
        {
            log.Error(source.Name, fault);
            return null;
        }

        float[]? values = TiffPixels.Read(source.Bytes, shape, NoData(directory), progress, cancellation, out fault);
        if (values is null)
        {
            log.Error(source.Name, fault);
            return null;
        }

        return Describe(source, directory, shape, values, log);
    }

    private RawSurvey? Describe(SurveySource source, TiffDirectory directory, TiffShape shape, float[] values, ProblemLog log)
    {
        GeoKeys keys = new(directory);
        AffinePlace? place = keys.Place();
        if (place is null && (source.Companion("tfw") ?? source.Companion("tifw")) is byte[] world) place = GeoKeys.WorldFile(TextDecoding.Decode(world, out _));
        if (place is null)
        {
            log.Error(source.Name, "the raster carries no place on the earth (no GeoTIFF tags, no world file); export it again with its georeference.");
            return null;
        }

        RawSurvey raw = new(Format) { Raster = new RawRaster(shape.Columns, shape.Rows, values, place) };
        raw.Crs = keys.Crs(out FindingForm fault);
        raw.CrsKnown = raw.Crs is null ? Knowledge.Assumed : Knowledge.Stated;
        if (raw.Crs is null && !fault.IsEmpty && source.Companion("prj") is null) raw.Doubts.Add(fault.ToFinding().Opening());
        if (keys.VerticalUnit is DepthUnit unit) (raw.Unit, raw.UnitKnown) = (unit, Knowledge.Stated);
        if (shape.Bands > 1) raw.Doubts.Add($"The raster has {shape.Bands} bands; the first is read.");
        return raw;
    }

    private static double NoData(TiffDirectory directory) =>
        NumberText.TryParse(directory.Text(42113), false, out double value) ? value : double.NaN;
}

/// <summary>The checked shape of a TIFF's first image.</summary>
internal sealed record TiffShape(int Columns, int Rows, int Bits, int SampleFormat, int Bands, bool Planar, bool Tiled, int TileColumns, int TileRows, int Compression)
{
    /// <summary>The shape; null with what is wrong in <paramref name="fault"/>.</summary>
    public static TiffShape? Of(TiffDirectory d, long fileBytes, out FindingForm fault)
    {
        double columns = d.Number(256, 0), rows = d.Number(257, 0), bits = d.Number(258, 1), bands = d.Number(277, 1);
        int format = (int)d.Number(339, 1), compression = (int)d.Number(259, 1);
        bool tiled = d.Count(322) > 0 || d.Count(324) > 0;
        double tileColumns = tiled ? d.Number(322, 0) : columns, tileRows = tiled ? d.Number(323, 0) : Math.Min(d.Number(278, rows), rows);
        fault = Fault(columns, rows, bits, bands, format, compression, tileColumns, tileRows, d, fileBytes);
        return !fault.IsEmpty ? null : new TiffShape((int)columns, (int)rows, (int)bits, format, (int)bands, d.Number(284, 1) == 2, tiled,
            (int)tileColumns, (int)tileRows, compression);
    }

    private static FindingForm Fault(double columns, double rows, double bits, double bands, int format, int compression, double tileColumns, double tileRows, TiffDirectory d, long fileBytes)
    {
        if (!(columns >= 1) || !(rows >= 1)) return "the raster has no size; the file is damaged. Copy or export it again.";
        FindingForm size = $"the raster announces {columns} x {rows} cells";
        if (columns * rows > GridFrame.MaxCells) return $"{size} where at most {GridFrame.MaxCells} are taken; cut or coarsen it.";
        if (d.Number(262, 1) is 2 or 3 or 6 || bands is > 64 or < 1) return "the raster is a picture (colours), not depths; export the depths themselves.";
        if (bits is not (8 or 16 or 32 or 64) || format is not (1 or 2 or 3) || (format == 3 && bits < 32))
            return $"its cells are of {bits} bits, format {format}, which is not read; export it as 32-bit floating point.";
        double bytes = columns * rows * bands * bits / 8;
        if (bytes > (compression == 1 ? fileBytes * 1.01 + 1024 : fileBytes * 2500.0))
            return $"{size}, but the file has only {fileBytes} bytes; it is cut short or damaged. Copy or export it again.";
        if (!(tileColumns is >= 1 and <= 65536) || !(tileRows is >= 1 and <= 1e8) || tileColumns * tileRows * bands * bits / 8 > 600e6)
            return "the raster's tiles have an impossible size; the file is damaged. Copy or export it again.";
        return "";
    }
}
