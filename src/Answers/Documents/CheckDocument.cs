namespace SecondShore.Answers.Documents;

/// <summary>The document that <c>check --json</c> prints.</summary>
public sealed record CheckDocument
{
    /// <summary>The lake's name, or the folder's where none is given.</summary>
    public required string Lake { get; init; }

    /// <summary>Whether an answer can be had.</summary>
    public required bool Usable { get; init; }

    /// <summary>What is there.</summary>
    public required IReadOnlyList<PartRow> Parts { get; init; }

    /// <summary>What was understood of each survey file.</summary>
    public required IReadOnlyList<SurveyRow> Surveys { get; init; }

    /// <summary>What is missing and what it would bring.</summary>
    public required IReadOnlyList<string> Missing { get; init; }

    /// <summary>Everything found wrong or worth saying.</summary>
    public required IReadOnlyList<ProblemRow> Problems { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }

    /// <summary>A part of the folder that was read.</summary>
    /// <param name="Part">Its name.</param>
    /// <param name="Says">What it holds, in one line.</param>
    public sealed record PartRow(string Part, string Says);

    /// <summary>One survey file as understood.</summary>
    public sealed record SurveyRow
    {
        /// <summary>The file.</summary>
        public required string File { get; init; }

        /// <summary>Its format in words.</summary>
        public required string Format { get; init; }

        /// <summary>What it holds.</summary>
        public required string Kind { get; init; }

        /// <summary>Unit of the depths and how it is known.</summary>
        public required string Unit { get; init; }

        /// <summary>Sense of the depths and how it is known.</summary>
        public required string Sense { get; init; }

        /// <summary>Coordinate system and how it is known.</summary>
        public required string Crs { get; init; }

        /// <summary>Number of soundings, lines, rings or cells.</summary>
        public required long Count { get; init; }

        /// <summary>Least depth below full pool, m; null without depths.</summary>
        public required double? MinDepthM { get; init; }

        /// <summary>Greatest depth below full pool, m; null without depths.</summary>
        public required double? MaxDepthM { get; init; }

        /// <summary>South, west, north, east, degrees; null when not known.</summary>
        public required IReadOnlyList<double>? Extent { get; init; }

        /// <summary>What should be confirmed.</summary>
        public required IReadOnlyList<string> Doubts { get; init; }
    }

    /// <summary>One problem.</summary>
    /// <param name="File">File.</param>
    /// <param name="Line">Line, where it has one.</param>
    /// <param name="Severity"><c>note</c>, <c>warning</c> or <c>error</c>.</param>
    /// <param name="Message">The sentence.</param>
    public sealed record ProblemRow(string File, int? Line, string Severity, string Message);
}
