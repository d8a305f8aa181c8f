namespace SecondShore.Cli;

/// <summary>What the verbs that ask open services share: a client that names the product, where answers are kept, addresses as
/// typed.</summary>
internal static class OpenHttp
{
    /// <summary>A client without cookies, without redirects of its own, that waits as long as it is told to.</summary>
    public static HttpClient Client()
    {
        HttpClient http =
            new(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false }) { Timeout = Timeout.InfiniteTimeSpan };
        http.DefaultRequestHeaders.UserAgent.ParseAdd("second-shore");
        return http;
    }

    /// <summary>Where answers of a kind are kept for this user.</summary>
    public static string CacheFolder(string kind) => Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify),
            "second-shore", kind);

    /// <summary>A web address that an option names; null where it is left out.</summary>
    /// <exception cref="BadUsageException">The text is none.</exception>
    public static Uri? Address(string? text, string option) => text is null ? null
        : Uri.TryCreate(text, UriKind.Absolute, out Uri? address) && address.Scheme is "http" or "https" ? address
        : throw new BadUsageException($"{option} {text} is no web address; write it like https://service.example/v1/search.");
}
