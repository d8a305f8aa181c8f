using System.Globalization;

namespace SecondShore.Host.Api;

/// <summary>
/// Lets in only so many at once of the calls that hold memory or the disk for long. The others are told when to come back; those of
/// short ones wait a moment first.
/// </summary>
internal sealed class Turns : IDisposable
{
    /// <summary>Trip files on their way in or out.</summary>
    public static readonly int TripsAtOnce = 2;

    private readonly SemaphoreSlim _trips = new(TripsAtOnce), _pushes = new(32), _weather = new(2);

    /// <summary>A filter for trip files.</summary>
    public IEndpointFilter Trips => new Turn(_trips, TimeSpan.Zero, 10);

    /// <summary>A filter for messages of records.</summary>
    public IEndpointFilter Pushes => new Turn(_pushes, TimeSpan.FromSeconds(5), 2);

    /// <summary>A filter for fetching weather.</summary>
    public IEndpointFilter Weather => new Turn(_weather, TimeSpan.FromSeconds(2), 10);

    public void Dispose()
    {
        _trips.Dispose();
        _pushes.Dispose();
        _weather.Dispose();
    }

    private sealed class Turn(SemaphoreSlim places, TimeSpan patience, int comeBackS) : IEndpointFilter
    {
        public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
        {
            HttpContext http = context.HttpContext;
            if (!await places.WaitAsync(patience, http.RequestAborted).ConfigureAwait(false))
            {
                http.Response.Headers.RetryAfter = comeBackS.ToString(CultureInfo.InvariantCulture);
                return Replies.No(StatusCodes.Status503ServiceUnavailable, string.Create(CultureInfo.InvariantCulture, $"The host is busy with as many such calls as it takes at once. Try again in {comeBackS} s."));
            }

            // Given back only when the whole answer is on its way: a download is written after the filters.
            http.Response.RegisterForDispose(new Place(places));
            return await next(context).ConfigureAwait(false);
        }
    }

    private sealed class Place(SemaphoreSlim places) : IDisposable
    {
        private int _given;

        public void Dispose()
        {
            if (Interlocked.Exchange(ref _given, 1) == 0) places.Release();
        }
    }
}
