using Microsoft.AspNetCore.WebUtilities;
using SecondShore.Records;

namespace SecondShore.Host.Api;

/// <summary>Refusals, each one sentence of what to do, in the form of RFC 9457.</summary>
internal static class Replies
{
    private static readonly string Form = "application/problem+json";

    /// <summary>A refusal as a result.</summary>
    public static IResult No(int status, string why) => TypedResults.Json(Problem(status, why), RecordsJson.Default.HostProblem, Form, status);

    /// <summary>A refusal written at once.</summary>
    public static Task Refuse(HttpContext context, int status, string why)
    {
        if (context.Response.HasStarted) return Task.CompletedTask;
        context.Response.StatusCode = status;
        return context.Response.WriteAsJsonAsync(Problem(status, why), RecordsJson.Default.HostProblem, Form, context.RequestAborted);
    }

    private static HostProblem Problem(int status, string why) => new(status, ReasonPhrases.GetReasonPhrase(status), why);
}
