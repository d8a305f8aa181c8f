using System.Text.RegularExpressions;
using SecondShore.TestKit;

namespace SecondShore.Architecture.Tests;

public partial class DocumentTests
{
    public static TheoryData<string> Pages =>
    [
        .. Directory.GetFiles(SharedData.RepositoryRoot, "*.md")
            .Concat(Directory.GetFiles(Path.Combine(SharedData.RepositoryRoot, "docs"), "*.md", SearchOption.AllDirectories))
            .Concat(new[] { "src", "bench", "tests" }.SelectMany(f =>
                Directory.GetFiles(Path.Combine(SharedData.RepositoryRoot, f), "README.md", SearchOption.AllDirectories))
                .Where(p => !p.Contains("node_modules", StringComparison.Ordinal)))
            .Select(p => Path.GetRelativePath(SharedData.RepositoryRoot, p)),
    ];

    [Theory]
    [MemberData(nameof(Pages))]
    public void Every_link_and_path_on_a_page_leads_somewhere(string page)
    {
        string full = Path.Combine(SharedData.RepositoryRoot, page);
        string text = File.ReadAllText(full);
        List<string> missing = [];
        foreach (Match match in Link().Matches(text))
        {
            string target = match.Groups[1].Value.Split('#')[0];
            if (target.Length == 0 || target.Contains("://", StringComparison.Ordinal)) continue;
            if (!Path.Exists(Path.Combine(Path.GetDirectoryName(full)!, target))) missing.Add(target);
        }

        foreach (Match match in RepositoryPath().Matches(text))
            if (!Path.Exists(Path.Combine(SharedData.RepositoryRoot, match.Groups[1].Value))) missing.Add(match.Groups[1].Value);

        Assert.True(missing.Count == 0, $"{page} names what is not there: {string.Join(", ", missing.Distinct())}");
    }

    [Fact]
    public void Every_project_says_in_its_folder_what_lives_there_and_where_to_begin()
    {
        string[] projects = [.. new[] { "src", "bench" }.SelectMany(f => Directory.GetFiles(Path.Combine(SharedData.RepositoryRoot, f), "*.csproj", SearchOption.AllDirectories))
            .Where(p => !p.Contains("node_modules", StringComparison.Ordinal)).Select(p => Path.GetDirectoryName(p)!)];
        Assert.NotEmpty(projects);
        Assert.All(projects, folder =>
        {
            string page = Path.Combine(folder, "README.md");
            Assert.True(File.Exists(page), $"{Path.GetRelativePath(SharedData.RepositoryRoot, folder)} has no README.md.");
            string text = File.ReadAllText(page);
            Assert.StartsWith($"# {Path.GetFileName(folder)}\n", text, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("Begin with ", text, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void The_picture_of_the_architecture_is_drawn_from_its_page()
    {
        if (Environment.GetEnvironmentVariable("SECONDSHORE_DRAW") == "1") File.WriteAllText(ArchitecturePicture.FilePath, ArchitecturePicture.Draw());
        Assert.True(File.Exists(ArchitecturePicture.FilePath) && File.ReadAllText(ArchitecturePicture.FilePath).ReplaceLineEndings("\n") == ArchitecturePicture.Draw(),
            "docs/images/architecture.svg is not what docs/architecture.md says. Draw it anew: SECONDSHORE_DRAW=1 dotnet test tests/Architecture.Tests");
    }

    [Fact]
    public void No_file_of_the_project_speaks_of_where_it_was_made()
    {
        string[] forbidden = ["/work/" + "main", "/work/" + "wt", "/work/" + "tools", "/work/" + "shared", "/work/" + ".library"];
        List<string> found = [];
        foreach (string file in TrackedTextFiles())
        {
            string text = File.ReadAllText(file);
            found.AddRange(forbidden.Where(f => text.Contains(f, StringComparison.Ordinal))
                .Select(f => $"{Path.GetRelativePath(SharedData.RepositoryRoot, file)}: {f}"));
        }

        Assert.Empty(found);
    }

    private static IEnumerable<string> TrackedTextFiles()
    {
        string[] endings = [".cs", ".md", ".csproj", ".props", ".ts", ".css", ".razor", ".json", ".html", ".js", ".mjs"];
        return new[] { "src", "tests", "bench", "docs", "eng" }
            .Select(f => Path.Combine(SharedData.RepositoryRoot, f)).Where(Directory.Exists)
            .SelectMany(f => Directory.EnumerateFiles(f, "*", SearchOption.AllDirectories))
            .Where(f => endings.Contains(Path.GetExtension(f))
                && !f.Contains("node_modules", StringComparison.Ordinal)
                && !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal));
    }

    [GeneratedRegex(@"\]\(([^)\s]+)\)")]
    private static partial Regex Link();

    [GeneratedRegex(@"`((?:src|tests|bench|docs|eng)/[A-Za-z0-9_./-]*[A-Za-z0-9_])/?`")]
    private static partial Regex RepositoryPath();
}
