using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Learn;

/// <summary>
/// Draws from what is believed of rates after the log: bites of a span are Poisson with mean hours * base * product of the
/// factors of its levels * a factor of its visit. Each factor has a gamma law about its prior mean, whose width is shared
/// by the factor's levels and learned (partial pooling); the visit's factor is schooling (overdispersion).
/// </summary>
/// <remarks>
/// Gibbs sampling (Gelfand1990): each width is drawn with its levels integrated out (the counts are then negative
/// binomial), each level given its width is gamma. The base has the gamma law of its prior mean and doubt.
/// </remarks>
internal sealed class CatchSampler
{
    // Widths as gamma shapes: coefficients of variation from 0.9 to 0.1.
    private static readonly double[] Shapes = [1.2, 2, 3.5, 6, 12, 30, 100];
    private static readonly double[] ShapeLogPrior = [-1.2, -0.4, 0, 0, 0, -0.3, -0.8];
    private static readonly double[] SchoolShapes = [0.5, 1, 2, 4, 8, 20, 100];

    private readonly SeededRandom _random;
    private readonly int[] _bites;
    private readonly double[] _hours, _expected;
    private readonly int[][] _level;
    private readonly double[][] _prior;
    private readonly int[] _visit;
    private readonly double _baseShape, _baseRateH;
    private readonly double[] _visitFactor;
    private readonly CatchLaws? _known;
    private readonly double[][] _risingOfFactors, _risingOfVisits;

    /// <param name="hoursH">Hours of each span.</param>
    /// <param name="bites">Bites of each span.</param>
    /// <param name="level">[factor][span] level, -1 when not known.</param>
    /// <param name="prior">[factor][level] prior mean of the level's factor.</param>
    /// <param name="visit">Visit of each span.</param>
    /// <param name="visits">Number of visits.</param>
    /// <param name="meanPerH">Prior mean of the base rate.</param>
    /// <param name="sdPerH">Prior standard deviation of it.</param>
    /// <param name="random">Chance.</param>
    /// <param name="known">Widths when they are known; null learns them.</param>
    public CatchSampler(double[] hoursH, int[] bites, int[][] level, double[][] prior, int[] visit, int visits, double meanPerH, double sdPerH, SeededRandom random, CatchLaws? known = null)
    {
        _hours = hoursH;
        _bites = bites;
        _level = level;
        _prior = prior;
        _visit = visit;
        _random = random;
        _known = known;
        int all = 0;
        foreach (int count in bites) all += count;
        _risingOfFactors = Rising(Shapes, all);
        _risingOfVisits = Rising(SchoolShapes, all);
        _baseShape = meanPerH / sdPerH * (meanPerH / sdPerH);
        _baseRateH = meanPerH / (sdPerH * sdPerH);
        Base = meanPerH;
        Factors = new double[prior.Length][];
        Shape = new double[prior.Length];
        _visitFactor = new double[visits];
        Array.Fill(_visitFactor, 1);
        for (int f = 0; f < prior.Length; f++) { Factors[f] = [.. prior[f]]; Shape[f] = 6; }
        _expected = new double[hoursH.Length];
        for (int i = 0; i < _expected.Length; i++) _expected[i] = hoursH[i] * Product(i);
    }

    /// <summary>The base rate of the draw, bites per hour.</summary>
    public double Base { get; private set; }

    /// <summary>[factor][level] factors of the draw.</summary>
    public double[][] Factors { get; }

    /// <summary>[factor] gamma shape of the factor's levels in the draw.</summary>
    public double[] Shape { get; }

    /// <summary>Gamma shape of the visits' factors in the draw: schooling.</summary>
    public double VisitShape { get; private set; } = 2;

    /// <summary>Goes on to the next draw.</summary>
    public void Sweep()
    {
        // Expected counts are multiplied up by each change; afresh each sweep they do not drift.
        for (int i = 0; i < _expected.Length; i++) _expected[i] = _hours[i] * Product(i);
        DrawBase();
        for (int f = 0; f < Factors.Length; f++)
            Shape[f] = DrawGroup(_level[f], Factors[f], _prior[f], Shapes, ShapeLogPrior, _known?.FactorShapes[f]);
        if (_visitFactor.Length > 0) VisitShape = DrawGroup(_visit, _visitFactor, [], SchoolShapes, [], _known?.VisitShape);
    }

    private double Product(int span)
    {
        double product = Base * _visitFactor[_visit[span]];
        for (int f = 0; f < Factors.Length; f++)
            if (_level[f][span] >= 0) product *= Factors[f][_level[f][span]];
        return product;
    }

    private void DrawBase()
    {
        double exposure = 0;
        int bites = 0;
        for (int i = 0; i < _expected.Length; i++) { exposure += _expected[i]; bites += _bites[i]; }
        double next = Math.Max(1e-12, _random.NextGamma(_baseShape + bites) / (_baseRateH + (exposure / Base)));
        Scale(next / Base);
        Base = next;
    }

    private void Scale(double by)
    {
        for (int i = 0; i < _expected.Length; i++) _expected[i] *= by;
    }

    // Draws a group's shape with its members integrated out, then its members; returns the shape.
    private double DrawGroup(int[] memberOf, double[] factor, double[] prior, double[] shapes, double[] logPrior, double? known)
    {
        int members = factor.Length;
        Span<double> exposure = members <= 128 ? stackalloc double[members] : new double[members];
        Span<int> bites = members <= 128 ? stackalloc int[members] : new int[members];
        exposure.Clear();
        bites.Clear();
        for (int i = 0; i < memberOf.Length; i++)
        {
            if (memberOf[i] < 0) continue;
            exposure[memberOf[i]] += _expected[i] / factor[memberOf[i]];
            bites[memberOf[i]] += _bites[i];
        }

        double shape = known ?? DrawShape(exposure, bites, prior, shapes, logPrior);
        Span<double> change = members <= 128 ? stackalloc double[members] : new double[members];
        for (int m = 0; m < members; m++)
        {
            double mean = prior.Length > 0 ? prior[m] : 1.0;
            double next = Math.Max(1e-9, _random.NextGamma(shape + bites[m]) / ((shape / mean) + exposure[m]));
            change[m] = next / factor[m];
            factor[m] = next;
        }

        for (int i = 0; i < memberOf.Length; i++)
            if (memberOf[i] >= 0) _expected[i] *= change[memberOf[i]];
        return shape;
    }

    private double DrawShape(ReadOnlySpan<double> exposure, ReadOnlySpan<int> bites, double[] prior, double[] shapes, double[] logPrior)
    {
        double[][] rising = ReferenceEquals(shapes, Shapes) ? _risingOfFactors : _risingOfVisits;
        Span<double> log = stackalloc double[shapes.Length];
        double greatest = double.NegativeInfinity;
        for (int s = 0; s < shapes.Length; s++)
        {
            double a = shapes[s], logA = Math.Log(a), sum = logPrior.Length > 0 ? logPrior[s] : 0;
            for (int m = 0; m < bites.Length; m++)
            {
                if (exposure[m] <= 0) continue;
                double rate = prior.Length > 0 ? a / prior[m] : a;
                sum += (a * (prior.Length > 0 ? Math.Log(rate) : logA)) - ((a + bites[m]) * Math.Log(rate + exposure[m])) + rising[s][bites[m]];
            }

            log[s] = sum;
            greatest = Math.Max(greatest, sum);
        }

        double total = 0;
        for (int s = 0; s < log.Length; s++) { log[s] = Math.Exp(log[s] - greatest); total += log[s]; }
        double draw = _random.NextDouble() * total;
        for (int s = 0; s < log.Length; s++)
        {
            draw -= log[s];
            if (draw < 0) return shapes[s];
        }

        return shapes[^1];
    }

    // [shape][n] log of a (a+1) ... (a+n-1): the bites' part of a negative binomial, summed once for all draws.
    private static double[][] Rising(double[] shapes, int most)
    {
        double[][] rising = new double[shapes.Length][];
        for (int s = 0; s < shapes.Length; s++)
        {
            rising[s] = new double[most + 1];
            for (int n = 0; n < most; n++) rising[s][n + 1] = rising[s][n] + Math.Log(shapes[s] + n);
        }

        return rising;
    }
}

/// <summary>Known gamma shapes of each factor's levels and of visits: what an all-knowing rival of the tests is told.</summary>
internal sealed record CatchLaws(double[] FactorShapes, double VisitShape);
