using SecondShore.Formats.Surveys.Arrays;
using SecondShore.Formats.Surveys.Hdf5;

namespace SecondShore.Formats.Surveys.NetCdf;

/// <summary>Reads the grid of depths, or the soundings, in a NetCDF file, classic or of version 4, and the grid in a BAG file.</summary>
/// <remarks>NetCDF 4 and BAG are HDF5 inside; why its reader is our own: docs/decisions/0022-survey-formats.md.</remarks>
internal sealed class NetCdfReader : ISurveyReader
{
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
            log.Error(source.Name, fault.Finding);
            return null;
        }
    }
}
