using System.Text;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.TestKit;

namespace SecondShore.Desk.Tests;

/// <summary>The types that the browser's side reads, written from the desk's records by the very metadata that writes the JSON.</summary>
internal sealed class TypeScriptTypes
{
    private readonly SortedDictionary<string, string> _written = new(StringComparer.Ordinal);
    private readonly Dictionary<Type, string> _names = new();

    public static string FilePath { get; } = Path.Combine(SharedData.RepositoryRoot, "src", "App", "map", "src", "worker", "desk.ts");

    /// <summary>The whole file; the same records give the same bytes.</summary>
    public static string Write()
    {
        TypeScriptTypes types = new();
        types.NameOf(typeof(Drawing));
        types.NameOf(typeof(FirstAnswer));
        types.NameOf(typeof(RecordRow));
        StringBuilder file = new();
        file.Append("// What crosses between the desk and the browser's side. Written from the records in src/Desk by tests/Desk.Tests: change those, then\n");
        file.Append("// SECONDSHORE_DRAW=1 dotnet test tests/Desk.Tests\n\n");
        file.Append("/** Names of the questions; what else they hold only the two runtimes read. */\nexport type QuestionKind =\n");
        file.AppendJoin("\n", Kinds().Select(k => $"  | \"{k}\"")).Append(";\n");
        foreach (string written in types._written.Values) file.Append('\n').Append(written);
        return file.ToString();
    }

    public static IEnumerable<string> Kinds() => Derived(typeof(Question)).Select(d => d.Name);

    public static IEnumerable<(Type Type, string Name)> Derived(Type parent) =>
        parent.GetCustomAttributes(typeof(JsonDerivedTypeAttribute), inherit: false)
        .Cast<JsonDerivedTypeAttribute>().Select(d => (d.DerivedType, (string)d.TypeDiscriminator!));

    private string NameOf(Type type)
    {
        if (type == typeof(string) || type.IsEnum || type == typeof(DateOnly) || type == typeof(DateTimeOffset)) return "string";
        if (type == typeof(bool)) return "boolean";
        if (type == typeof(double) || type == typeof(int) || type == typeof(long) || type == typeof(float)) return "number";
        if (_names.TryGetValue(type, out string? known)) return known;
        JsonTypeInfo info = DeskJson.Default.GetTypeInfo(type) ?? throw new InvalidOperationException($"{type.Name} does not cross.");
        if (info.Kind == JsonTypeInfoKind.Enumerable)
        {
            string element = NameOf(info.ElementType!);
            return element.Contains('|', StringComparison.Ordinal) ? $"({element})[]" : element + "[]";
        }

        _names[type] = type.Name;
        (Type Type, string Name)[] derived = [.. Derived(type)];
        _written[type.Name] = derived.Length > 0
            ? $"export type {type.Name} = {string.Join(" | ", derived.Select(d => Interface(d.Type, $"draws: \"{d.Name}\"")))};\n"
            : Body(info, null);
        return type.Name;
    }

    private string Interface(Type type, string discriminator)
    {
        _names[type] = type.Name;
        _written[type.Name] = Body(DeskJson.Default.GetTypeInfo(type)!, discriminator);
        return type.Name;
    }

    private string Body(JsonTypeInfo info, string? discriminator) => $"export interface {info.Type.Name} {{\n"
        + string.Concat((discriminator is null ? Array.Empty<string>() : [discriminator])
            .Concat(info.Properties.Where(p => p.Get is not null).Select(Property)).Select(l => $"  {l};\n")) + "}\n";

    private string Property(JsonPropertyInfo property)
    {
        Type? value = Nullable.GetUnderlyingType(property.PropertyType);
        bool none = value is not null || (!property.PropertyType.IsValueType && property.IsGetNullable);
        return $"{property.Name}: {NameOf(value ?? property.PropertyType)}{(none ? " | null" : "")}";
    }
}
