using SecondShore.Engine.Day;

namespace SecondShore.Answers.Questions;

/// <summary>What the angler says of the boat; everything left out takes the usual.</summary>
public static class BoatWish
{
    // As much water is wanted under the keel as the boat draws, and never less.
    private static readonly double LeastMarginM = 0.6;

    /// <summary>The boat as wished.</summary>
    /// <param name="cruiseMps">Speed of a run on calm open water, m/s.</param>
    /// <param name="draftM">Depth the hull and drive need, m.</param>
    /// <param name="fuelL">Fuel that may be burnt, litres.</param>
    public static Boat Of(double? cruiseMps, double? draftM, double? fuelL)
    {
        Boat boat = new();
        if (cruiseMps is { } speed) boat = boat with { CruiseMps = speed };
        if (draftM is { } draft) boat = boat with { DraftM = draft, KeelMarginM = Math.Max(LeastMarginM, draft) };
        return fuelL is { } fuel ? boat with { FuelL = fuel } : boat;
    }
}
