namespace SecondShore.Engine.Rig;

/// <summary>What pulls at the lower end of the line: weight, drag, push and rubbing of the bottom.</summary>
internal readonly struct JigForces
{
    // Coulomb friction sets in over this speed, so that answers stay continuous down to a boat that stands still.
    private const double StandingMps = 0.01;

    private readonly double _weightN, _halfRhoArea, _speedMps, _friction, _sin, _cos;
    private readonly CurrentProfile _current;

    public JigForces(in TowCase tow, in TowSetup setup)
    {
        _weightN = tow.JigWeightN;
        _halfRhoArea = setup.HalfRho * tow.JigDragAreaM2;
        _speedMps = tow.SpeedMps;
        _friction = tow.FrictionCoefficient * Moving(tow.SpeedMps);
        _current = setup.Current;
        (_sin, _cos) = Math.SinCos(tow.SlopeRad);
    }

    /// <summary>The push of the bottom when the line bears nothing square to it, N.</summary>
    public double LargestPushN => _weightN * _cos;

    /// <summary>Share of full friction at a speed over the bottom, 0 to 1.</summary>
    public static double Moving(double speedMps) => Math.Tanh(speedMps / StandingMps);

    /// <summary>Tension vector at the jig for a push square to the bottom, at a height over it.</summary>
    public LineState Start(double pushN, double heightM)
    {
        _current.At(heightM, out double vx, out double vy);
        vx -= _speedMps;
        double perSpeed = _halfRhoArea * Math.Sqrt((vx * vx) + (vy * vy));
        // The push leans back from the slope and the rubbing runs down it: both in level and upright parts here.
        double along = pushN * (_sin + (_friction * _cos)), up = _weightN - (pushN * (_cos - (_friction * _sin)));
        return new LineState { Fx = along - (perSpeed * vx), Fy = -perSpeed * vy, Fz = up, Z = heightM };
    }
}

/// <summary>Height error at the rod for a push of the bottom.</summary>
internal readonly struct PushShot : IResidual
{
    private readonly TowSetup _setup;
    private readonly JigForces _jig;

    public PushShot(in TowSetup setup, in JigForces jig)
    {
        _setup = setup;
        _jig = jig;
    }

    public double At(double x) => HeightKernel.ResidualM(_setup, _jig.Start(x, 0), _setup.LineOutM);
}

/// <summary>Height error at the rod for a height of the lifted jig over the bottom.</summary>
internal readonly struct HeightShot : IResidual
{
    private readonly TowSetup _setup;
    private readonly JigForces _jig;

    public HeightShot(in TowSetup setup, in JigForces jig)
    {
        _setup = setup;
        _jig = jig;
    }

    public double At(double x) => HeightKernel.ResidualM(_setup, _jig.Start(0, x), _setup.LineOutM);
}

/// <summary>Height error at the rod for a length of line lying on the bottom.</summary>
internal readonly struct BedShot : IResidual
{
    private readonly TowSetup _setup;
    private readonly LineState _atJig;
    private readonly double _pullPerM;

    public BedShot(in TowSetup setup, in JigForces jig, double friction)
    {
        _setup = setup;
        _atJig = jig.Start(jig.LargestPushN, 0);
        _pullPerM = friction * JigForces.Moving(setup.SpeedMps) * Math.Max(setup.WetWeight, 0);
    }

    public LineState Start(double bedM)
    {
        LineState start = _atJig;
        start.Fx += _pullPerM * bedM;
        start.X += bedM;
        return start;
    }

    public double At(double x) => HeightKernel.ResidualM(_setup, Start(x), _setup.LineOutM - x);
}
