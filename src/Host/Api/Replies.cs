using SecondShore.Records;

namespace SecondShore.Host.Api;

/// <summary>Refusals, each one sentence of what to do.</summary>
internal static class Replies
{
    /// <summary>A refusal as a result.</summary>
    public static IResult No(int status, string why) => TypedResults.Json(new HostError(why), RecordsJson.Default.HostError, statusCode: status);

    /// <summary>A refusal written at once.</summary>
    public static Task Refuse(HttpContext context, int status, string why)
    {
        if (context.Response.HasStarted) return Task.CompletedTask;
        context.Response.StatusCode = status;
        return context.Response.WriteAsJsonAsync(new HostError(why), RecordsJson.Default.HostError, cancellationToken: context.RequestAborted);
    }
}
