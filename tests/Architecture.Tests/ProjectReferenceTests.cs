using System.Xml.Linq;
using SecondShore.TestKit;

namespace SecondShore.Architecture.Tests;

public class ProjectReferenceTests
{
    private static readonly string Root = SharedData.RepositoryRoot;

    private static readonly IReadOnlyDictionary<string, string> Files = ProjectFiles("src").ToDictionary(f => Folder(f), f => f);

    public static TheoryData<string> Projects => [.. Files.Keys.Order()];

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_references_what_the_architecture_page_allows_and_nothing_else(string project)
    {
        ArchitectureTable.Row? row = ArchitectureTable.Rows.FirstOrDefault(r => r.Project == project);
        Assert.True(row is not null, $"docs/architecture.md has no row for {project}.");
        HashSet<string> reached = [];
        Reach(project, reached);
        AssertSame(row.Projects, reached, $"projects of {project}");
        AssertSame(row.RunByBuild, References(project, built: true), $"projects run by the build of {project}");
        AssertSame(row.Packages, Packages(Files[project]), $"packages of {project}");
    }

    [Fact]
    public void Every_row_of_the_architecture_page_is_a_project() =>
        AssertSame(ArchitectureTable.Rows.Select(r => r.Project), Files.Keys, "rows");

    [Fact]
    public void Every_pinned_package_is_used_and_every_used_package_is_pinned()
    {
        IEnumerable<string> pinned = Includes(XDocument.Load(Path.Combine(Root, "Directory.Packages.props")), "PackageVersion");
        string[] shared = [.. Directory.GetFiles(Path.Combine(Root, "tests"), "*.props"), .. Directory.GetFiles(Path.Combine(Root, "tests"), "*.targets"),
            .. Directory.GetFiles(Root, "Directory.Build.*")];
        AssertSame(pinned, new[] { "src", "tests", "bench" }.SelectMany(ProjectFiles).Concat(shared).SelectMany(Packages), "packages in Directory.Packages.props");
    }

    [Fact]
    public void The_solution_holds_every_project()
    {
        string[] listed = [.. XDocument.Load(Path.Combine(Root, "SecondShore.slnx")).Descendants("Project").Select(e => (string)e.Attribute("Path")!)];
        AssertSame(listed, new[] { "src", "tests", "bench" }.SelectMany(ProjectFiles).Select(f => Path.GetRelativePath(Root, f).Replace('\\', '/')), "projects in SecondShore.slnx");
    }

    [Fact]
    public void The_built_engine_stands_on_the_base_library_alone()
    {
        string[] others = [.. typeof(Engine.Core.PhysicalConstants).Assembly.GetReferencedAssemblies()
            .Select(a => a.Name!).Where(n => n != "System" && !n.StartsWith("System.", StringComparison.Ordinal) && n != "netstandard")];
        Assert.Empty(others);
    }

    private static void Reach(string project, HashSet<string> reached)
    {
        foreach (string reference in References(project, built: false))
            if (reached.Add(reference)) Reach(reference, reached);
    }

    // What a build only runs is no part of the program, nor is what that knows.
    private static IEnumerable<string> References(string project, bool built) =>
        XDocument.Load(Files[project]).Descendants("ProjectReference")
            .Where(e => (string?)e.Attribute("ReferenceOutputAssembly") == "false" == built)
            .Select(e => Folder((string)e.Attribute("Include")!));

    private static IEnumerable<string> ProjectFiles(string folder) =>
        Directory.EnumerateFiles(Path.Combine(Root, folder), "*.csproj", SearchOption.AllDirectories)
            .Where(f => !f.Contains("node_modules", StringComparison.Ordinal));

    private static string Folder(string projectFile) => Path.GetFileName(Path.GetDirectoryName(projectFile.Replace('\\', '/')))!;

    private static IEnumerable<string> Packages(string file) => Includes(XDocument.Load(file), "PackageReference");

    private static IEnumerable<string> Includes(XDocument file, string element) =>
        file.Descendants(element).Select(e => (string?)e.Attribute("Include")).OfType<string>();

    private static void AssertSame(IEnumerable<string> said, IEnumerable<string> found, string what)
    {
        string[] unused = [.. said.Except(found).Order()], unsaid = [.. found.Except(said).Order()];
        Assert.True(unused.Length == 0 && unsaid.Length == 0,
            $"{what}: said and not used: {string.Join(", ", unused)}; used and not said: {string.Join(", ", unsaid)}.");
    }
}
