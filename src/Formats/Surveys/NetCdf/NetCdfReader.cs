namespace SecondShore.Formats.Surveys.NetCdf;

/// <summary>Knows NetCDF, HDF5 and BAG files by their first bytes, and says how to bring their depths in.</summary>
/// <remarks>
/// The managed HDF5 library follows addresses inside the file without a bound on time or memory, which a damaged file
/// can abuse; see docs/decisions/0022-survey-formats.md.
/// </remarks>
internal sealed class NetCdfReader : ISurveyReader
{
    public string Format => "NetCDF, HDF5 or BAG";

    public double Sniff(SurveySource source)
    {
        ReadOnlySpan<byte> b = source.Bytes;
        bool known = b.StartsWith<byte>([0x89, (byte)'H', (byte)'D', (byte)'F']) || (b.Length > 4 && b[0] == 'C' && b[1] == 'D' && b[2] == 'F' && b[3] is 1 or 2 or 5);
        return known ? 0.98 : source.Ending is "nc" or "bag" or "h5" ? 0.4 : 0;
    }

    public RawSurvey? Read(SurveySource source, SurveyOptions options, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation)
    {
        log.Error(source.Name, Sniff(source) > 0.9
            ? "the file is NetCDF, HDF5 or BAG, which is not read here; export the layer of depths or elevations as GeoTIFF and use that."
            : "the file is no NetCDF file, whatever its name says; copy or export it again.");
        return null;
    }
}
