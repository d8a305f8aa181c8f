using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Demo.Terrain;

/// <summary>Makes invented lakes whose bottom forms are known: for the demo, for tests and for scoring the finder of forms.</summary>
public static class LakeGenerator
{
    /// <summary>Makes a lake. The same seed and recipe give the same lake.</summary>
    /// <param name="seed">Seed of all chance.</param>
    /// <param name="recipe">What kind of lake.</param>
    public static GeneratedLake Generate(ulong seed, LakeRecipe recipe)
    {
        Require.NotNull(recipe);
        SeededRandom random = new(seed, 77);
        return recipe.Origin == LakeOrigin.IceBasins ? Ice(recipe, random) : Valleys(recipe, random);
    }

    private static GeneratedLake Valleys(LakeRecipe recipe, SeededRandom random)
    {
        List<Valley> valleys = ValleyPlan.Draw(recipe, random.Split(1), out int dam);
        ValleyForms forms = new(recipe, valleys, dam, random.Split(2));
        forms.Plan();
        ValleyCarver carver = new(valleys, new Canvas(ValleyCarver.FrameOf(valleys, recipe.CellM)));
        carver.Carve(dam);
        forms.Tell();
        Canvas canvas = carver.Canvas;
        PlacedForms placed = new(recipe, canvas, carver.ChannelM, random.Split(3));
        foreach (SpurPlan spur in forms.Spurs) placed.Spur(spur);
        Place(placed, recipe);
        Arms arms = new(carver.Owner, [.. valleys.Select(v => v.Name)]);
        return Finish(recipe, random.Split(4), canvas, carver.ChannelM, arms, [.. forms.Truth, .. placed.Truth]);
    }

    private static GeneratedLake Ice(LakeRecipe recipe, SeededRandom random)
    {
        IceBasins basins = new(recipe, random.Split(1));
        Canvas canvas = new(basins.FrameOf());
        byte[] owner = new byte[canvas.Frame.Count];
        basins.Carve(canvas, owner);
        basins.Tell();
        float[] channelM = new float[canvas.Frame.Count];
        Array.Fill(channelM, float.MaxValue);
        PlacedForms placed = new(recipe, canvas, channelM, random.Split(3));
        SeededRandom spurs = random.Split(5);
        int laid = 0;
        for (int tries = 0; tries < 60 * recipe.Points && laid < recipe.Points; tries++)
        {
            if (basins.TrySpur(spurs, canvas) is not { } spur) continue;
            placed.Spur(spur);
            laid++;
        }

        Place(placed, recipe);
        Arms arms = new(owner, [.. Enumerable.Range(1, basins.Count).Select(i => $"Basin {i}")]);
        return Finish(recipe, random.Split(4), canvas, channelM, arms, [.. basins.Truth, .. placed.Truth]);
    }

    private static void Place(PlacedForms placed, LakeRecipe recipe)
    {
        placed.Saddles(recipe.Saddles);
        placed.Humps(recipe.Humps);
        placed.Holes(recipe.Holes);
    }

    // The arm or basin of each cell, and their names.
    private sealed record Arms(byte[] Owner, List<string> Names);

    private static GeneratedLake Finish(LakeRecipe recipe, SeededRandom random, Canvas canvas, float[] channelM, Arms arms, List<TruthForm> forms)
    {
        canvas.Blur();
        bool[] clean = LargestLake(canvas.Frame, canvas.ElevationM);
        GroundKind[] ground = GroundTruth.Of(canvas, channelM, recipe, clean);
        Roughen(canvas, recipe, random);
        bool[] lake = LargestLake(canvas.Frame, canvas.ElevationM);
        float[] depthM = new float[canvas.Frame.Count];
        for (int i = 0; i < depthM.Length; i++) depthM[i] = lake[i] ? -canvas.ElevationM[i] : float.NaN;
        AddGround(canvas.Frame, ground, depthM, forms);
        forms.RemoveAll(f => f.Geometry.Shape == FormShape.Point && !IsWet(f.Place));
        return new GeneratedLake
        {
            Frame = canvas.Frame,
            DepthM = depthM,
            ElevationM = canvas.ElevationM,
            Forms = forms,
            Ground = ground,
            Arm = arms.Owner,
            ArmNames = arms.Names,
            Shore = CellOutline.Trace(canvas.Frame, canvas.ElevationM, [.. Enumerable.Range(0, lake.Length).Where(i => lake[i])]),
        };

        bool IsWet(PlanePoint place) => canvas.Frame.TryCellAt(place, out int ix, out int iy) && lake[canvas.Frame.Index(ix, iy)];
    }

    // Unevenness of three kinds: broad swells, lumps of the size of forms but low, and small stones and ripples.
    private static void Roughen(Canvas canvas, LakeRecipe recipe, SeededRandom random)
    {
        SmoothNoise noise = new(((ulong)random.NextUInt() << 32) | random.NextUInt());
        for (int i = 0; i < canvas.Frame.Count; i++)
        {
            if (canvas.ElevationM[i] > 40) continue;
            PlanePoint p = canvas.Frame.Centre(i);
            canvas.ElevationM[i] += (float)(recipe.RoughM * ((1.2 * noise.At(p.XM, p.YM, 14 * recipe.FormM))
                + (0.8 * noise.Octaves(p.XM + 7919, p.YM, 2.2 * recipe.FormM, 4))));
        }
    }

    private static bool[] LargestLake(GridFrame frame, float[] elevationM)
    {
        GroundKind[] wet = new GroundKind[frame.Count];
        for (int i = 0; i < wet.Length; i++) wet[i] = elevationM[i] < 0 ? GroundKind.Flat : GroundKind.Other;
        bool[] lake = new bool[frame.Count];
        List<int>? largest = GroundTruth.Groups(wet, frame.Nx, frame.Ny, GroundKind.Flat).MaxBy(g => g.Count);
        foreach (int i in largest ?? []) lake[i] = true;
        return lake;
    }

    private static void AddGround(GridFrame frame, GroundKind[] ground, float[] depthM, List<TruthForm> forms)
    {
        foreach ((GroundKind kind, FormClass form) in ((GroundKind, FormClass)[])[(GroundKind.Flat, FormClass.Flat), (GroundKind.Slope, FormClass.Slope)])
        {
            foreach (List<int> group in GroundTruth.Groups(ground, frame.Nx, frame.Ny, kind))
            {
                List<IReadOnlyList<PlanePoint>> rings = CellOutline.Trace(frame, depthM, [.. group]);
                double sum = 0;
                int wet = 0;
                foreach (int i in group)
                    if (depthM[i] > 0) { sum += depthM[i]; wet++; }
                if (rings.Count > 0 && wet > 0) forms.Add(new TruthForm(form, FormGeometry.Area(rings), sum / wet, double.NaN, Math.Sqrt(group.Count * frame.CellAreaM2)));
            }
        }
    }
}
