using System.Text.Json.Serialization;

namespace SecondShore.Desk.Views;

/// <summary>What the chart takes in of an answer. It goes straight to the chart; the page's own runtime never sees it.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "draws")]
[JsonDerivedType(typeof(WaterDrawing), "water")]
[JsonDerivedType(typeof(BeltDrawing), "belt")]
[JsonDerivedType(typeof(WindDrawing), "wind")]
[JsonDerivedType(typeof(RouteDrawing), "route")]
public abstract record Drawing;

/// <summary>The water of a lake that was opened; the field of depths travels beside it.</summary>
/// <param name="Frame">The grid's frame in the lake's plane; null without a surveyed bottom.</param>
/// <param name="MaxDepthM">Greatest depth, m.</param>
/// <param name="Marks">Names, ramps, cover.</param>
public sealed record WaterDrawing(ChartFrame? Frame, double MaxDepthM, IReadOnlyList<ChartMark> Marks) : Drawing;

/// <summary>The second shore; its line travels beside it.</summary>
/// <param name="Belt">Depths, m, of the 10th, 20th, 35th, 50th, 65th, 80th and 90th percentile; null without a thermocline.</param>
/// <param name="Spots">Spots; null keeps those drawn.</param>
/// <param name="Passes">Passes; null keeps those drawn.</param>
/// <param name="WhatIf">Whether a depth, level or day is only being tried.</param>
public sealed record BeltDrawing(double[]? Belt, IReadOnlyList<SpotMark>? Spots, IReadOnlyList<PassMark>? Passes, bool WhatIf) : Drawing;

/// <summary>The computing grid of the wind on the chart; the arrays beside it hold for every hour a value for each water cell.</summary>
/// <param name="Frame">The grid's frame in the lake's plane.</param>
/// <param name="Hours">Hours.</param>
/// <param name="Belt">Depths at rest, m, of the 10th, 20th, 35th, 50th, 65th, 80th and 90th percentile; null without layers.</param>
/// <param name="Places">Where depths are written.</param>
/// <param name="FromDeg">Where the wind comes from, by hour.</param>
/// <param name="WindMps">Wind, m s-1, by hour.</param>
public sealed record WindDrawing(ChartFrame Frame, int Hours, double[]? Belt, IReadOnlyList<SpotMark> Places, double[] FromDeg, double[] WindMps)
    : Drawing;

/// <summary>The way and the passes of a planned day: x, y pairs in the lake's plane.</summary>
/// <param name="Legs">Runs.</param>
/// <param name="Passes">Passes of the stops.</param>
/// <param name="Stops">The stops.</param>
/// <param name="Next">Letter of the stop to act on.</param>
public sealed record RouteDrawing(
    IReadOnlyList<IReadOnlyList<double>> Legs, IReadOnlyList<PassMark> Passes, IReadOnlyList<SpotMark> Stops, string Next) : Drawing;

/// <summary>Frame of a grid in the lake's plane.</summary>
public sealed record ChartFrame(double WestM, double SouthM, double CellM, int Nx, int Ny);

/// <summary>A named place on the chart; kind is a symbol's name, <c>water</c> or <c>land</c>.</summary>
public sealed record ChartMark(string Kind, string Name,
    [property: JsonPropertyName("xM")] double XM, [property: JsonPropertyName("yM")] double YM);

/// <summary>A spot as the chart marks it.</summary>
public sealed record SpotMark(string Letter, string Name,
    [property: JsonPropertyName("xM")] double XM, [property: JsonPropertyName("yM")] double YM, double DepthM);

/// <summary>A pass: x, y pairs in the lake's plane.</summary>
public sealed record PassMark(string Letter, IReadOnlyList<double> Points);
