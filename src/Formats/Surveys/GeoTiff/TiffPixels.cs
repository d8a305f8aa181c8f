using BitMiracle.LibTiff.Classic;

namespace SecondShore.Formats.Surveys.GeoTiff;

/// <summary>Decodes the cells of a checked TIFF, strip by strip or tile by tile.</summary>
internal static class TiffPixels
{
    static TiffPixels() => Tiff.SetErrorHandler(Quiet.Instance);

    /// <summary>All cells of the first band, row-major from the top, NaN where there is no data; null with the fault.</summary>
    public static float[]? Read(byte[] bytes, TiffShape shape, double noData, IProgress<double>? progress, CancellationToken cancellation, out FindingForm fault)
    {
        fault = "the raster's cells cannot be decoded; the file is cut short or damaged. Copy or export it again.";
        try
        {
            using MemoryStream memory = new(bytes, writable: false);
            // "c": the library would cut one long strip into many of its own, which are not those of the file.
            using Tiff? tiff = Tiff.ClientOpen("survey", "rc", memory, new TiffStream());
            if (tiff is null) return null;
            if (!tiff.IsCodecConfigured((Compression)shape.Compression))
            {
                fault = $"the raster is compressed in a way not read here (code {shape.Compression}); export it with LZW, Deflate or no compression.";
                return null;
            }

            float[] values = new float[shape.Columns * shape.Rows];
            Array.Fill(values, float.NaN);
            return ReadBlocks(tiff, shape, values, noData, progress, cancellation) ? values : null;
        }
        catch (OperationCanceledException)
        {
            throw;
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // The decoder tells a damaged block by many exceptions (index, null, arithmetic); all mean the same here.
            return null;
        }
    }

    private static bool ReadBlocks(Tiff tiff, TiffShape shape, float[] values, double noData, IProgress<double>? progress, CancellationToken cancellation)
    {
        int across = shape.Tiled ? Ceiling(shape.Columns, shape.TileColumns) : 1, down = Ceiling(shape.Rows, shape.TileRows);
        int blockBytes = shape.Tiled ? tiff.TileSize() : tiff.StripSize();
        if (blockBytes <= 0 || blockBytes > 600_000_000) return false;
        byte[] buffer = new byte[blockBytes];
        int stride = shape.Planar ? 1 : shape.Bands;
        for (int by = 0; by < down; by++)
        {
            cancellation.ThrowIfCancellationRequested();
            progress?.Report((double)by / down);
            for (int bx = 0; bx < across; bx++)
            {
                int block = (by * across) + bx;
                int rows = Math.Min(shape.TileRows, shape.Rows - (by * shape.TileRows));
                int got = shape.Tiled ? tiff.ReadEncodedTile(block, buffer, 0, blockBytes) : tiff.ReadEncodedStrip(block, buffer, 0, blockBytes);
                int width = shape.Tiled ? shape.TileColumns : shape.Columns;
                if (got < 0 || got < (long)(shape.Tiled ? shape.TileRows : rows) * width * stride * shape.Bits / 8) return false;
                Copy(buffer, shape, values, bx * width, by * shape.TileRows, width, rows, stride, noData);
            }
        }

        return true;
    }

    // One block of width by rows cells whose first is x0, y0 of the picture; stride: bytes of a cell.
    private static void Copy(byte[] buffer, TiffShape shape, float[] values, int x0, int y0, int width, int rows, int stride, double noData)
    {
        int columns = Math.Min(width, shape.Columns - x0);
        float noDataF = (float)noData;
        for (int r = 0; r < rows; r++)
        {
            for (int c = 0; c < columns; c++)
            {
                double value = Sample(buffer, ((r * width) + c) * stride, shape.Bits, shape.SampleFormat);
                bool missing = !(Math.Abs(value) < 1e7) || value == noData || (float)value == noDataF;
                values[((y0 + r) * shape.Columns) + x0 + c] = missing ? float.NaN : (float)value;
            }
        }
    }

    private static double Sample(byte[] b, int index, int bits, int format) => (bits, format) switch
    {
        (8, 1) => b[index],
        (8, _) => (sbyte)b[index],
        (16, 1) => BitConverter.ToUInt16(b, index * 2),
        (16, _) => BitConverter.ToInt16(b, index * 2),
        (32, 1) => BitConverter.ToUInt32(b, index * 4),
        (32, 2) => BitConverter.ToInt32(b, index * 4),
        (32, _) => BitConverter.ToSingle(b, index * 4),
        (64, 1) => BitConverter.ToUInt64(b, index * 8),
        (64, 2) => BitConverter.ToInt64(b, index * 8),
        _ => BitConverter.ToDouble(b, index * 8),
    };

    private static int Ceiling(int a, int b) => (int)(((long)a + b - 1) / b);

    // The library prints what it meets; the user gets our sentence instead.
    private sealed class Quiet : TiffErrorHandler
    {
        public static Quiet Instance { get; } = new();

        public override void WarningHandler(Tiff tif, string method, string format, params object[] args)
        {
        }

        public override void WarningHandlerExt(Tiff tif, object clientData, string method, string format, params object[] args)
        {
        }

        public override void ErrorHandler(Tiff tif, string method, string format, params object[] args)
        {
        }

        public override void ErrorHandlerExt(Tiff tif, object clientData, string method, string format, params object[] args)
        {
        }
    }
}
