using System.Globalization;
using SecondShore.Open.Asking;
using SecondShore.Open.Outlines;

namespace SecondShore.Open.Surveys;

/// <summary>One fetch of a survey: its questions share a bound on pages, bytes and time.</summary>
/// <param name="client">Who asks.</param>
/// <param name="clock">The present.</param>
internal sealed class SurveyAsking(PoliteClient client, TimeProvider clock)
{
    private const int MostPages = 200, MostPageBytes = 8 << 20, MostFileBytes = 48 << 20;
    private static readonly TimeSpan MostTime = TimeSpan.FromMinutes(10);
    private readonly DateTimeOffset _start = clock.GetUtcNow();
    private int _pages;
    private long _bytes;

    /// <summary>How to go on without the service.</summary>
    public static Finding Otherwise => Finding.Of("Or download the survey with a browser and put the file into the lake's folder.");

    /// <summary>Asks for a page.</summary>
    public Task<Answer> PageAsync(Uri address, Finding sent, CancellationToken cancel) => AskAsync(address, sent, MostPageBytes, cancel);

    /// <summary>Asks for a whole file or raster.</summary>
    public Task<Answer> FileAsync(Uri address, Finding sent, CancellationToken cancel) => AskAsync(address, sent, MostFileBytes, cancel);

    /// <summary>A box as it is sent: rounded outward to two decimals, so that it tells the lake and not a place on it.</summary>
    public static GeoBox Rough(GeoBox box) =>
        new(Math.Floor((box.SouthDeg - 0.001) * 100) / 100, Math.Floor((box.WestDeg - 0.001) * 100) / 100,
        Math.Ceiling((box.NorthDeg + 0.001) * 100) / 100, Math.Ceiling((box.EastDeg + 0.001) * 100) / 100);

    /// <summary>A box in words, as it is told before it is sent.</summary>
    public static Finding Said(GeoBox box, string layer)
    {
        (double south, double west, double north, double east) = box;
        return Finding.Of($"the lake's box {south:0.00}, {west:0.00} to {north:0.00}, {east:0.00} (two decimals), for '{layer}'");
    }

    /// <summary>A number as it stands in an address.</summary>
    public static string Text(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>An address with further values in its query; values of the same name that are there already give way.</summary>
    public static Uri With(Uri address, params ReadOnlySpan<(string Key, string Value)> values)
    {
        List<string> parts = [];
        HashSet<string> set = new(StringComparer.OrdinalIgnoreCase);
        foreach ((string key, _) in values) set.Add(key);
        foreach (string part in address.Query.TrimStart('?').Split('&', StringSplitOptions.RemoveEmptyEntries))
            if (!set.Contains(part.Split('=')[0])) parts.Add(part);
        foreach ((string key, string value) in values) parts.Add($"{key}={Uri.EscapeDataString(value)}");
        return new UriBuilder(address) { Query = string.Join('&', parts), Fragment = "" }.Uri;
    }

    /// <summary>An address with its path replaced and its query kept.</summary>
    public static Uri At(Uri address, string path) => new UriBuilder(address) { Path = path, Fragment = "" }.Uri;

    /// <summary>Refuses an answer of another form.</summary>
    public static OpenException Odd(Uri address) =>
        new($"The answer of {address.Host} breaks off or is not of the documented form. {Otherwise}");

    /// <summary>Tells a service's own refusal.</summary>
    public static OpenException Said(Uri address, string reason) => new($"{address.Host} says: {reason}. {Otherwise}");

    private async Task<Answer> AskAsync(Uri address, Finding sent, int mostBytes, CancellationToken cancel)
    {
        if (++_pages > MostPages) throw new OpenException(
            $"{address.Host} has more than {MostPages} pages for this box; nothing is kept. {Otherwise}");
        if (clock.GetUtcNow() - _start > MostTime)
            throw new OpenException(
                $"{address.Host} needs more than {MostTime.TotalMinutes:0} minutes for this box; nothing is kept. {Otherwise}");
        Ask ask = new(address, sent) { MostBytes = mostBytes, Otherwise = Otherwise, KeepFor = TimeSpan.FromHours(6) };
        Answer answer = await client.AskAsync(ask, cancel).ConfigureAwait(false);
        _bytes += answer.Body.Length;
        if (_bytes > MostFileBytes)
            throw new OpenException(
                $"The survey of {address.Host} is larger than {MostFileBytes >> 20} MB for this box; nothing is kept. {Otherwise}");
        return answer;
    }
}
