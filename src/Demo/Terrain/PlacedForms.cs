using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Demo.Terrain;

/// <summary>Puts humps, saddles and holes where there is room for them.</summary>
internal sealed class PlacedForms(LakeRecipe recipe, Canvas canvas, float[] channelM, SeededRandom random)
{
    public List<TruthForm> Truth { get; } = [];

    public void Spur(SpurPlan plan)
    {
        canvas.AddSpur(plan.Crest, plan.CrestM, plan.SideTan, plan.RoundM);
        List<PlanePoint> wet = [];
        double middleM = 0;
        for (int k = 0; k < plan.Crest.Count; k++)
        {
            if (plan.CrestM[k] > -0.3 || canvas.AtM(plan.Crest[k]) > plan.CrestM[k] + 0.5) continue;
            wet.Add(plan.Crest[k]);
            middleM = plan.CrestM[k];
        }

        if (wet.Count > 2) Truth.Add(new(plan.Class, FormGeometry.Line(wet), -middleM / 2, wet[0].BearingToDeg(wet[^1]), wet[0].DistanceToM(wet[^1])));
    }

    public void Saddles(int wished) => Try(wished, () =>
    {
        double radiusM = recipe.FormM * random.NextDouble(0.9, 1.5), along = random.NextDouble(0, Math.PI), half = 0.75 * radiusM;
        if (!TryRoom(radiusM * 1.85, 0.09, out PlanePoint middle, out double depthM)) return false;
        double heightM = Height(depthM);
        PlanePoint a = new(middle.XM + (half * Math.Cos(along)), middle.YM + (half * Math.Sin(along)));
        PlanePoint b = new(middle.XM - (half * Math.Cos(along)), middle.YM - (half * Math.Sin(along)));
        canvas.AddDome(a, radiusM, heightM, 1, 0);
        canvas.AddDome(b, radiusM, heightM * random.NextDouble(0.85, 1), 1, 0);
        Truth.Add(new(FormClass.Hump, FormGeometry.Point(a), -canvas.AtM(a), double.NaN, radiusM));
        Truth.Add(new(FormClass.Hump, FormGeometry.Point(b), -canvas.AtM(b), double.NaN, radiusM));
        Truth.Add(new(FormClass.Saddle, FormGeometry.Point(middle), -canvas.AtM(middle), (450 - double.RadiansToDegrees(along)) % 180, half));
        return true;
    });

    public void Humps(int wished) => Try(wished, () =>
    {
        double radiusM = recipe.FormM * random.NextDouble(0.7, 1.6);
        if (!TryRoom(radiusM * 1.25, 0.09, out PlanePoint place, out double depthM)) return false;
        double along = random.NextDouble(0, Math.PI);
        canvas.AddDome(place, radiusM, Height(depthM), random.NextDouble(1, 1.4), along);
        Truth.Add(new(FormClass.Hump, FormGeometry.Point(place), -canvas.AtM(place), (450 - double.RadiansToDegrees(along)) % 180, radiusM));
        return true;
    });

    public void Holes(int wished) => Try(wished, () =>
    {
        double radiusM = recipe.FormM * random.NextDouble(0.8, 1.4);
        if (!TryRoom(radiusM * 1.2, 0.07, out PlanePoint place, out double depthM)) return false;
        canvas.AddDome(place, radiusM, -Math.Max(0.8 * Height(depthM), recipe.RoughM * 4), 1, 0);
        Truth.Add(new(FormClass.Hole, FormGeometry.Point(place), -canvas.AtM(place), double.NaN, radiusM));
        return true;
    });

    private double Height(double depthM) => Math.Min(depthM - (0.04 * recipe.MaxDepthM) - 0.5, Math.Max(depthM * random.NextDouble(0.25, 0.55), recipe.RoughM * 5));

    private static void Try(int wished, Func<bool> place)
    {
        int placed = 0;
        for (int tries = 0; tries < 600 * wished && placed < wished; tries++)
            if (place()) placed++;
    }

    private bool TryRoom(double radiusM, double maxTan, out PlanePoint place, out double depthM)
    {
        int c = random.NextInt(canvas.Frame.Count);
        place = canvas.Frame.Centre(c);
        depthM = -canvas.ElevationM[c];
        if (depthM < Math.Max(0.12 * recipe.MaxDepthM, 1.5)) return false;
        bool room = true;
        canvas.Within(place, radiusM, (ix, iy, _) =>
        {
            int i = canvas.Frame.Index(ix, iy);
            room = room && !canvas.Taken[i] && canvas.ElevationM[i] < -0.5 && channelM[i] > recipe.ChannelCutM / Valley.BankTan && canvas.SlopeAt(ix, iy) < maxTan;
        });
        return room;
    }
}
