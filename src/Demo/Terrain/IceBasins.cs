using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Demo.Terrain;

/// <summary>A natural lake: a chain of bowls that run into one another over sills.</summary>
internal sealed class IceBasins
{
    private readonly LakeRecipe _recipe;
    private readonly List<Bowl> _bowls = [];

    public IceBasins(LakeRecipe recipe, SeededRandom random)
    {
        _recipe = recipe;
        double radiusM = recipe.LengthM / (recipe.Arms == 1 ? 2 : 1 + (0.75 * recipe.Arms)), heading = random.NextDouble(0, 6.28), x = 0, y = 0;
        int deepest = random.NextInt(Math.Max(1, recipe.Arms));
        for (int i = 0; i < Math.Max(1, recipe.Arms); i++)
        {
            double r = radiusM * random.NextDouble(0.75, 1.15);
            if (i > 0)
            {
                double apart = (r + _bowls[^1].RadiusM) * random.NextDouble(0.78, 0.86);
                heading += random.NextDouble(-0.7, 0.7);
                x += apart * Math.Cos(heading);
                y += apart * Math.Sin(heading);
            }

            double depthM = recipe.MaxDepthM * (i == deepest ? 1 : random.NextDouble(0.5, 0.85));
            _bowls.Add(new Bowl(new PlanePoint(x, y), r, depthM, random.NextDouble(2.2, 3.6), new SmoothNoise(((ulong)random.NextUInt() << 32) | random.NextUInt())));
        }
    }

    public List<TruthForm> Truth { get; } = [];

    public int Count => _bowls.Count;

    public GridFrame FrameOf()
    {
        double west = double.MaxValue, south = double.MaxValue, east = double.MinValue, north = double.MinValue;
        foreach (Bowl bowl in _bowls)
        {
            double reach = bowl.RadiusM * 1.45;
            west = Math.Min(west, bowl.Centre.XM - reach);
            east = Math.Max(east, bowl.Centre.XM + reach);
            south = Math.Min(south, bowl.Centre.YM - reach);
            north = Math.Max(north, bowl.Centre.YM + reach);
        }

        return new GridFrame(west, south, _recipe.CellM, (int)((east - west) / _recipe.CellM) + 1, (int)((north - south) / _recipe.CellM) + 1);
    }

    public void Carve(Canvas canvas, byte[] owner)
    {
        for (int c = 0; c < canvas.Frame.Count; c++)
        {
            PlanePoint place = canvas.Frame.Centre(c);
            double lowest = double.MaxValue;
            for (int b = 0; b < _bowls.Count; b++)
            {
                double e = _bowls[b].ElevationAtM(place);
                if (e < lowest) { lowest = e; owner[c] = (byte)b; }
            }

            canvas.ElevationM[c] = (float)lowest;
        }
    }

    /// <summary>Writes down sills as saddles, lesser bowls as holes, and the noses of land either side of a sill.</summary>
    public void Tell()
    {
        int deepest = 0;
        for (int i = 1; i < _bowls.Count; i++)
            if (_bowls[i].DepthM > _bowls[deepest].DepthM) deepest = i;
        double[] sills = new double[_bowls.Count];
        for (int i = 0; i + 1 < _bowls.Count; i++)
        {
            (PlanePoint sill, double sillM) = Crossing(_bowls[i], _bowls[i + 1], 0);
            if (sillM > -1) continue;
            Truth.Add(new(FormClass.Saddle, FormGeometry.Point(sill), -sillM, double.NaN, _recipe.FormM));
            foreach (int sign in (int[])[-1, 1]) TellNose(_bowls[i], _bowls[i + 1], sign);
            int gate = deepest > i ? i : i + 1;
            sills[gate] = -sillM;
        }

        for (int i = 0; i < _bowls.Count; i++)
        {
            if (i != deepest && _bowls[i].DepthM - sills[i] > 0.08 * _recipe.MaxDepthM)
                Truth.Add(new(FormClass.Hole, FormGeometry.Point(_bowls[i].Centre), _bowls[i].DepthM, double.NaN, _bowls[i].RadiusM * 0.5));
        }
    }

    /// <summary>A nose from the shore inward at a random place of a bowl.</summary>
    public SpurPlan? TrySpur(SeededRandom random, Canvas canvas)
    {
        Bowl bowl = _bowls[random.NextInt(_bowls.Count)];
        double angle = random.NextDouble(0, 2 * Math.PI), c = Math.Cos(angle), s = Math.Sin(angle), shoreM = bowl.RadiusM * 0.5;
        while (shoreM < bowl.RadiusM * 1.4 && canvas.AtM(new PlanePoint(bowl.Centre.XM + (c * shoreM), bowl.Centre.YM + (s * shoreM))) < 0) shoreM += _recipe.CellM;
        PlanePoint shore = new(bowl.Centre.XM + (c * shoreM), bowl.Centre.YM + (s * shoreM));
        if (Math.Abs(canvas.AtM(shore)) > 3) return null;
        double lengthM = Math.Min(bowl.RadiusM * random.NextDouble(0.45, 0.65), shoreM * 0.75), deepM = -canvas.AtM(new PlanePoint(shore.XM - (c * lengthM), shore.YM - (s * lengthM)));
        if (!(deepM > 0.25 * _recipe.MaxDepthM) || lengthM < 2.5 * _recipe.FormM) return null;
        bool clear = true;
        canvas.Within(new PlanePoint(shore.XM - (c * lengthM * 0.4), shore.YM - (s * lengthM * 0.4)), (lengthM * 0.7) + _recipe.FormM, (ix, iy, _) => clear &= !canvas.Taken[canvas.Frame.Index(ix, iy)]);
        foreach (TruthForm other in Truth)
            clear &= other.Class is not (FormClass.MainPoint or FormClass.Saddle) || other.Place.DistanceToM(shore) > lengthM + (3 * _recipe.FormM);
        if (!clear) return null;
        List<PlanePoint> crest = [];
        List<double> crestM = [];
        for (double t = -0.2 * lengthM; t <= lengthM; t += 0.7 * _recipe.CellM)
        {
            crest.Add(new PlanePoint(shore.XM - (c * t), shore.YM - (s * t)));
            crestM.Add(-t / lengthM * deepM);
        }

        return new SpurPlan(FormClass.MainPoint, crest, crestM, random.NextDouble(0.15, 0.3), _recipe.FormM * random.NextDouble(0.3, 0.6));
    }

    private void TellNose(Bowl a, Bowl b, int sign)
    {
        List<PlanePoint> crest = [];
        double middleM = 0;
        for (double out_ = 0.02; out_ < 1.2; out_ += 0.03)
        {
            (PlanePoint place, double levelM) = Crossing(a, b, sign * out_ * Math.Min(a.RadiusM, b.RadiusM));
            if (levelM > -0.3) break;
            crest.Insert(0, place);
            middleM = -levelM;
        }

        if (crest.Count > 3 && crest[0].DistanceToM(crest[^1]) > 1.5 * _recipe.FormM)
            Truth.Add(new(FormClass.MainPoint, FormGeometry.Line(crest), middleM, crest[0].BearingToDeg(crest[^1]), crest[0].DistanceToM(crest[^1])));
    }

    // The place on a line from bowl to bowl, shifted sideways, where both stand equally high.
    private static (PlanePoint Place, double ElevationM) Crossing(Bowl a, Bowl b, double sideM)
    {
        double d = a.Centre.DistanceToM(b.Centre), ux = (b.Centre.XM - a.Centre.XM) / d, uy = (b.Centre.YM - a.Centre.YM) / d;
        double low = 0, high = 1;
        for (int i = 0; i < 40; i++)
        {
            double t = 0.5 * (low + high);
            PlanePoint p = At(t);
            if (a.ElevationAtM(p) < b.ElevationAtM(p)) low = t; else high = t;
        }

        PlanePoint place = At(low);
        return (place, Math.Min(a.ElevationAtM(place), b.ElevationAtM(place)));

        PlanePoint At(double t) => new(a.Centre.XM + (ux * d * t) - (uy * sideM), a.Centre.YM + (uy * d * t) + (ux * sideM));
    }

    private sealed record Bowl(PlanePoint Centre, double RadiusM, double DepthM, double Power, SmoothNoise Noise)
    {
        public double ElevationAtM(PlanePoint place)
        {
            double dx = place.XM - Centre.XM, dy = place.YM - Centre.YM, d = Math.Sqrt((dx * dx) + (dy * dy));
            double c = d < 1e-6 ? 1 : dx / d, s = d < 1e-6 ? 0 : dy / d;
            double radius = RadiusM * (1 + (0.22 * Noise.Octaves(100 + (c * 10), 100 + (s * 10), 11, 2)));
            double rho = d / radius;
            return rho < 1 ? -DepthM * (1 - Math.Pow(rho, Power)) : DepthM * Power * 0.5 * (rho - 1) * (1 + rho);
        }
    }
}
