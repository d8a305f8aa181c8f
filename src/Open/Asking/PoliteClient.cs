using System.Net;
using System.Text;
using Polly;
using Polly.Retry;
using Polly.Timeout;

namespace SecondShore.Open.Asking;

/// <summary>
/// Asks open services: one request at a time, no faster than is polite, kept answers first, bounded in bytes and time, retried with
/// backoff where that helps. Says what it sends to whom before it does.
/// </summary>
/// <remarks>
/// The client handed in names the product and does not follow redirects by itself (see <see cref="Redirects"/>); in a browser, the page's
/// own client does both as the browser does.
/// </remarks>
public sealed class PoliteClient : IDisposable
{
    private readonly HttpClient _http;
    private readonly IAnswerCache _cache;
    private readonly TimeProvider _clock;
    private readonly AskPatience _patience;
    private readonly Action<Finding> _tell;
    private readonly ResiliencePipeline<Answer> _pipeline;
    private readonly SemaphoreSlim _turn = new(1, 1);
    private DateTimeOffset _next;

    /// <summary>Makes a client.</summary>
    /// <param name="http">The client to ask with; its own time limit should be longer than the patience's.</param>
    /// <param name="cache">Where answers are kept.</param>
    /// <param name="clock">The present.</param>
    /// <param name="tell">Told what is sent to whom, before it is.</param>
    /// <param name="patience">How patient and polite.</param>
    public PoliteClient(HttpClient http, IAnswerCache cache, TimeProvider clock, Action<Finding> tell, AskPatience? patience = null)
    {
        (_http, _cache, _clock, _tell, _patience) = (http, cache, clock, tell, patience ?? AskPatience.Default);
        ResiliencePipelineBuilder<Answer> builder = new() { TimeProvider = clock };
        if (_patience.Attempts > 0)
        {
            builder.AddRetry(new RetryStrategyOptions<Answer>
            {
                ShouldHandle = new PredicateBuilder<Answer>().Handle<BusyException>().Handle<HttpRequestException>()
                    .Handle<IOException>().Handle<TimeoutRejectedException>(),
                MaxRetryAttempts = _patience.Attempts,
                Delay = _patience.FirstWait,
                BackoffType = DelayBackoffType.Exponential,
                UseJitter = true,
                MaxDelay = _patience.LongestWait,
                DelayGenerator = static arguments => ValueTask.FromResult((arguments.Outcome.Exception as BusyException)?.Wait),
            });
        }

        _pipeline = builder.AddTimeout(_patience.AttemptTimeout).Build();
    }

    /// <summary>Asks.</summary>
    /// <param name="ask">The question.</param>
    /// <param name="cancel">Stops asking.</param>
    /// <exception cref="OpenException">No answer comes; the finding says why and how to go on.</exception>
    public async Task<Answer> AskAsync(Ask ask, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(ask);
        if (_cache.Find(ask.Key, _clock.GetUtcNow() - ask.KeepFor) is { } kept) return new Answer(kept, "", ask.Address);
        await _turn.WaitAsync(cancel).ConfigureAwait(false);
        try
        {
            _tell(Finding.Of($"To {ask.Address.Host} goes: {ask.Sent}."));
            Answer answer = await _pipeline.ExecuteAsync(async token => await OnceAsync(ask, token).ConfigureAwait(false), cancel)
                .ConfigureAwait(false);
            _cache.Keep(ask.Key, answer.Body, _clock.GetUtcNow());
            return answer;
        }
        catch (BusyException e)
        {
            throw new OpenException($"{ask.Address.Host} has no time now (status {e.Status}). {ask.Otherwise}", e);
        }
        catch (TimeoutRejectedException e)
        {
            throw new OpenException(
                $"{ask.Address.Host} took longer than {_patience.AttemptTimeout.TotalSeconds:0.#} s each time. {ask.Otherwise}", e);
        }
        catch (Exception e) when (e is HttpRequestException or IOException)
        {
            throw new OpenException($"{ask.Address.Host} cannot be reached: {Why(e)}. {ask.Otherwise}", e);
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>Lets go of its own; the client handed in stays.</summary>
    public void Dispose() => _turn.Dispose();

    private async Task<Answer> OnceAsync(Ask ask, CancellationToken cancel)
    {
        TimeSpan wait = _next - _clock.GetUtcNow();
        if (wait > TimeSpan.Zero) await Task.Delay(wait, _clock, cancel).ConfigureAwait(false);
        _next = _clock.GetUtcNow() + _patience.Spacing;
        Uri at = ask.Address;
        for (int hop = 0; ; hop++)
        {
            using HttpRequestMessage request = new(ask.Form is null ? HttpMethod.Get : HttpMethod.Post, at);
            if (ask.Form is not null) request.Content = new StringContent(ask.Form, Encoding.UTF8, "application/x-www-form-urlencoded");
            using HttpResponseMessage response =
                await _http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancel).ConfigureAwait(false);
            if (Redirects.Next(response, at) is { } next)
            {
                at = Redirects.Checked(ask, at, next, hop);
                continue;
            }

            Judge(ask, response);
            string type = response.Content.Headers.ContentType?.MediaType?.ToLowerInvariant() ?? "";
            return new Answer(await BodyAsync(ask, response, cancel).ConfigureAwait(false), type, at);
        }
    }

    private void Judge(Ask ask, HttpResponseMessage response)
    {
        int status = (int)response.StatusCode;
        if (response.IsSuccessStatusCode) return;
        if (response.StatusCode is not (HttpStatusCode.TooManyRequests or HttpStatusCode.RequestTimeout) && status < 500)
            throw new OpenException($"{ask.Address.Host} refuses the question (status {status}). {ask.Otherwise}");
        TimeSpan? wait = response.Headers.RetryAfter?.Delta
            ?? (response.Headers.RetryAfter?.Date is { } date ? date - _clock.GetUtcNow() : null);
        if (wait > _patience.LongestWait)
            throw new OpenException(
                $"{ask.Address.Host} asks to be left alone for {Math.Ceiling(wait.Value.TotalMinutes):0} minutes. {ask.Otherwise}");
        throw new BusyException(status, wait is null ? null : wait > TimeSpan.Zero ? wait : TimeSpan.Zero);
    }

    private static async Task<byte[]> BodyAsync(Ask ask, HttpResponseMessage response, CancellationToken cancel)
    {
        using Stream stream = await response.Content.ReadAsStreamAsync(cancel).ConfigureAwait(false);
        using MemoryStream copy = new();
        byte[] buffer = new byte[65536];
        int got;
        while ((got = await stream.ReadAsync(buffer, cancel).ConfigureAwait(false)) > 0)
        {
            if (copy.Length + got > ask.MostBytes)
                throw new OpenException(
                    $"The answer of {ask.Address.Host} is larger than {ask.MostBytes / 1048576.0:0.#} MB and is not used. {ask.Otherwise}");
            copy.Write(buffer, 0, got);
        }

        return copy.ToArray();
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

    private sealed class BusyException(int status, TimeSpan? wait) : Exception
    {
        public int Status { get; } = status;

        public TimeSpan? Wait { get; } = wait;
    }
}
