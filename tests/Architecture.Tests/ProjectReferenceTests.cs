using System.Xml.Linq;
using SecondShore.TestKit;

namespace SecondShore.Architecture.Tests;

public class ProjectReferenceTests
{
    public static TheoryData<string> Projects => [.. Directory.GetDirectories(Path.Combine(SharedData.RepositoryRoot, "src"))
        .Where(d => Directory.GetFiles(d, "*.csproj").Length == 1).Select(d => Path.GetFileName(d)!)];

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_references_only_what_the_architecture_page_allows(string project)
    {
        ArchitectureTable.Row? row = ArchitectureTable.Rows.FirstOrDefault(r => r.Project == project);
        Assert.True(row is not null, $"docs/architecture.md has no row for {project}.");
        XDocument file = XDocument.Load(Directory.GetFiles(Path.Combine(SharedData.RepositoryRoot, "src", project), "*.csproj").Single());
        foreach (string reference in Includes(file, "ProjectReference"))
        {
            string name = Path.GetFileName(Path.GetDirectoryName(reference.Replace('\\', '/'))!);
            Assert.True(row.Projects.Contains(name), $"{project} references {name}, which docs/architecture.md does not allow.");
        }

        foreach (string package in Includes(file, "PackageReference"))
            Assert.True(row.Packages.Contains(package), $"{project} uses the package {package}, which docs/architecture.md does not allow.");
    }

    [Fact]
    public void The_built_engine_stands_on_the_base_library_alone()
    {
        string[] others = [.. typeof(Engine.Core.PhysicalConstants).Assembly.GetReferencedAssemblies()
            .Select(a => a.Name!).Where(n => n != "System" && !n.StartsWith("System.", StringComparison.Ordinal) && n != "netstandard")];
        Assert.Empty(others);
    }

    private static IEnumerable<string> Includes(XDocument file, string element) =>
        file.Descendants(element).Select(e => (string?)e.Attribute("Include")).OfType<string>();
}
