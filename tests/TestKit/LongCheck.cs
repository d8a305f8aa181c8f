using Xunit.v3;

namespace SecondShore.TestKit;

/// <summary>A test that takes minutes: <c>dotnet test</c> leaves it out (eng/quick.runsettings), <c>bash eng/check.sh</c> runs it.</summary>
[AttributeUsage(AttributeTargets.Method | AttributeTargets.Class | AttributeTargets.Assembly)]
public sealed class LongCheckAttribute : Attribute, ITraitAttribute
{
    /// <summary>The mark by which the settings know such tests.</summary>
    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => [new("Check", "Long")];
}

/// <summary>A test that does a little in <c>dotnet test</c> and more of the same in <c>bash eng/check.sh</c>, by <see cref="LongCheck.Number"/>.</summary>
[AttributeUsage(AttributeTargets.Method | AttributeTargets.Class)]
public sealed class LongerCheckAttribute : Attribute, ITraitAttribute
{
    /// <summary>The mark by which eng/check.sh knows such tests.</summary>
    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => [new("Check", "Longer")];
}

/// <summary>How much a test does.</summary>
public static class LongCheck
{
    /// <summary>Whether the variable SECONDSHORE_LONG asks for the long checks, as eng/check.sh does.</summary>
    public static bool IsWanted { get; } = Environment.GetEnvironmentVariable("SECONDSHORE_LONG") is { Length: > 0 };

    /// <summary>The smaller number for <c>dotnet test</c>, the larger one for the long checks.</summary>
    public static int Number(int usual, int whenLong) => IsWanted ? whenLong : usual;
}
