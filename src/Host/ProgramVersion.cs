using System.Reflection;

namespace SecondShore.Host;

/// <summary>The program's version as built.</summary>
internal static class ProgramVersion
{
    public static string Text { get; } = typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "0";
}
