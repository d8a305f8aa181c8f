using System.Text.Json.Serialization;
using SecondShore.Answers.Documents;

namespace SecondShore.Answers.Wind;

/// <summary>The document that <c>wind --json</c> prints.</summary>
public sealed record WindDocument
{
    /// <summary>The lake's name.</summary>
    public required string Lake { get; init; }

    /// <summary>First hour, local to the lake.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Thermocline depth at rest below today's surface, m; null without one.</summary>
    public required SpreadDocument? ThermoclineAtRestM { get; init; }

    /// <summary>Period of the slowest rocking, h; null without layers.</summary>
    public required double? PeriodH { get; init; }

    /// <summary>Depth whose current the rows tell, m.</summary>
    public required double CurrentDepthM { get; init; }

    /// <summary>Places, evenly over the water; arrays of the hours run in this order.</summary>
    public required IReadOnlyList<PlaceRow> Places { get; init; }

    /// <summary>Each hour.</summary>
    public required IReadOnlyList<HourRow> Hours { get; init; }

    /// <summary>The answer in words.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>Cautions that bear on these hours.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }

    /// <summary>A place.</summary>
    /// <param name="Lat">Latitude, degrees.</param>
    /// <param name="Lon">Longitude, degrees.</param>
    /// <param name="DepthM">Depth of the water, m.</param>
    public sealed record PlaceRow(double Lat, double Lon, double DepthM);

    /// <summary>One hour.</summary>
    public sealed record HourRow
    {
        /// <summary>The hour, local.</summary>
        public required DateTimeOffset Time { get; init; }

        /// <summary>Mean wind, m/s.</summary>
        public required double WindMps { get; init; }

        /// <summary>Where it comes from, degrees from north.</summary>
        public required double WindFromDeg { get; init; }

        /// <summary>Gusts, m/s.</summary>
        public required double GustMps { get; init; }

        /// <summary>How far the thermocline tips end to end, m.</summary>
        public required double TiltM { get; init; }

        /// <summary>Highest significant wave height anywhere, m, low, middle and high estimate.</summary>
        public required SpreadDocument HighestWaveM { get; init; }

        /// <summary>Worst class anywhere: <c>good</c>, <c>caution</c>, <c>poor</c> or <c>do_not_go</c>.</summary>
        public required string WorstComfort { get; init; }

        /// <summary>Share of the water that is comfortable.</summary>
        public required double GoodShare { get; init; }

        /// <summary>Thermocline depth at each place, m, 10th percentile; null without layers.</summary>
        [JsonPropertyName("thermocline_p10_m")]
        public required IReadOnlyList<double>? ThermoclineP10M { get; init; }

        /// <summary>Median.</summary>
        [JsonPropertyName("thermocline_p50_m")]
        public required IReadOnlyList<double>? ThermoclineP50M { get; init; }

        /// <summary>90th percentile.</summary>
        [JsonPropertyName("thermocline_p90_m")]
        public required IReadOnlyList<double>? ThermoclineP90M { get; init; }

        /// <summary>Significant wave height at each place, m.</summary>
        public required IReadOnlyList<double> WaveHeightM { get; init; }

        /// <summary>Peak period at each place, s.</summary>
        public required IReadOnlyList<double> WavePeriodS { get; init; }

        /// <summary>Comfort class at each place.</summary>
        public required IReadOnlyList<string> Comfort { get; init; }

        /// <summary>Speed of the current at the told depth (at the bottom where shallower), m/s.</summary>
        public required IReadOnlyList<double> CurrentMps { get; init; }

        /// <summary>Where it goes, degrees from north.</summary>
        public required IReadOnlyList<double> CurrentToDeg { get; init; }

        /// <summary>Drift at the surface, m/s.</summary>
        public required IReadOnlyList<double> DriftMps { get; init; }

        /// <summary>Where it goes, degrees from north.</summary>
        public required IReadOnlyList<double> DriftToDeg { get; init; }
    }
}
