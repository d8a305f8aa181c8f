using System.Globalization;

namespace SecondShore.TestKit.Figures;

/// <summary>How far a figure may stray from one run to the next before it counts as moved.</summary>
/// <param name="Share">Share of the stored value; 0 when only the amount counts.</param>
/// <param name="Amount">Amount in the figure's own unit; 0 when only the share counts.</param>
public readonly record struct FigureMargin(double Share, double Amount)
{
    /// <summary>For counts and for what a fixed seed gives: any other value has moved.</summary>
    public static FigureMargin Exact => default;

    /// <summary>For times: a share of the stored value.</summary>
    public static FigureMargin OfValue(double share) => new(share, 0);

    /// <summary>For errors and shares: an amount in the figure's unit.</summary>
    public static FigureMargin Within(double amount) => new(0, amount);

    /// <summary>Whether a new value lies further from the stored one than the wider of the two margins; NaN has moved.</summary>
    public bool Moved(double stored, double now)
    {
        double apart = Math.Abs(now - stored);
        return !(apart <= Math.Max(Amount, Share * Math.Abs(stored)));
    }

    /// <summary>In words for the page: <c>exact</c>, <c>25 %</c>, <c>0.05</c>.</summary>
    public override string ToString()
    {
        if (Share == 0 && Amount == 0) return "exact";
        string share = string.Create(CultureInfo.InvariantCulture, $"{100 * Share:0.#} %");
        string amount = Amount.ToString("G3", CultureInfo.InvariantCulture);
        if (Share == 0) return amount;
        return Amount == 0 ? share : $"{share} or {amount}";
    }
}
