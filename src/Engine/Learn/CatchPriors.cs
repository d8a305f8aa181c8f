using System.Globalization;
using System.Text.Json;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Learn;

/// <summary>One belief of the trade: a factor on the rate of a level, under a condition.</summary>
/// <param name="Factor">Factor, such as <c>colour</c>.</param>
/// <param name="Level">A level whose name holds this word.</param>
/// <param name="When">Condition that must hold; empty for always.</param>
/// <param name="TimesFactor">Prior mean of the factor, above 0.</param>
/// <param name="Because">The reason in words.</param>
public sealed record PriorRule(string Factor, string Level, string When, double TimesFactor, string Because);

/// <summary>What is believed before a log is read. Immutable; the default is stated in one readable file.</summary>
public sealed record CatchPriors
{
    private static readonly Lazy<string> EmbeddedText = new(ReadText);
    private static readonly Lazy<CatchPriors> Embedded = new(ReadEmbedded);

    /// <summary>Prior mean of the rate of an ordinary hour, bites per hour.</summary>
    public required double MeanPerH { get; init; }

    /// <summary>Prior standard deviation of it, bites per hour.</summary>
    public required double SdPerH { get; init; }

    /// <summary>Factors that are learned, in order.</summary>
    public required IReadOnlyList<string> Factors { get; init; }

    /// <summary>The beliefs.</summary>
    public required IReadOnlyList<PriorRule> Rules { get; init; }

    /// <summary>The beliefs that come with the product.</summary>
    public static CatchPriors Default => Embedded.Value;

    /// <summary>The text of <see cref="Default"/>: to copy, change and give back.</summary>
    public static string DefaultText => EmbeddedText.Value;

    /// <summary>Prior factor of a level under conditions: the product of the rules that hold.</summary>
    /// <param name="factor">Factor.</param>
    /// <param name="level">Level.</param>
    /// <param name="conditions">Conditions that hold.</param>
    public double FactorOf(string factor, string level, IReadOnlyCollection<string> conditions)
    {
        double product = 1;
        foreach (PriorRule rule in Holding(factor, level, conditions)) product *= rule.TimesFactor;
        return product;
    }

    /// <summary>The rules that hold for a level under conditions.</summary>
    public IEnumerable<PriorRule> Holding(string factor, string level, IReadOnlyCollection<string> conditions)
    {
        Require.NotNull(level);
        foreach (PriorRule rule in Rules)
        {
            bool exact = factor == "layer";
            if (rule.Factor != factor || (rule.When.Length > 0 && !conditions.Contains(rule.When))) continue;
            if (exact ? level == rule.Level : level.Contains(rule.Level, StringComparison.OrdinalIgnoreCase)) yield return rule;
        }
    }

    /// <summary>Reads priors from their JSON text.</summary>
    /// <param name="json">The text.</param>
    /// <param name="priors">The priors, or null.</param>
    /// <param name="problem">What is wrong and what was expected, in one sentence; empty when all is well.</param>
    public static bool TryParse(string json, out CatchPriors? priors, out string problem)
    {
        priors = null;
        try
        {
            using var document = JsonDocument.Parse(Require.NotNull(json), new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
            priors = Read(document.RootElement);
            problem = "";
            return true;
        }
        catch (JsonException e)
        {
            problem = $"The priors are not JSON: line {e.LineNumber + 1}, column {e.BytePositionInLine + 1}.";
        }
        catch (FormatException e)
        {
            problem = e.Message;
        }

        return false;
    }

    private static CatchPriors Read(JsonElement root)
    {
        JsonElement rate = Member(root, "bites_per_hour", JsonValueKind.Object);
        List<string> factors = [];
        foreach (JsonElement factor in Member(root, "factors", JsonValueKind.Array).EnumerateArray()) factors.Add(Text(factor, "name"));
        List<PriorRule> rules = [];
        foreach (JsonElement rule in Member(root, "rules", JsonValueKind.Array).EnumerateArray())
        {
            string factor = Text(rule, "factor");
            if (!factors.Contains(factor)) throw new FormatException($"A rule of the priors names the factor '{factor}', which 'factors' does not list.");
            string when = rule.TryGetProperty("when", out JsonElement w) && w.ValueKind == JsonValueKind.String ? w.GetString()! : "";
            string because = rule.TryGetProperty("because", out JsonElement b) && b.ValueKind == JsonValueKind.String ? b.GetString()! : "";
            rules.Add(new PriorRule(factor, Text(rule, "level"), when, Number(rule, "times", 0.01, 100), because));
        }

        return new CatchPriors { MeanPerH = Number(rate, "mean", 1e-3, 100), SdPerH = Number(rate, "sd", 1e-3, 100), Factors = factors, Rules = rules };
    }

    private static JsonElement Member(JsonElement parent, string name, JsonValueKind kind)
    {
        if (parent.ValueKind == JsonValueKind.Object && parent.TryGetProperty(name, out JsonElement member) && member.ValueKind == kind) return member;
        throw new FormatException($"The priors lack '{name}' as {(kind == JsonValueKind.Array ? "a list" : "an object")}.");
    }

    private static string Text(JsonElement parent, string name)
    {
        if (parent.ValueKind == JsonValueKind.Object && parent.TryGetProperty(name, out JsonElement member)
            && member.ValueKind == JsonValueKind.String && member.GetString()!.Length > 0) return member.GetString()!;
        throw new FormatException($"An entry of the priors lacks '{name}' as text: {Short(parent)}");
    }

    private static double Number(JsonElement parent, string name, double low, double high)
    {
        if (parent.TryGetProperty(name, out JsonElement member) && member.ValueKind == JsonValueKind.Number && member.TryGetDouble(out double value)
            && value >= low && value <= high) return value;
        throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"The priors need '{name}' as a number from {low} to {high}: {Short(parent)}"));
    }

    private static string Short(JsonElement element)
    {
        string text = element.GetRawText();
        return text.Length <= 80 ? text : text[..80] + "...";
    }

    private static CatchPriors ReadEmbedded() =>
        TryParse(DefaultText, out CatchPriors? priors, out string problem) ? priors! : throw new InvalidOperationException(problem);

    private static string ReadText()
    {
        using Stream stream = typeof(CatchPriors).Assembly.GetManifestResourceStream("SecondShore.Engine.Learn.catch-priors.json")
            ?? throw new InvalidOperationException("The built-in priors are missing from the engine.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
