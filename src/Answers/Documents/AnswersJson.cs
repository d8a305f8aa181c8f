using System.Text.Json.Serialization;
using SecondShore.Answers.Wind;

namespace SecondShore.Answers.Documents;

/// <summary>The one source-generated context of the documents: keys in snake case, nulls written, indented.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, WriteIndented = true)]
[JsonSerializable(typeof(OutlookDocument))]
[JsonSerializable(typeof(ShoreDocument))]
[JsonSerializable(typeof(DayDocument))]
[JsonSerializable(typeof(DaysDocument))]
[JsonSerializable(typeof(WindDocument))]
[JsonSerializable(typeof(PointsDocument))]
[JsonSerializable(typeof(Scoring.Chains.WindScore))]
[JsonSerializable(typeof(CheckDocument))]
[JsonSerializable(typeof(Rig.RigDocument))]
[JsonSerializable(typeof(Learn.LearnDocument))]
public sealed partial class AnswersJson : JsonSerializerContext;
