using System.Text.Json;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Basin.Shape;

/// <summary>Numbers of one kind of basin, learned over measured lakes. Immutable. What each does stands in docs/science/shape.md.</summary>
public sealed record BasinNumbers
{
    /// <summary>Power of the distance from the shore, as a share of the half width there.</summary>
    public double CrossPower { get; init; } = 1;

    /// <summary>Power of the half width, as a share of the lake's largest.</summary>
    public double WidthPower { get; init; } = 1;

    /// <summary>Power of the sag of an evenly loaded sheet.</summary>
    public double SheetPower { get; init; } = 0.7;

    /// <summary>Share of the sheet in the shape, 0 to 1.</summary>
    public double SheetShare { get; init; }

    /// <summary>Power of the stream's depth along the valley; 0 for a natural basin.</summary>
    public double FallPower { get; init; }

    /// <summary>How many half widths of the water it joins a side valley must be long.</summary>
    public double BranchFactor { get; init; } = 1.5;

    /// <summary>Depth of the likeliest bottom where it is deepest, as a share of the greatest depth,
    /// before the last hollow is drawn.</summary>
    public double BroadShare { get; init; } = 0.85;

    /// <summary>Spread of the logarithm of a lake's own bend of the shape.</summary>
    public double BendSd { get; init; } = 0.3;

    /// <summary>Local error at the shore, as a share of the greatest depth.</summary>
    public double ShoreSd { get; init; } = 0.05;

    /// <summary>Local error added where the guess is deep, as a share of the greatest depth.</summary>
    public double DeepSd { get; init; } = 0.15;

    /// <summary>Distance over which local errors lose each other, in radii of the lake's largest circle.</summary>
    public double RangeFactor { get; init; } = 1;

    /// <summary>Share of the local error's variance that even near soundings do not share.</summary>
    public double RoughShare { get; init; } = 0.05;

    /// <summary>Logarithm of the greatest depth (m) of a lake of 1 km2.</summary>
    public double DeepestLogValue { get; init; } = 2.5;

    /// <summary>Power of the area in the greatest depth.</summary>
    public double DeepestAreaPower { get; init; } = 0.2;

    /// <summary>Spread of the logarithm of the greatest depth of lakes of one area.</summary>
    public double DeepestLogSd { get; init; } = 0.6;

    /// <summary>Factor on that spread where it becomes an error by cell: the errors of shape grow with the depth too,
    /// and hold part of it.</summary>
    public double UnknownFactor { get; init; } = 0.6;

    /// <summary>Every number with its name in the file, in the file's order.</summary>
    public static IReadOnlyList<BasinNumber> All { get; } =
    [
        new("cross_power", n => n.CrossPower, (n, v) => n with { CrossPower = v }),
        new("width_power", n => n.WidthPower, (n, v) => n with { WidthPower = v }),
        new("sheet_power", n => n.SheetPower, (n, v) => n with { SheetPower = v }),
        new("sheet_share", n => n.SheetShare, (n, v) => n with { SheetShare = v }),
        new("fall_power", n => n.FallPower, (n, v) => n with { FallPower = v }),
        new("branch_factor", n => n.BranchFactor, (n, v) => n with { BranchFactor = v }),
        new("broad_share", n => n.BroadShare, (n, v) => n with { BroadShare = v }),
        new("bend_sd", n => n.BendSd, (n, v) => n with { BendSd = v }),
        new("shore_sd", n => n.ShoreSd, (n, v) => n with { ShoreSd = v }),
        new("deep_sd", n => n.DeepSd, (n, v) => n with { DeepSd = v }),
        new("range_factor", n => n.RangeFactor, (n, v) => n with { RangeFactor = v }),
        new("rough_share", n => n.RoughShare, (n, v) => n with { RoughShare = v }),
        new("deepest_log", n => n.DeepestLogValue, (n, v) => n with { DeepestLogValue = v }),
        new("deepest_area_power", n => n.DeepestAreaPower, (n, v) => n with { DeepestAreaPower = v }),
        new("deepest_log_sd", n => n.DeepestLogSd, (n, v) => n with { DeepestLogSd = v }),
        new("unknown_factor", n => n.UnknownFactor, (n, v) => n with { UnknownFactor = v }),
    ];
}

/// <summary>One number of <see cref="BasinNumbers"/>.</summary>
/// <param name="Name">Its name in the file.</param>
/// <param name="Of">Reads it.</param>
/// <param name="With">Sets it.</param>
public sealed record BasinNumber(string Name, Func<BasinNumbers, double> Of, Func<BasinNumbers, double, BasinNumbers> With);

/// <summary>What is believed of bottoms that nobody has measured. Immutable; the learned ones come with the product as <c>shapes.json</c>,
/// which also says from which lakes and how well they foretell lakes left out.</summary>
/// <param name="Natural">Of natural basins.</param>
/// <param name="Dammed">Of valleys behind a dam.</param>
public sealed record ShapeNumbers(BasinNumbers Natural, BasinNumbers Dammed)
{
    private static readonly Lazy<ShapeNumbers> Embedded = new(() => Parse(EmbeddedText()));

    /// <summary>The learned numbers.</summary>
    public static ShapeNumbers Learned => Embedded.Value;

    /// <summary>The numbers of a kind; of a natural basin where it is not known.</summary>
    public BasinNumbers Of(BasinKind kind) => kind == BasinKind.Dammed ? Dammed : Natural;

    /// <summary>Reads numbers from a learned file.</summary>
    /// <param name="json">Its text.</param>
    /// <exception cref="FormatException">It is not JSON, or a number is missing; the message says which.</exception>
    public static ShapeNumbers Parse(string json)
    {
        Require.NotNull(json);
        try
        {
            using var document = JsonDocument.Parse(json);
            return new ShapeNumbers(Read(document.RootElement, "natural"), Read(document.RootElement, "dammed"));
        }
        catch (JsonException e)
        {
            throw new FormatException(FormattableString.Invariant($"The learned shapes are not JSON: line {e.LineNumber + 1}."), e);
        }
    }

    private static BasinNumbers Read(JsonElement root, string kind)
    {
        BasinNumbers read = new();
        foreach (BasinNumber number in BasinNumbers.All)
        {
            if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty(kind, out JsonElement numbers)
                || numbers.ValueKind != JsonValueKind.Object
                || !numbers.TryGetProperty(number.Name, out JsonElement value) || value.ValueKind != JsonValueKind.Number
                || !value.TryGetDouble(out double there))
                throw new FormatException($"The learned shapes lack the number '{number.Name}' of {kind} lakes: learn them again.");
            read = number.With(read, there);
        }

        return read;
    }

    /// <summary>The text of the learned file.</summary>
    public static string EmbeddedText()
    {
        using Stream stream = typeof(ShapeNumbers).Assembly.GetManifestResourceStream("SecondShore.Engine.Basin.shapes.json")
            ?? throw new InvalidOperationException("The learned shapes are missing from the engine.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
