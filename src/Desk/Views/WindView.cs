using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Desk.Views;

/// <summary>What the wind does to the water, hour by hour. SI throughout; the fields of places travel beside it.</summary>
public sealed record WindView
{
    /// <summary>What was asked, with its hours cut to the weather at hand.</summary>
    public required WindAsk Asked { get; init; }

    /// <summary>Each hour.</summary>
    public required IReadOnlyList<WindHourView> Hours { get; init; }

    /// <summary>Thermocline depth at rest, m; null without layers.</summary>
    public Spread? AtRestM { get; init; }

    /// <summary>Period of the slowest rocking, h; null without layers.</summary>
    public double? PeriodH { get; init; }

    /// <summary>Index of the hour that tips most.</summary>
    public int Tipped { get; init; }

    /// <summary>Parts of the lake with the thermocline's depth hour by hour.</summary>
    public IReadOnlyList<WindPlaceView> Places { get; init; } = [];

    /// <summary>The answer in sentences.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>Cautions that bear on these hours.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>What had to be assumed.</summary>
    public IReadOnlyList<string> Assumed { get; init; } = [];
}

/// <summary>One hour.</summary>
/// <param name="At">The hour.</param>
/// <param name="WindMps">Mean wind, m s-1.</param>
/// <param name="GustMps">Gusts, m s-1.</param>
/// <param name="FromDeg">Where it comes from.</param>
/// <param name="Dark">Whether it is dark.</param>
/// <param name="TiltM">How far the thermocline tips end to end, m.</param>
/// <param name="WaveM">Highest waves anywhere, m.</param>
/// <param name="Comfort">Worst class anywhere: good, caution, poor, do_not_go.</param>
/// <param name="GoodShare">Share of the water that is comfortable.</param>
/// <param name="Said">The hour in a sentence.</param>
public sealed record WindHourView(DateTimeOffset At, double WindMps, double GustMps, double FromDeg, bool Dark, double TiltM, Spread WaveM, string Comfort,
    double GoodShare, string Said);

/// <summary>A part of the lake.</summary>
/// <param name="Name">Its name.</param>
/// <param name="OffsetM">How much deeper than at rest the thermocline lies, m, by hour.</param>
/// <param name="CurrentMps">Current at the thermocline's depth, m s-1, by hour.</param>
/// <param name="CurrentToDeg">Where it goes, by hour.</param>
/// <param name="WaveM">Waves, m, by hour.</param>
/// <param name="XM">Place in the lake's plane, m.</param>
/// <param name="YM">Place in the lake's plane, m.</param>
public sealed record WindPlaceView(string Name, double[] OffsetM, double[] CurrentMps, double[] CurrentToDeg, double[] WaveM, double XM, double YM);

/// <summary>A place whose hours are asked for, once the wind is worked out.</summary>
/// <param name="XM">East on the lake's plane, m.</param>
/// <param name="YM">North, m.</param>
public sealed record PointAsk(double XM, double YM);

/// <summary>What is asked of the wind.</summary>
/// <param name="Hours">Hours from now.</param>
public sealed record WindAsk(int Hours = 24);
