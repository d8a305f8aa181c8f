using System.Diagnostics;
using SecondShore.Host.Watch;
using SecondShore.Store;

namespace SecondShore.Host.Api;

/// <summary>Turns faults into answers: a sentence for what the caller can do something about, a number to look up for the rest.</summary>
internal sealed class Faults(RequestDelegate next, Meters meters, StoreWatch watch, Quiet quiet, ILogger<Faults> log)
{
    public async Task InvokeAsync(HttpContext context)
    {
        try
        {
            await next(context).ConfigureAwait(false);
        }
        catch (StorageException e)
        {
            meters.StorageFault(e.Fault);
            if (e.Fault is StorageFault.Damaged) watch.Damaged(e.Message);
            quiet.Write(log, () => log.LogError("Storage: {Fault}: {Message}", e.Fault, e.Message));
            if (e.Fault is StorageFault.Busy) context.Response.Headers.RetryAfter = "1";
            // What the database itself said speaks of files and tables of this machine: that is for the log.
            await Replies.Refuse(context, StatusOf(e.Fault), e.InnerException is null ? e.Message : Words(e.Fault)).ConfigureAwait(false);
        }
        catch (BadHttpRequestException e)
        {
            string why = e.StatusCode == StatusCodes.Status413PayloadTooLarge ? "The body is larger than is taken here. Send less at once." : "The request is not understood: a number, a name or the body is not of the form that docs/how-to/host.md gives for this address.";
            await Replies.Refuse(context, e.StatusCode, why).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // The caller went away; the work was stopped for it.
            if (!context.Response.HasStarted) context.Response.StatusCode = StatusCodes.Status499ClientClosedRequest;
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            string trace = Activity.Current?.TraceId.ToString() ?? context.TraceIdentifier;
            quiet.Write(log, () => log.LogError(e, "Unexpected fault, trace {Trace}", trace));
            await Replies.Refuse(context, StatusCodes.Status500InternalServerError, $"Something went wrong at the host; its log has more under {trace}.").ConfigureAwait(false);
        }
    }

    private static int StatusOf(StorageFault fault) => fault switch
    {
        StorageFault.Full or StorageFault.ReadOnly => StatusCodes.Status507InsufficientStorage,
        StorageFault.Busy => StatusCodes.Status503ServiceUnavailable,
        _ => StatusCodes.Status503ServiceUnavailable,
    };

    private static string Words(StorageFault fault) => fault switch
    {
        StorageFault.Full => "The host's disk has no room left, or refuses to write: nothing of this was kept there. Make room at the host and try again.",
        StorageFault.ReadOnly => "The host may not write to its disk: nothing of this was kept there. Its 'doctor' says what to do.",
        StorageFault.Busy => "The host's store is held by another program. Try again in a moment.",
        _ => "The host's store cannot be used just now: nothing of this was kept there. Its 'doctor' says what is wrong.",
    };
}
