namespace SecondShore.Engine.Motion.Layers;

/// <summary>
/// An interface model whose layers at rest follow the season: every few hours, where they have moved, a model of the new layers takes
/// over displacement and velocity. Between two such hours all laws of <see cref="InterfaceModel"/> hold; the displacement stays about
/// the new rest, so that each layer holds what the season gives it.
/// </summary>
internal sealed class LivingLayers
{
    private const int EveryHours = 6;

    // Less than this moves nothing that could be told: half a decimetre, two in a hundred of the strength (choices).
    private const double LeastMoveM = 0.05, LeastShare = 0.02;
    private readonly CoarseDepths _depths;
    private readonly LayerPair[] _course;
    private readonly double _latDeg;
    private readonly InterfaceOptions _options;

    /// <summary>Layers hour by hour, at least the first; the last holds on.</summary>
    public LivingLayers(CoarseDepths depths, LayerPair[] course, double latDeg, InterfaceOptions options)
    {
        (_depths, _course, _latDeg, _options) = (depths, course, latDeg, options);
        Model = new InterfaceModel(depths, course[0], latDeg, options);
    }

    /// <summary>The model of now.</summary>
    public InterfaceModel Model { get; private set; }

    /// <summary>The layers at rest of each hour asked for.</summary>
    public LayerPair[] Course(int hours) => [.. Enumerable.Range(0, hours).Select(At)];

    /// <summary>Takes the layers of the hours to come.</summary>
    /// <param name="hour">Whole hours since the first.</param>
    /// <returns>Whether another model took over.</returns>
    public bool Follow(int hour)
    {
        if (hour % EveryHours != 0) return false;
        LayerPair next = At(hour + (EveryHours / 2)), now = Model.Layers;
        double strongerMps2 = next.ReducedGravityMps2 - now.ReducedGravityMps2;
        if (Math.Abs(next.UpperM - now.UpperM) < LeastMoveM && Math.Abs(strongerMps2) < LeastShare * now.ReducedGravityMps2) return false;
        InterfaceModel model = new(_depths, next, _latDeg, _options);
        InterfaceState.TakeOver(model, Model);
        Model = model;
        return true;
    }

    private LayerPair At(int hour) => _course[Math.Clamp(hour, 0, _course.Length - 1)];
}
