using System.Globalization;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Runs figures by name, prints <c>figure NAME VALUE UNIT</c> lines and keeps them, or says what moved.</summary>
/// <remarks>A figure is a class that implements <see cref="IFigure"/>; add it to <see cref="Figures.All"/>.</remarks>
internal static class Runner
{
    private const string Usage =
        """
        bench list               names every figure
        bench NAME...            measures, keeps each in docs/figures/NAME.json and makes docs/figures.md anew
        bench --print NAME...    measures and keeps nothing
        bench --compare NAME...  measures, keeps nothing, and says what moved beyond its margin from what is kept; 1 when something did
        bench page               makes docs/figures.md from docs/figures
        """;

    public static int Run(string[] args)
    {
        string[] names = [.. args.Where(a => !a.StartsWith("--", StringComparison.Ordinal))];
        string[] options = [.. args.Except(names)];
        if (names.Length == 0 || options.Length > 1 || options.Any(o => o is not ("--print" or "--compare"))) return Say(Usage, 2);
        if (names is ["list"]) return List();
        if (names is ["page"]) return Page();

        int moved = 0;
        foreach (string name in names)
        {
            IFigure? figure = Figures.All.FirstOrDefault(f => f.Name == name);
            if (figure is null) return Say($"No figure is called '{name}'. 'list' names them.", 2);
            Console.Error.WriteLine($"# {figure.Name}: {figure.Claim}");
            FigureFile measured;
            try { measured = Measure(figure); }
            catch (CannotMeasureException e) { return Say($"{figure.Name} cannot be measured: {e.Message}", 1); }

            if (measured.Values.Count == 0) Console.Error.WriteLine("Nothing was measured: what it needs is not on this machine. What is kept stays.");
            else if (options is ["--compare"]) moved += Compare(FigureFile.Find(name), measured);
            else if (options.Length == 0) measured.Write();
        }

        if (options.Length == 0) Page();
        return moved > 0 ? 1 : 0;
    }

    private static FigureFile Measure(IFigure figure)
    {
        FigureFile file = Circumstances.Now(figure);
        List<FigureValue> values = [];
        foreach (Measured m in figure.Measure())
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"figure {m.Name} {m.Value:G5} {m.Unit} ({m.Against})"));
            values.Add(new FigureValue(m.Name, m.Value, m.Unit, m.Against, m.Margin ?? figure.Margin, m.OnPage));
        }

        return file with { Values = values };
    }

    private static int Compare(FigureFile? kept, FigureFile now)
    {
        if (kept is null) return Say($"{now.Name} was never kept: nothing to compare with.", 0);
        int moved = 0;
        foreach (FigureValue v in now.Values)
        {
            FigureValue? before = kept.Values.FirstOrDefault(k => k.Name == v.Name);
            if (before is null) Console.WriteLine($"new {v.Name}");
            else if (v.Margin.Moved(before.Value, v.Value))
            {
                moved++;
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"moved {v.Name} {before.Value:G5} to {v.Value:G5} {v.Unit} (margin {v.Margin}; {kept.Date:yyyy-MM-dd}, {kept.Commit ?? "commit not written down"})"));
            }
        }

        foreach (FigureValue gone in kept.Values.Where(k => now.Values.All(v => v.Name != k.Name)))
        {
            moved++;
            Console.WriteLine($"gone {gone.Name}");
        }

        Console.WriteLine($"{now.Name}: {moved} of {now.Values.Count} moved");
        return moved;
    }

    private static int List()
    {
        foreach (IFigure figure in Figures.All) Console.WriteLine($"{figure.Name,-28} {figure.Claim}");
        return 0;
    }

    private static int Page()
    {
        File.WriteAllText(FigurePage.FilePath, FigurePage.Of(FigureFile.ReadAll()));
        return 0;
    }

    private static int Say(string text, int code)
    {
        Console.Error.WriteLine(text);
        return code;
    }
}
