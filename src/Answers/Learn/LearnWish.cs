using SecondShore.Engine.Learn;

namespace SecondShore.Answers.Learn;

/// <summary>What is asked of the log; everything left out is taken from the lake's own files.</summary>
public sealed record LearnWish
{
    /// <summary>Bounds of the hours ahead that may be asked, H.</summary>
    public const double LeastHoursAheadH = 0.5, MostHoursAheadH = 200;

    /// <summary>Bounds of the minutes from one stop to the next that may be asked.</summary>
    public const double LeastTravelMin = 1, MostTravelMin = 240;

    /// <summary>What the fish eat there: crayfish, baitfish, sunfish; empty takes what the log says was eaten.</summary>
    public IReadOnlyList<string> Eats { get; init; } = [];

    /// <summary>Dawn, dusk or heavy cloud ahead; null does not say.</summary>
    public bool? LowLight { get; init; }

    /// <summary>Hours of fishing ahead, H: with few, less is tried and more is harvested.</summary>
    public double HoursAheadH { get; init; } = 6;

    /// <summary>Time from one stop to the next, H; null takes the log's own gaps between stops, else a quarter of an hour.</summary>
    public double? TravelH { get; init; }

    /// <summary>What is believed before the log.</summary>
    public CatchPriors Priors { get; init; } = CatchPriors.Default;

    /// <summary>Seed: the same log and seed give the same answer.</summary>
    public ulong Seed { get; init; } = 1;
}
