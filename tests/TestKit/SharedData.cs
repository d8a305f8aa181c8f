namespace SecondShore.TestKit;

/// <summary>Finds the repository and the measured data that may lie beside it; neither the product nor its tests need the latter.</summary>
public static class SharedData
{
    /// <summary>What a test says that needs the whole of the measured data.</summary>
    public const string Missing = "The measured lakes and surveys are not here: put them into ../shared beside the repository, or name their folder in SECONDSHORE_SHARED, to run this test.";

    /// <summary>The repository's root: the folder that holds the solution file.</summary>
    public static string RepositoryRoot { get; } = FindRoot();

    /// <summary>The folder of measured lakes, surveys and check values beside the repository, or null where it is absent.</summary>
    public static string? Folder
    {
        get
        {
            string beside = Path.GetFullPath(Path.Combine(RepositoryRoot, "..", "shared"));
            string given = Environment.GetEnvironmentVariable("SECONDSHORE_SHARED") ?? beside;
            return Directory.Exists(given) ? given : null;
        }
    }

    /// <summary>A path under <see cref="Folder"/> that exists, or null.</summary>
    public static string? Find(params string[] parts)
    {
        if (Folder is null) return null;
        string path = Path.Combine([Folder, .. parts]);
        return Path.Exists(path) ? path : null;
    }

    /// <summary>A small measured copy in tests/data; its README says where it is from.</summary>
    public static string Copy(params string[] parts) => Path.Combine([RepositoryRoot, "tests", "data", .. parts]);

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "SecondShore.slnx"))) return folder.FullName;
        throw new DirectoryNotFoundException("No folder above the tests holds SecondShore.slnx.");
    }
}
