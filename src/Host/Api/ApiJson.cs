using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using SecondShore.Records;
using SecondShore.Store;

namespace SecondShore.Host.Api;

/// <summary>JSON of the interface, source-generated, in bounded depth.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(IReadOnlyList<DeviceRow>))]
[JsonSerializable(typeof(IReadOnlyList<AuditRow>))]
[JsonSerializable(typeof(StoredFile))]
[JsonSerializable(typeof(WeatherAnswer))]
internal sealed partial class ApiJson : JsonSerializerContext
{
    public static void Apply(JsonSerializerOptions options)
    {
        options.MaxDepth = 16;
        // Quotes inside a body cost two bytes and not six; nothing of this is ever put into a page.
        options.Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;
        options.TypeInfoResolverChain.Insert(0, RecordsJson.Default);
        options.TypeInfoResolverChain.Insert(1, Default);
    }
}
