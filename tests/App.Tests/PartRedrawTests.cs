using System.Reflection;
using Microsoft.AspNetCore.Components;
using SecondShore.App.Parts;
using SecondShore.App.Shell;
using SecondShore.TestKit;

namespace SecondShore.App.Tests;

/// <summary>A part without parameters is not drawn anew with its page: one that shows the session has to follow it by itself.</summary>
public class PartRedrawTests
{
    [Fact]
    public void What_shows_the_session_and_has_no_parameters_follows_it()
    {
        Type[] parts = [.. typeof(PartBase).Assembly.GetTypes().Where(t => t.Namespace == typeof(PartBase).Namespace && typeof(ComponentBase).IsAssignableFrom(t) && !t.IsAbstract)];
        Type[] still = [.. parts.Where(t => Has<InjectAttribute>(t, typeof(Session)) && !Has<ParameterAttribute>(t, null) && !typeof(PartBase).IsAssignableFrom(t))];
        Assert.True(parts.Length > 10, "no parts were found");
        Assert.True(still.Length == 0, $"{string.Join(", ", still.Select(t => t.Name))}: let it inherit {nameof(PartBase)}.");
    }

    [Fact]
    public void A_time_that_is_typed_comes_with_its_seconds_and_is_read_so()
    {
        // The page runtime hands over 2026-09-20T09:00:00 however little was typed; a field that reads less puts its old time back.
        string folder = Path.Combine(SharedData.RepositoryRoot, "src", "App");
        string[] fields = [.. Directory.EnumerateFiles(folder, "*.razor", SearchOption.AllDirectories).SelectMany(File.ReadLines).Where(l => l.Contains("type=\"datetime-local\"", StringComparison.Ordinal))];
        Assert.True(fields.Length >= 3, $"{fields.Length} fields");
        Assert.All(fields, f => Assert.Contains("@bind:format=\"yyyy-MM-ddTHH:mm:ss\"", f, StringComparison.Ordinal));
    }

    private static bool Has<TMark>(Type part, Type? of) where TMark : Attribute =>
        part.GetProperties(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic).Any(p => p.IsDefined(typeof(TMark), true) && (of is null || p.PropertyType == of));
}
