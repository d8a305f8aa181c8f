namespace SecondShore.Answers.Documents;

/// <summary>The document that <c>day --json</c> prints.</summary>
public sealed record DayDocument
{
    /// <summary>The lake's name.</summary>
    public required string Lake { get; init; }

    /// <summary>The day planned for.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Ramp and time of launch.</summary>
    public required PlaceTime Launch { get; init; }

    /// <summary>Ramp and time home.</summary>
    public required PlaceTime Home { get; init; }

    /// <summary>Stops in order.</summary>
    public required IReadOnlyList<StopRow> Stops { get; init; }

    /// <summary>Length of the whole way on the water, m.</summary>
    public required double RouteLengthM { get; init; }

    /// <summary>Thermocline depth that day, m.</summary>
    public required SpreadDocument? ThermoclineM { get; init; }

    /// <summary>Date of turnover.</summary>
    public required DateSpreadDocument? Turnover { get; init; }

    /// <summary>The plan in words.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>Cautions that bear on this plan.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>Names of the files written.</summary>
    public required IReadOnlyList<string> Files { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }

    /// <summary>A place and a time.</summary>
    /// <param name="Name">The ramp's name.</param>
    /// <param name="Lat">Latitude, degrees.</param>
    /// <param name="Lon">Longitude, degrees.</param>
    /// <param name="Time">Local time.</param>
    public sealed record PlaceTime(string Name, double Lat, double Lon, DateTimeOffset Time);

    /// <summary>One stop.</summary>
    public sealed record StopRow
    {
        /// <summary>Id of the spot.</summary>
        public required string Spot { get; init; }

        /// <summary>Letter on the sheet.</summary>
        public required string Letter { get; init; }

        /// <summary>Its name, where the lake has one.</summary>
        public required string? Name { get; init; }

        /// <summary>Latitude, degrees.</summary>
        public required double Lat { get; init; }

        /// <summary>Longitude, degrees.</summary>
        public required double Lon { get; init; }

        /// <summary>Depth to fish, m.</summary>
        public required double DepthM { get; init; }

        /// <summary>Arrival, local time.</summary>
        public required DateTimeOffset Arrive { get; init; }

        /// <summary>Leaving, local time.</summary>
        public required DateTimeOffset Leave { get; init; }

        /// <summary>What to tie on and how to drag it.</summary>
        public required string Rig { get; init; }

        /// <summary>Why here and now.</summary>
        public required string Why { get; init; }
    }
}

/// <summary>The document that <c>day --json --days N</c> prints: practice first, the day that counts last.</summary>
/// <param name="Days">The days in order.</param>
public sealed record DaysDocument(IReadOnlyList<DayDocument> Days);
