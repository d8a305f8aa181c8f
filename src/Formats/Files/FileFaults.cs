namespace SecondShore.Formats.Files;

/// <summary>Why a file cannot be read, in our own words: those of the system differ by platform and language, and a published app has none.</summary>
internal static class FileFaults
{
    /// <summary>What is wrong, and what to do.</summary>
    /// <param name="e">What the system told.</param>
    public static Finding Of(Exception e) => e is TripRefusedException refused ? refused.Finding : Finding.Of(e switch
    {
        FileNotFoundException or DirectoryNotFoundException => "the file is not there any more; look for it, or copy it anew.",
        UnauthorizedAccessException => "this program may not read the file; allow reading it, or copy it to a folder of your own.",
        PathTooLongException or ArgumentException or NotSupportedException => "this is no name that a file can have here; give another.",
        _ => "the file cannot be read now; look whether its disk or network is there and whether another program holds it.",
    });
}
