using System.Text.Json;
using SecondShore.Host.Security;
using SecondShore.Host.Watch;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Api;

/// <summary>Push and pull of a lake's records.</summary>
internal static class RecordsApi
{
    public static void MapRecords(this RouteGroupBuilder api, Turns turns)
    {
        RouteGroupBuilder lake = api.MapGroup("/lakes/{lake}/records").RequireAuthorization();
        lake.MapPost("", PushAsync).AddEndpointFilter(new LakeRight(write: true)).AddEndpointFilter(turns.Pushes);
        lake.MapGet("", PullAsync).AddEndpointFilter(new LakeRight(write: false));
    }

    private static async Task<IResult> PushAsync(string lake, HttpContext context, RecordStore store, Meters meters)
    {
        PushRequest? request;
        try
        {
            request = await context.Request.ReadFromJsonAsync(RecordsJson.Default.PushRequest, context.RequestAborted).ConfigureAwait(false);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return Replies.No(StatusCodes.Status400BadRequest, "The body is no JSON of the form {\"records\":[{\"id\",\"kind\",\"at\",\"replaces\",\"removed\",\"body\"}]}; send it as application/json.");
        }

        if (request?.Records is not { Count: > 0 } records) return Replies.No(StatusCodes.Status400BadRequest, "Send at least one record.");
        if (records.Count > RecordRules.MaxRecordsPerMessage)
            return Replies.No(StatusCodes.Status413PayloadTooLarge, $"At most {RecordRules.MaxRecordsPerMessage} records are taken at once. Send them in parts.");
        PushAnswer answer = await store.PushAsync(lake, context.Writer(), records, context.RequestAborted).ConfigureAwait(false);
        meters.Pushed(answer);
        return TypedResults.Json(answer, RecordsJson.Default.PushAnswer);
    }

    private static async Task<IResult> PullAsync(string lake, string? epoch, long? after, int? limit, HttpContext context, RecordStore store, Meters meters)
    {
        PullAnswer page = await store.PullAsync(lake, epoch ?? "", after ?? 0, limit ?? RecordRules.MaxRecordsPerMessage, context.RequestAborted).ConfigureAwait(false);
        meters.Pulled(page.Records.Count);
        return TypedResults.Json(page, RecordsJson.Default.PullAnswer);
    }
}
