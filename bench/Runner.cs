using System.Globalization;

namespace SecondShore.Bench;

/// <summary>Runs figures by name and prints <c>figure NAME VALUE UNIT</c> lines.</summary>
/// <remarks>A figure is a class that implements <see cref="IFigure"/>; add it to <see cref="Figures.All"/>.</remarks>
internal static class Runner
{
    public static int Run(string[] args)
    {
        if (args.Length == 0 || args[0] == "list")
        {
            foreach (IFigure figure in Figures.All) Console.WriteLine($"{figure.Name,-28} {figure.Claim}");
            return args.Length == 0 ? 2 : 0;
        }

        foreach (string name in args)
        {
            IFigure? figure = Figures.All.FirstOrDefault(f => f.Name == name);
            if (figure is null)
            {
                Console.Error.WriteLine($"No figure is called '{name}'. 'list' names them.");
                return 2;
            }

            Console.Error.WriteLine($"# {figure.Name}: {figure.Claim}");
            foreach (Measured m in figure.Measure())
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"figure {m.Name} {m.Value:G5} {m.Unit} ({m.Against})"));
        }

        return 0;
    }
}

/// <summary>One measured number, its unit and what it was measured against.</summary>
internal sealed record Measured(string Name, double Value, string Unit, string Against);

/// <summary>A claim of speed or quality that can be measured.</summary>
internal interface IFigure
{
    /// <summary>The name to run it by, such as <c>season-blind</c>.</summary>
    string Name { get; }

    /// <summary>What it measures, in one sentence.</summary>
    string Claim { get; }

    /// <summary>Measures; may take minutes, says so on standard error.</summary>
    IEnumerable<Measured> Measure();
}
