namespace SecondShore.Engine.Water;

/// <summary>The three bands of <see cref="UnderwaterLight.LeftThreeBandShare"/> followed down in even steps: one multiplication a band and step.</summary>
public struct LightWalk
{
    private readonly double _infraredStep, _visibleStep, _redStep;
    private double _infrared, _visible, _red;

    /// <summary>Starts at a depth.</summary>
    /// <param name="extinctionPerM">Extinction of the visible band, m-1.</param>
    /// <param name="depthM">Depth of the start, m, 0 or more.</param>
    /// <param name="stepM">Length of a step, m.</param>
    public LightWalk(double extinctionPerM, double depthM, double stepM)
    {
        double visible = 1.0 - UnderwaterLight.InfraredShare, redPerM = extinctionPerM + UnderwaterLight.RedExtinctionPerM;
        _infrared = UnderwaterLight.InfraredShare * Math.Exp(-UnderwaterLight.InfraredExtinctionPerM * depthM);
        _visible = visible * (1.0 - UnderwaterLight.RedShare) * Math.Exp(-extinctionPerM * depthM);
        _red = visible * UnderwaterLight.RedShare * Math.Exp(-redPerM * depthM);
        _infraredStep = Math.Exp(-UnderwaterLight.InfraredExtinctionPerM * stepM);
        _visibleStep = Math.Exp(-extinctionPerM * stepM);
        _redStep = Math.Exp(-redPerM * stepM);
    }

    /// <summary>Share of the entering shortwave left here, 0 to 1.</summary>
    public readonly double LeftShare => _infrared + _visible + _red;

    /// <summary>One step down.</summary>
    public void Down()
    {
        _infrared *= _infraredStep;
        _visible *= _visibleStep;
        _red *= _redStep;
    }
}
