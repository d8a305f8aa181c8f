using Xunit;

namespace SecondShore.TestKit;

/// <summary>Programs that some tests need and a machine may lack: where they are looked for, and what a test says without them.</summary>
/// <remarks>
/// A test that asks with <see cref="Path"/> skips where the program is missing; where the variable <see cref="MustVariable"/> is set, as
/// eng/check.sh sets it once it has installed the programs, it fails. The variable <see cref="PlaceVariable"/> names the program itself;
/// naming a file that does not exist hides it.
/// </remarks>
public sealed class Needed
{
    private readonly Func<string?> _find;

    private Needed(string what, string package, string placeVariable, string mustVariable, Func<string?> find)
    {
        (PlaceVariable, MustVariable, _find) = (placeVariable, mustVariable, find);
        Missing = $"{what} is not on this machine: install the package '{package}', or set {placeVariable} to where it is, to run this test.";
    }

    /// <summary>A browser to drive: the program.</summary>
    public static Needed Chromium { get; } = new("Chromium", "chromium", "SECONDSHORE_CHROMIUM", "SECONDSHORE_NEED_BROWSER",
        () => Programs.OnPath("chromium", "chromium-browser", "google-chrome"));

    /// <summary>A database server: the folder of its programs.</summary>
    public static Needed Postgres { get; } = new("PostgreSQL's server (initdb, pg_ctl)", "postgresql", "SECONDSHORE_POSTGRES_BIN", "SECONDSHORE_NEED_POSTGRES", PostgresFolder);

    /// <summary>Variable that says where it is.</summary>
    public string PlaceVariable { get; }

    /// <summary>Variable that turns a skip into a failure.</summary>
    public string MustVariable { get; }

    /// <summary>What a test says without it.</summary>
    public string Missing { get; }

    /// <summary>Where it is; null where it is missing.</summary>
    public string? Find()
    {
        if (Environment.GetEnvironmentVariable(PlaceVariable) is { Length: > 0 } given) return System.IO.Path.Exists(given) ? given : null;
        return _find();
    }

    /// <summary>Where it is; the test skips, or fails where it must run, without it.</summary>
    public string Path()
    {
        if (Find() is { } place) return place;
        throw Without(Missing);
    }

    /// <summary>Ends a test that cannot run: it skips, or fails where it must run.</summary>
    /// <param name="why">One sentence: what is missing, what to do.</param>
    public Exception Without(string why)
    {
        if (Environment.GetEnvironmentVariable(MustVariable) is { Length: > 0 }) Assert.Fail(why);
        Assert.Skip(why);
        return new InvalidOperationException(why);
    }

    private static string? PostgresFolder()
    {
        const string Debian = "/usr/lib/postgresql";
        string? newest = !Directory.Exists(Debian) ? null : Directory.GetDirectories(Debian).Select(d => System.IO.Path.Combine(d, "bin"))
            .Where(d => File.Exists(System.IO.Path.Combine(d, "initdb")) && File.Exists(System.IO.Path.Combine(d, "pg_ctl")))
            .OrderByDescending(d => d, StringComparer.Ordinal).FirstOrDefault();
        return newest ?? System.IO.Path.GetDirectoryName(Programs.OnPath("initdb"));
    }
}
