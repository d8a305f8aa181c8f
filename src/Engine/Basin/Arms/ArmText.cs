using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Words;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>Says the names that arms have by their place; names the user gave stay as they are.</summary>
public static class ArmText
{
    /// <summary>An arm's name in a language.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="speech">The language.</param>
    public static string Of(string name, Speech speech)
    {
        Require.NotNull(name);
        Require.NotNull(speech);
        // A second arm on the same side is counted: its number stands behind the name.
        int blank = name.LastIndexOf(' ');
        bool counted = blank > 0 && int.TryParse(name.AsSpan(blank + 1), out _);
        string plain = counted ? name[..blank] : name;
        return ArmNames.ByPlace.Contains(plain) ? speech.Plain(plain) + (counted ? name[blank..] : "") : name;
    }
}
