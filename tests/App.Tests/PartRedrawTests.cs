using System.Reflection;
using Microsoft.AspNetCore.Components;
using SecondShore.App.Parts;
using SecondShore.App.Shell;

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

    private static bool Has<TMark>(Type part, Type? of) where TMark : Attribute =>
        part.GetProperties(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic).Any(p => p.IsDefined(typeof(TMark), true) && (of is null || p.PropertyType == of));
}
