using System.Text.Json.Serialization;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;

namespace SecondShore.Desk;

/// <summary>All that crosses between the page and the desk, read and written without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UseStringEnumConverter = true,
    NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals)]
[JsonSerializable(typeof(Question))]
[JsonSerializable(typeof(Reader))]
[JsonSerializable(typeof(Drawing))]
[JsonSerializable(typeof(LakeView))]
[JsonSerializable(typeof(OutlookView))]
[JsonSerializable(typeof(ShoreView))]
[JsonSerializable(typeof(WindView))]
[JsonSerializable(typeof(DayView))]
[JsonSerializable(typeof(HoldView))]
[JsonSerializable(typeof(RigView))]
[JsonSerializable(typeof(TackleView))]
[JsonSerializable(typeof(InspectView))]
[JsonSerializable(typeof(WeatherView))]
[JsonSerializable(typeof(HandedOut))]
[JsonSerializable(typeof(Unpacked))]
[JsonSerializable(typeof(DayMore))]
[JsonSerializable(typeof(IReadOnlyList<RecordRow>))]
[JsonSerializable(typeof(IReadOnlyList<FirstAnswer>))]
public sealed partial class DeskJson : JsonSerializerContext;
