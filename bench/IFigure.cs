using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>One measured number, its unit and what it was measured against.</summary>
/// <param name="Name">Its name, unique over all figures.</param>
/// <param name="Value">As measured.</param>
/// <param name="Unit">Unit; empty for a ratio.</param>
/// <param name="Against">Target or what it was measured against.</param>
/// <param name="Margin">How far it may stray before it counts as moved; the figure's own where it is not given.</param>
/// <param name="OnPage">False for one of many of its kind: it is kept in the figure's file and not shown on the page.</param>
internal sealed record Measured(string Name, double Value, string Unit, string Against, FigureMargin? Margin = null, bool OnPage = true);

/// <summary>A claim of speed or quality that can be measured.</summary>
internal interface IFigure
{
    /// <summary>The name to run it by, such as <c>season-blind</c>.</summary>
    string Name { get; }

    /// <summary>What it measures, in one sentence.</summary>
    string Claim { get; }

    /// <summary>How far its numbers may stray from run to run; one that strays less or more says its own.</summary>
    FigureMargin Margin { get; }

    /// <summary>What was left out when numbers were learned for it, or that nothing was; null where nothing is learned.</summary>
    string? LeftOut => null;

    /// <summary>Measures; may take minutes, says so on standard error.</summary>
    IEnumerable<Measured> Measure();
}
