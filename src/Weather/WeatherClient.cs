using System.Net;
using Polly;
using Polly.Retry;
using Polly.Timeout;

namespace SecondShore.Weather;

/// <summary>How patient and how polite the client is.</summary>
/// <param name="Attempts">Tries after the first.</param>
/// <param name="FirstWait">Wait before the second try; each further one doubles, with chance in it.</param>
/// <param name="AttemptTimeout">Longest one try may take, body included: a server that drips ends here.</param>
/// <param name="Spacing">Least time between two requests.</param>
public sealed record WeatherPatience(int Attempts, TimeSpan FirstWait, TimeSpan AttemptTimeout, TimeSpan Spacing)
{
    /// <summary>Where none is given.</summary>
    public static WeatherPatience Default { get; } = new(4, TimeSpan.FromSeconds(2), TimeSpan.FromSeconds(60), TimeSpan.FromSeconds(1));
}

/// <summary>Asks the service: bounded answers, retries with backoff where that helps, no faster than is polite, kept answers first.</summary>
internal sealed class WeatherClient
{
    private static readonly int MaxBytes = 32 << 20;
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(90);

    private readonly HttpClient _http;
    private readonly IWeatherCache _cache;
    private readonly TimeProvider _clock;
    private readonly WeatherPatience _patience;
    private readonly ResiliencePipeline<byte[]> _pipeline;
    private readonly Lock _turn = new();
    private DateTimeOffset _next;

    public WeatherClient(HttpClient http, IWeatherCache cache, TimeProvider clock, WeatherPatience patience)
    {
        (_http, _cache, _clock, _patience) = (http, cache, clock, patience);
        _pipeline = new ResiliencePipelineBuilder<byte[]> { TimeProvider = clock }
            .AddRetry(new RetryStrategyOptions<byte[]>
            {
                ShouldHandle = new PredicateBuilder<byte[]>().Handle<WeatherBusyException>().Handle<HttpRequestException>().Handle<IOException>().Handle<TimeoutRejectedException>(),
                MaxRetryAttempts = patience.Attempts,
                Delay = patience.FirstWait,
                BackoffType = DelayBackoffType.Exponential,
                UseJitter = true,
                MaxDelay = LongestWait,
                DelayGenerator = static arguments => ValueTask.FromResult((arguments.Outcome.Exception as WeatherBusyException)?.Wait),
            })
            .AddTimeout(patience.AttemptTimeout)
            .Build();
    }

    /// <summary>An answer's body.</summary>
    /// <param name="query">The whole address.</param>
    /// <param name="keepFor">How long a kept answer counts.</param>
    /// <param name="cancel">Stops asking.</param>
    /// <exception cref="WeatherException">It does not come; the message says why.</exception>
    public async Task<byte[]> AskAsync(Uri query, TimeSpan keepFor, CancellationToken cancel)
    {
        if (_cache.Find(query.AbsoluteUri, _clock.GetUtcNow() - keepFor) is { } kept) return kept;
        try
        {
            byte[] answer = await _pipeline.ExecuteAsync(async token => await OnceAsync(query, token).ConfigureAwait(false), cancel).ConfigureAwait(false);
            _cache.Keep(query.AbsoluteUri, answer, _clock.GetUtcNow());
            return answer;
        }
        catch (WeatherBusyException e)
        {
            throw new WeatherException($"The weather service at {query.Host} does not answer now: {e.Why} Try again later; nothing was changed.", e);
        }
        catch (TimeoutRejectedException e)
        {
            throw new WeatherException($"The weather service at {query.Host} took longer than {_patience.AttemptTimeout.TotalSeconds:0.#} s each time. Try again later; nothing was changed.", e);
        }
        catch (Exception e) when (e is HttpRequestException or IOException)
        {
            throw new WeatherException($"The weather service at {query.Host} cannot be reached: {Why(e)}. Look at the network, or name another address; nothing was changed.", e);
        }
    }

    private async Task<byte[]> OnceAsync(Uri query, CancellationToken cancel)
    {
        await WaitTurnAsync(cancel).ConfigureAwait(false);
        using HttpRequestMessage request = new(HttpMethod.Get, query);
        using HttpResponseMessage response = await _http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancel).ConfigureAwait(false);
        byte[] body = await BodyAsync(response, cancel).ConfigureAwait(false);
        if (response.IsSuccessStatusCode) return body;
        Finding reason = ReplyReader.ReasonOf(body);
        if (response.StatusCode is HttpStatusCode.TooManyRequests or HttpStatusCode.RequestTimeout || (int)response.StatusCode >= 500)
        {
            // A limit of the day will not pass while we wait.
            if (reason.ToString() is var told && (told.Contains("Daily", StringComparison.OrdinalIgnoreCase) || told.Contains("Monthly", StringComparison.OrdinalIgnoreCase)))
                throw new WeatherException($"The weather service says: {reason} Nothing was changed.");
            throw new WeatherBusyException(Finding.Of($"status {(int)response.StatusCode}, {reason}"), RetryAfter(response));
        }

        throw new WeatherException($"The weather service refuses (status {(int)response.StatusCode}): {reason} Nothing was changed.");
    }

    private async Task WaitTurnAsync(CancellationToken cancel)
    {
        TimeSpan wait;
        lock (_turn)
        {
            DateTimeOffset now = _clock.GetUtcNow(), turn = _next > now ? _next : now;
            _next = turn + _patience.Spacing;
            wait = turn - now;
        }

        if (wait > TimeSpan.Zero) await Task.Delay(wait, _clock, cancel).ConfigureAwait(false);
    }

    private static async Task<byte[]> BodyAsync(HttpResponseMessage response, CancellationToken cancel)
    {
        using Stream stream = await response.Content.ReadAsStreamAsync(cancel).ConfigureAwait(false);
        using MemoryStream copy = new();
        byte[] buffer = new byte[65536];
        int got;
        while ((got = await stream.ReadAsync(buffer, cancel).ConfigureAwait(false)) > 0)
        {
            copy.Write(buffer, 0, got);
            if (copy.Length > MaxBytes) throw new WeatherException("The weather service's answer is far larger than weather is; it is not used.");
        }

        return copy.ToArray();
    }

    private TimeSpan? RetryAfter(HttpResponseMessage response)
    {
        TimeSpan? wait = response.Headers.RetryAfter?.Delta ?? (response.Headers.RetryAfter?.Date is { } date ? date - _clock.GetUtcNow() : null);
        return wait is null ? null : wait > LongestWait ? LongestWait : wait > TimeSpan.Zero ? wait : TimeSpan.Zero;
    }

    // By the kind of fault: the system's own words differ by platform and language, and a published app has none.
    private static Finding Why(Exception e) => Finding.Of((e as HttpRequestException)?.HttpRequestError switch
    {
        HttpRequestError.NameResolutionError => "nobody knows that name",
        HttpRequestError.ConnectionError => "nothing answers there",
        HttpRequestError.SecureConnectionError => "no safe connection comes about",
        HttpRequestError.ResponseEnded => "its answer breaks off",
        _ => "the connection fails",
    });

    private sealed class WeatherBusyException(Finding why, TimeSpan? wait) : Exception(why.ToString())
    {
        public Finding Why { get; } = why;

        public TimeSpan? Wait { get; } = wait;
    }
}
