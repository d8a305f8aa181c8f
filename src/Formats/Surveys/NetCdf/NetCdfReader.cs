using System.Globalization;
using SecondShore.Engine.Core.Grid;
using SecondShore.Formats.Surveys.Arrays;
using SecondShore.Formats.Surveys.Hdf5;

namespace SecondShore.Formats.Surveys.NetCdf;

/// <summary>Reads the grid of depths, or the soundings, in a NetCDF file, classic or of version 4, and the grid in a BAG file.</summary>
/// <remarks>NetCDF 4 and BAG are HDF5 inside; why its reader is our own: docs/decisions/0022-survey-formats.md.</remarks>
internal sealed class NetCdfReader : ISurveyReader
{
    /// <summary>No depth or height in any unit is as large: what is stands for none.</summary>
    private const double MostM = 90_000;

    public string Format => "NetCDF or BAG";

    public double Sniff(SurveySource source) =>
        ClassicNetCdf.Is(source.Bytes) || HdfFile.HeadOf(source.Bytes) is not null ? 0.98 : source.Ending is "nc" or "bag" or "h5" ? 0.4 : 0;

    public RawSurvey? Read(SurveySource source, SurveyOptions options, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation)
    {
        if (Sniff(source) < 0.9)
        {
            log.Error(source.Name, "the file is no NetCDF file, whatever its name says; copy or export it again.");
            return null;
        }

        try
        {
            bool classic = ClassicNetCdf.Is(source.Bytes);
            List<FiledArray> arrays = classic ? ClassicNetCdf.Arrays(source.Bytes) : HdfFile.Arrays(source.Bytes);
            progress?.Report(0.3);
            if (BagGrid.Is(arrays)) return BagGrid.Read(arrays, cancellation);
            string format = classic ? "NetCDF" : "NetCDF 4";
            return (arrays.Exists(CfGrid.IsGrid) ? null : CfSoundings.Read(arrays, format, cancellation)) ?? CfGrid.Read(arrays, format, options, cancellation);
        }
        catch (ArrayFault fault)
        {
            log.Error(source.Name, fault.Message);
            return null;
        }
    }

    /// <summary>The cells of a grid, scaled as its attributes say; NaN where it holds none.</summary>
    /// <exception cref="ArrayFault">The grid is too large or damaged.</exception>
    public static float[] Cells(FiledArray grid, CancellationToken cancel)
    {
        HoldToSize(grid);
        float[] cells = new float[grid.Count];
        Array.Fill(cells, float.NaN);
        ElementType type = grid.Type;
        double scale = grid.Number("scale_factor") ?? 1, shift = grid.Number("add_offset") ?? 0;
        double fill = grid.Number("_FillValue") ?? double.NaN, missing = grid.Number("missing_value") ?? double.NaN;
        grid.ReadElements((i, element) =>
        {
            double value = type.Number(element);
            if (value != fill && value != missing && Math.Abs((value * scale) + shift) < MostM) cells[i] = (float)((value * scale) + shift);
        }, cancel);
        return cells;
    }

    /// <summary>Refuses a grid with more cells than are taken.</summary>
    /// <exception cref="ArrayFault">It is too large.</exception>
    public static void HoldToSize(FiledArray grid)
    {
        if (grid.Count > GridFrame.MaxCells)
            throw new ArrayFault(string.Create(CultureInfo.InvariantCulture, $"the grid has {string.Join(" x ", grid.Shape)} cells where at most {GridFrame.MaxCells} are taken; cut or coarsen it."));
    }
}
