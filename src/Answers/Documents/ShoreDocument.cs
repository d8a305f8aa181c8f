namespace SecondShore.Answers.Documents;

/// <summary>The document that <c>shore --json</c> prints.</summary>
public sealed record ShoreDocument
{
    /// <summary>The lake's name.</summary>
    public required string Lake { get; init; }

    /// <summary>The instant the answer stands for, local to the lake.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Thermocline depth below today's surface, m.</summary>
    public required SpreadDocument? ThermoclineM { get; init; }

    /// <summary>Length of the second shore at the median thermocline, m.</summary>
    public required double SecondShoreLengthM { get; init; }

    /// <summary>Area of bottom that the thermocline touches with a chance of one half or more, m2.</summary>
    public required double BeltAreaM2 { get; init; }

    /// <summary>Ranked spots, best first.</summary>
    public required IReadOnlyList<SpotRow> Spots { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }

    /// <summary>One spot.</summary>
    public sealed record SpotRow
    {
        /// <summary>Stable id within the answer.</summary>
        public required string Id { get; init; }

        /// <summary>Rank, 1 is best.</summary>
        public required int Rank { get; init; }

        /// <summary>The lake's own name for the place, where it has one.</summary>
        public required string? Name { get; init; }

        /// <summary>Latitude, degrees.</summary>
        public required double Lat { get; init; }

        /// <summary>Longitude, degrees.</summary>
        public required double Lon { get; init; }

        /// <summary>Depth of the bottom there, m.</summary>
        public required double DepthM { get; init; }

        /// <summary>Chance that the bottom there lies within reach of the thermocline, 0 to 1: the doubt about its depth and about the survey taken together.</summary>
        public required double ChanceInReach { get; init; }

        /// <summary>Relative worth, with spread.</summary>
        public required SpreadDocument Value { get; init; }

        /// <summary>Bottom form.</summary>
        public required string Form { get; init; }

        /// <summary>Why, in words and numbers.</summary>
        public required IReadOnlyList<string> Reasons { get; init; }

        /// <summary>Lines to drag along.</summary>
        public required IReadOnlyList<PassRow> Passes { get; init; }
    }

    /// <summary>One pass.</summary>
    /// <param name="LengthM">Length, m.</param>
    /// <param name="HeadingDeg">Heading at its start, degrees from north.</param>
    /// <param name="ShallowM">Least depth along it, m.</param>
    /// <param name="DeepM">Greatest depth along it, m.</param>
    /// <param name="LatLon">Its points, latitude and longitude in degrees by turns.</param>
    public sealed record PassRow(double LengthM, double HeadingDeg, double ShallowM, double DeepM, IReadOnlyList<double> LatLon);
}
