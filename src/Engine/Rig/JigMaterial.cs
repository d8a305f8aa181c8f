using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>What a jig head is cast or pressed from.</summary>
/// <param name="Name">Name as a user writes it, lower case.</param>
/// <param name="DensityKgPerM3">Density, kg m-3.</param>
public sealed record JigMaterial(string Name, double DensityKgPerM3)
{
    /// <summary>Lead, 11340 kg m-3 (casting alloys are 2 to 4 % lighter, which changes weight in water by 0.3 %).</summary>
    public static JigMaterial Lead { get; } = new("lead", 11340);

    /// <summary>Sintered tungsten alloy, 17500 kg m-3.</summary>
    public static JigMaterial Tungsten { get; } = new("tungsten", 17500);

    /// <summary>Every material known by name.</summary>
    public static IReadOnlyList<JigMaterial> All { get; } =
    [
        Lead, Tungsten, new("tungsten resin", 11000), new("bismuth", 9780), new("brass", 8500), new("steel", 7850),
        new("tin", 7280), new("zinc", 7140),
    ];

    /// <summary>The material of a name, or null.</summary>
    /// <param name="name">Name, any case, spaces or underscores.</param>
    public static JigMaterial? Find(string name)
    {
        Require.NotNull(name);
        string wanted = name.Trim().Replace('_', ' ');
        foreach (JigMaterial material in All)
            if (string.Equals(material.Name, wanted, StringComparison.OrdinalIgnoreCase)) return material;
        return null;
    }
}
