using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Water;

/// <summary>A published check value: what the test expects must be what tests/data/checkvalues.csv has.</summary>
internal sealed record Check(string Id, double Expected, double Tolerance, Func<double> Compute)
{
    /// <summary>Asserts the expected number, and that of the list.</summary>
    public void Assert()
    {
        double seen = Compute();
        Xunit.Assert.True(Math.Abs(seen - Expected) <= Tolerance, $"{Id}: {seen} where {Expected} +- {Tolerance} is expected");
        (double expected, double tolerance) = CheckValues.All[Id];
        Xunit.Assert.True(Math.Abs(seen - expected) <= tolerance, $"{Id}: {seen} where the list has {expected} +- {tolerance}");
    }

    /// <summary>Rows for a theory.</summary>
    public static TheoryData<string> Ids(IEnumerable<Check> checks) => [.. checks.Select(c => c.Id)];
}
