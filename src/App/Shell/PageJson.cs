using System.Text.Json.Serialization;
using SecondShore.App.Store;
using SecondShore.App.Words;

namespace SecondShore.App.Shell;

/// <summary>What crosses between the page and the browser's side besides questions and answers, read and written without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UseStringEnumConverter = true,
    NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals)]
[JsonSerializable(typeof(LocaleInfo))]
[JsonSerializable(typeof(IReadOnlyList<LakeRow>))]
[JsonSerializable(typeof(StorageUse))]
[JsonSerializable(typeof(ChartOptions))]
[JsonSerializable(typeof(ProfileChart))]
[JsonSerializable(typeof(SeasonChart))]
[JsonSerializable(typeof(WindChart))]
[JsonSerializable(typeof(LineChart))]
[JsonSerializable(typeof(HoursChart))]
public sealed partial class PageJson : JsonSerializerContext;
