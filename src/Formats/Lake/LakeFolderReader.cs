using SecondShore.Formats.Files;

namespace SecondShore.Formats.Lake;

/// <summary>Reads a lake's files into a <see cref="LakeFolder"/>. What the files hold never makes it throw.</summary>
public static class LakeFolderReader
{
    /// <summary>Opens and reads a lake folder, a trip file or a single survey file.</summary>
    /// <param name="path">What the user named.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>The lake; one without files, with its problem, when nothing could be opened.</returns>
    public static LakeFolder ReadPath(string path, IProgress<double>? progress = null, CancellationToken cancellation = default) =>
        ReadPath(path, [], progress, cancellation);

    /// <summary>Opens and reads a lake folder, a trip file or a single survey file, with settings said beside it.</summary>
    /// <param name="path">What the user named.</param>
    /// <param name="settings">Keys of lake.json as <c>key=value</c>, such as <c>survey.depth_column=Depth</c>.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancellation">Stops the reading.</param>
    public static LakeFolder ReadPath(string path, IReadOnlyList<string> settings, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ProblemLog log = new();
        ILakeFiles? files = LakeFilesOpener.Open(path, log, cancellation);
        if (files is not null && settings.Count > 0) files = LakeSettings.With(files, settings, log);
        if (files is null) return new LakeFolder { Files = new MemoryFiles(path), Problems = log.ToList() };
        LakeFolder lake = Read(files, progress, cancellation);
        return log.ToList() is { Count: > 0 } earlier ? lake with { Problems = [.. earlier, .. lake.Problems] } : lake;
    }

    /// <summary>Reads a lake's files.</summary>
    /// <param name="files">The files.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancellation">Stops the reading.</param>
    public static LakeFolder Read(ILakeFiles files, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(files);
        return new LakeReading(files, progress, cancellation).Run();
    }
}
