using ArchUnitNET.Domain;
using ArchUnitNET.Loader;

namespace SecondShore.Architecture.Tests;

public class EngineArrowTests
{
    private const string Root = "SecondShore.Engine.";

    private static readonly ArchUnitNET.Domain.Architecture Built =
        new ArchLoader().LoadAssemblies(typeof(Engine.Core.PhysicalConstants).Assembly).Build();

    [Fact]
    public void No_folder_of_the_engine_uses_one_to_its_right()
    {
        List<string> broken = [];
        foreach (IType type in Built.Types)
        {
            int own = Place(type.FullName);
            if (own < 0) continue;
            foreach (string target in type.Dependencies.Select(d => d.Target.FullName))
            {
                if (Place(target) > own) broken.Add($"{type.FullName} uses {target}");
            }
        }

        Assert.Empty(broken.Distinct());
    }

    [Fact]
    public void Every_type_of_the_engine_lies_in_a_known_folder()
    {
        string[] stray = [.. Built.Types.Select(t => t.FullName)
            .Where(n => n.StartsWith(Root, StringComparison.Ordinal) && Place(n) < 0)];
        Assert.Empty(stray);
    }

    private static int Place(string fullName)
    {
        if (!fullName.StartsWith(Root, StringComparison.Ordinal)) return -1;
        string folder = fullName[Root.Length..].Split('.', '+', '/')[0];
        for (int i = 0; i < ArchitectureTable.EngineOrder.Count; i++)
            if (ArchitectureTable.EngineOrder[i] == folder) return i;
        return -1;
    }
}
