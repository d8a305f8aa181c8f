using System.Reflection;
using System.Text.RegularExpressions;
using SecondShore.TestKit;

namespace SecondShore.Architecture.Tests;

public partial class NamingTests
{
    // Dimensionless by nature: shares, counts, ratios, shape numbers. Grows only with a reason.
    private static readonly HashSet<string> Dimensionless = new(StringComparer.OrdinalIgnoreCase)
    {
        "value", "values", "low", "high", "tolerance", "root", "share", "shares", "weight", "weights", "mean", "sd", "p10", "p50", "p90",
        "p20", "p35", "p65", "p80", "x", "y", "z", "sample", "samples", "chance", "factor", "ratio", "fraction", "scale", "shape", "count",
        "lower", "diagonal", "upper", "right", "quantile", "probability", "progress", "column", "row", "columns", "rows", "density",
        "cloudFraction", "relativeHumidity", "earthFlattening", "vonKarman", "result", "limit", "exponent", "power", "t", "u", "confidence",
        "slope", "coefficient", "cellsAbove", "chanceStratified", "draw", "periodsToFade", "efficiency", "score", "cosZenith", "albedo", "emissivity", "power", "skill", "odds",
    };

    [Fact]
    public void Every_public_number_of_the_engine_says_its_unit()
    {
        string[] suffixes = Suffixes();
        List<string> nameless = [];
        foreach (Type type in typeof(Engine.Core.PhysicalConstants).Assembly.GetExportedTypes())
        {
            // Edge types carry their unit in their members; solvers and guards take numbers of any unit; weights are points.
            if (type.Namespace!.EndsWith(".Core.Units", StringComparison.Ordinal)
                || type.Namespace.EndsWith(".Core.Numerics", StringComparison.Ordinal)
                || type == typeof(Engine.Core.Require)
                || type == typeof(Engine.Basin.Spots.SpotWeights)) continue;
            foreach (PropertyInfo p in type.GetProperties(Own)) Check(p.PropertyType, p.Name, $"{type.Name}.{p.Name}");
            foreach (FieldInfo f in type.GetFields(Own).Where(f => !f.IsSpecialName)) Check(f.FieldType, f.Name, $"{type.Name}.{f.Name}");
            foreach (MethodInfo m in type.GetMethods(Own).Where(m => !m.IsSpecialName))
            {
                if (m.Name is "Deconstruct" or "Equals" or "GetHashCode" or "ToString" or "<Clone>$" or "PrintMembers") continue;
                Check(m.ReturnType, m.Name, $"{type.Name}.{m.Name}()");
                foreach (ParameterInfo a in m.GetParameters()) Check(a.ParameterType, a.Name!, $"{type.Name}.{m.Name}({a.Name})");
            }

            foreach (ConstructorInfo c in type.GetConstructors())
                foreach (ParameterInfo a in c.GetParameters()) Check(a.ParameterType, a.Name!, $"new {type.Name}({a.Name})");
        }

        Assert.True(nameless.Count == 0, "No unit in the name of:\n" + string.Join("\n", nameless.Distinct().Order()));

        void Check(Type valueType, string name, string where)
        {
            if (!IsNumber(valueType)) return;
            if (Dimensionless.Contains(name) || suffixes.Any(s => name.EndsWith(s, StringComparison.Ordinal))) return;
            if (DimensionlessEnding().IsMatch(name)) return;
            nameless.Add(where);
        }
    }

    private const BindingFlags Own = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    [GeneratedRegex("(Share|Chance|Factor|Ratio|Fraction|Number|Weight|Coefficient|Index|Sd|Score|Confidence"
        + "|Probability|Count|Power|Value|Odds|Rate|Efficiency|ColumnAt|RowAt|FactorOf|Tan|Share[A-Z].*|Chance[A-Z].*)s?$")]
    private static partial Regex DimensionlessEnding();

    private static bool IsNumber(Type type)
    {
        if (type.IsByRef) type = type.GetElementType()!;
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type.IsArray) type = type.GetElementType()!;
        if (type.IsGenericType && type.GetGenericTypeDefinition() is { } g
            && (g == typeof(Span<>) || g == typeof(ReadOnlySpan<>) || g == typeof(IReadOnlyList<>) || g == typeof(Memory<>) || g == typeof(ReadOnlyMemory<>)))
        {
            type = type.GetGenericArguments()[0];
        }

        return type == typeof(double) || type == typeof(float);
    }

    private static string[] Suffixes()
    {
        string text = File.ReadAllText(Path.Combine(SharedData.RepositoryRoot, "docs", "glossary.md"));
        string list = SuffixList().Match(text).Groups[1].Value;
        string[] suffixes = list.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        Assert.Contains("KgPerM3", suffixes);
        return suffixes;
    }

    [GeneratedRegex(@"`(M M2 M3[^`]*)`", RegexOptions.Singleline)]
    private static partial Regex SuffixList();
}
