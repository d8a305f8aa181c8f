using SecondShore.Engine.Motion.Layers;

namespace SecondShore.Engine.Motion;

/// <summary>What pushes one member of the interface model.</summary>
internal interface IForcing
{
    /// <summary>Sets the stress of an instant.</summary>
    void Apply(DateTimeOffset at, InterfaceModel model);

    /// <summary>Forgets what the model was told, as another one took its place.</summary>
    void Renew();
}

/// <summary>One wind over the whole lake, sheltered by the fetch.</summary>
internal sealed class EvenForcing(WindHistory wind, ShelterByHour shelter, MotionGrid motion) : IForcing
{
    private readonly float[] _openShare = new float[motion.Frame.Count];
    private int _shelterStep = -1;

    /// <inheritdoc/>
    public void Renew() => _shelterStep = -1;

    /// <inheritdoc/>
    public void Apply(DateTimeOffset at, InterfaceModel model)
    {
        int step = wind.StepAt(at);
        if (step != _shelterStep)
        {
            shelter.Fill(step, _openShare);
            model.SetShelter(_openShare);
            _shelterStep = step;
        }

        (double eastPa, double northPa) = wind.StressAt(at);
        model.SetStress(eastPa, northPa);
    }
}

/// <summary>Winds by place: each cell its own stress, linear between the middles of the hours.</summary>
internal sealed class PlacedForcing(PlacedWinds winds) : IForcing
{
    private readonly float[] _eastPa = winds.NewFrame(), _northPa = winds.NewFrame();
    private PlacedWinds.Hour _before = new(winds), _after = new(winds);
    private long _hour = long.MinValue;

    /// <inheritdoc/>
    public void Renew()
    {
        // Each part of an hour is laid anew anyway.
    }

    /// <inheritdoc/>
    public void Apply(DateTimeOffset at, InterfaceModel model)
    {
        (long hour, double share) = StationWind.HourOf(at);
        if (hour == _hour + 1) (_before, _after) = (_after, _before);
        else if (hour != _hour) winds.Fill(hour, _before);
        if (hour != _hour) winds.Fill(hour + 1, _after);
        _hour = hour;
        float t = (float)share;
        foreach (int cell in winds.Cells)
        {
            _eastPa[cell] = _before.EastPa[cell] + (t * (_after.EastPa[cell] - _before.EastPa[cell]));
            _northPa[cell] = _before.NorthPa[cell] + (t * (_after.NorthPa[cell] - _before.NorthPa[cell]));
        }

        model.SetStress(_eastPa, _northPa);
    }
}
