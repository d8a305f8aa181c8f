using System.Text.Json.Serialization;
using SecondShore.Answers.Learn;

namespace SecondShore.Desk.Views;

/// <summary>What is asked of the log. Null takes what the lake's own files say.</summary>
/// <param name="Eats">What the fish eat there: crayfish, baitfish or sunfish.</param>
/// <param name="LowLight">Whether dawn, dusk or heavy cloud lies ahead.</param>
/// <param name="HoursAheadH">Hours of fishing ahead, H.</param>
/// <param name="TravelMin">Minutes from one stop to the next.</param>
public sealed record LearnAsk(string? Eats = null, bool? LowLight = null, double? HoursAheadH = null, double? TravelMin = null)
{
    /// <summary>Whether hours and minutes can be.</summary>
    [JsonIgnore]
    public bool IsSound => (HoursAheadH is null or (>= LearnWish.LeastHoursAheadH and <= LearnWish.MostHoursAheadH))
        && (TravelMin is null or (>= LearnWish.LeastTravelMin and <= LearnWish.MostTravelMin));
}
