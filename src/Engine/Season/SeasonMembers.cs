namespace SecondShore.Engine.Season;

/// <summary>The members behind an outlook, for scores and for charts of single courses. Days run from <see cref="StartUtc"/>.</summary>
public sealed class SeasonMembers
{
    private readonly SeasonModel _model;
    private readonly MemberTrace[] _traces;

    internal SeasonMembers(SeasonModel model, double[] weight, MemberTrace[] traces)
    {
        (_model, _traces) = (model, traces);
        Weights = weight;
    }

    /// <summary>Weights of the members, sum 1.</summary>
    public IReadOnlyList<double> Weights { get; }

    /// <summary>Number of members.</summary>
    public int Count => _traces.Length;

    /// <summary>Start of day 0, UTC.</summary>
    public DateTimeOffset StartUtc => _model.Timeline.StartUtc;

    /// <summary>Depths of the kept profiles, m below the surface of the day.</summary>
    public IReadOnlyList<double> ProfileDepthsM => _model.ProfileDepthsM;

    /// <summary>Daily mean temperature at 1 m, degC, by day; NaN outside the run.</summary>
    public ReadOnlySpan<double> TopC(int member, int arm = 0) => _traces[member].Days[arm].TopC;

    /// <summary>Daily mean temperature near the bottom, degC, by day; NaN outside the run.</summary>
    public ReadOnlySpan<double> BottomC(int member, int arm = 0) => _traces[member].Days[arm].BottomC;

    /// <summary>Morning profile of a day, degC, at <see cref="ProfileDepthsM"/>.</summary>
    public ReadOnlySpan<float> ProfileC(int member, int day, int arm = 0) =>
        _traces[member].Days[arm].TempC.AsSpan(day * _model.ProfileDepthsM.Length, _model.ProfileDepthsM.Length);

    /// <summary>Depth below which oxygen is short, m, by day; NaN where the bottom has enough.</summary>
    public ReadOnlySpan<float> OxygenFloorM(int member, int arm = 0) => _traces[member].Days[arm].FloorM;

    /// <summary>What is left open of it, standard deviation, m, by day.</summary>
    public ReadOnlySpan<float> OxygenFloorSdM(int member, int arm = 0) => _traces[member].Days[arm].FloorSdM;
}
