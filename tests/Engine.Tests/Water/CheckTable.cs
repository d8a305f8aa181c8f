using System.Text.Json;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Water;

/// <summary>Published check values: a copied subset that always runs, and the whole file where it lies beside the repository.</summary>
internal sealed record Check(string Id, double Expected, double Tolerance, Func<double> Compute)
{
    /// <summary>Asserts the copied number, and that the file, where present, still says the same.</summary>
    public void Assert()
    {
        double seen = Compute();
        Xunit.Assert.True(Math.Abs(seen - Expected) <= Tolerance, $"{Id}: {seen} where {Expected} +- {Tolerance} is expected");
        if (SharedData.Find("checkvalues.json") is not { } path) return;
        using JsonDocument file = JsonDocument.Parse(File.ReadAllText(path));
        JsonElement entry = file.RootElement.EnumerateArray().First(e => e.GetProperty("id").GetString() == Id);
        double expected = entry.GetProperty("expected").GetDouble(), tolerance = entry.GetProperty("tolerance").GetDouble();
        Xunit.Assert.True(Math.Abs(seen - expected) <= tolerance, $"{Id}: {seen} where the file has {expected} +- {tolerance}");
    }

    /// <summary>Rows for a theory.</summary>
    public static TheoryData<string> Ids(IEnumerable<Check> checks) => [.. checks.Select(c => c.Id)];
}
