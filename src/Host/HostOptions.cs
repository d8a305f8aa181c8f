using System.Collections;

namespace SecondShore.Host;

/// <summary>
/// Which settings there are. One that is misspelled must not be passed over: what it was to forbid would then be allowed.
/// </summary>
internal static class HostOptions
{
    /// <summary>Settings of the host, as options (<c>--data</c>) and as variables (<c>SECONDSHORE_DATA</c>).</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        "urls", "data", "postgres", "proxy", "app", "certificate", "certificate-key", "pairing", "requests-per-second", "pairings-per-minute",
        "connections-per-address", "lakes", "lakes-per-device", "lake-megabytes", "device-megabytes", "store-megabytes", "weather", "weather-archive", "log",
    ];

    // The framework's own that docs/how-to/host.md names.
    private static readonly string[] Framework = ["http_ports", "https_ports", "environment", "contentroot"];

    // Variables of the tests, which may run in the host's own process.
    private static readonly string[] Apart = ["KILLS", "NEED_", "POSTGRES_BIN", "LIVE_", "LOAD_", "TEST_", "SHARED", "PUBLISHED", "CHROMIUM", "FRESH", "LONG", "MUTATIONS", "RESULTS", "SEED", "SHEET_"];

    /// <summary>Takes options apart; each is followed by a value, with a blank or <c>=</c> between.</summary>
    /// <param name="args">The options.</param>
    /// <returns>Values by name.</returns>
    /// <exception cref="SettingsException">One is not known, has no value, or is given twice.</exception>
    public static Dictionary<string, string?> Parse(IReadOnlyList<string> args)
    {
        Dictionary<string, string?> values = new(StringComparer.OrdinalIgnoreCase);
        for (int i = 0; i < args.Count; i++)
        {
            if (!args[i].StartsWith("--", StringComparison.Ordinal)) throw new SettingsException($"'{args[i]}' is not understood here; 'help' lists what is.");
            string[] parts = args[i][2..].Split('=', 2);
            if (!IsKnown(parts[0])) throw new SettingsException($"--{parts[0]} is no option of this program{Nearest(parts[0])}; 'help' lists them.");
            string? value = parts.Length == 2 ? parts[1] : i + 1 < args.Count && !args[i + 1].StartsWith("--", StringComparison.Ordinal) ? args[++i] : null;
            if (string.IsNullOrEmpty(value)) throw new SettingsException($"--{parts[0]} needs a value after it; docs/how-to/host.md says which.");
            if (!values.TryAdd(parts[0], value)) throw new SettingsException($"--{parts[0]} is given twice; give it once.");
        }

        return values;
    }

    /// <summary>Settings among variables: <c>SECONDSHORE_LAKE_MEGABYTES</c> is <c>--lake-megabytes</c>.</summary>
    /// <exception cref="SettingsException">One that begins so is no setting.</exception>
    public static Dictionary<string, string?> Variables(IDictionary variables)
    {
        Dictionary<string, string?> values = new(StringComparer.OrdinalIgnoreCase);
        foreach (DictionaryEntry variable in variables)
        {
            string name = (string)variable.Key;
            if (!name.StartsWith("SECONDSHORE_", StringComparison.OrdinalIgnoreCase)) continue;
            string rest = name["SECONDSHORE_".Length..];
            if (Apart.Any(a => rest.StartsWith(a, StringComparison.OrdinalIgnoreCase))) continue;
            string dashed = rest.Replace("__", ":", StringComparison.Ordinal).Replace('_', '-'), key = IsKnown(dashed) ? dashed : rest;
            if (!IsKnown(key)) throw new SettingsException($"The variable {name} is no setting of this program{Nearest(dashed)}; docs/how-to/host.md lists them.");
            values[key] = (string?)variable.Value;
        }

        return values;
    }

    private static bool IsKnown(string name) => Names.Contains(name, StringComparer.OrdinalIgnoreCase) || Framework.Contains(name, StringComparer.OrdinalIgnoreCase)
        || name.StartsWith("Logging:", StringComparison.OrdinalIgnoreCase)
        || name.StartsWith("OTEL_", StringComparison.OrdinalIgnoreCase);

    private static string Nearest(string name)
    {
        string? near = Names.Where(n => n[0] == char.ToLowerInvariant(name.Length > 0 ? name[0] : ' ')).OrderBy(n => Distance(n, name.ToLowerInvariant())).FirstOrDefault();
        return near is not null && Distance(near, name.ToLowerInvariant()) <= 3 ? $" (--{near} is)" : "";
    }

    private static int Distance(string a, string b)
    {
        int[] row = [.. Enumerable.Range(0, b.Length + 1)];
        for (int i = 1; i <= a.Length; i++)
        {
            int corner = row[0]++;
            for (int j = 1; j <= b.Length; j++)
            {
                int changed = corner + (a[i - 1] == b[j - 1] ? 0 : 1);
                (corner, row[j]) = (row[j], Math.Min(changed, Math.Min(row[j], row[j - 1]) + 1));
            }
        }

        return row[b.Length];
    }
}
