using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Demo.Terrain;

/// <summary>Draws the valleys of a drowned river: the main one and its arms.</summary>
internal static class ValleyPlan
{
    public static List<Valley> Draw(LakeRecipe recipe, SeededRandom random, out int damAxis)
    {
        double stepM = recipe.CellM;
        IReadOnlyList<PlanePoint> line = recipe.MainLine ?? DrawMain(recipe, random.Split(1));
        PathLine axis = new(PathLine.Smooth(line), stepM);
        damAxis = axis.IndexAt(axis.LengthM - (2.5 * recipe.HalfFloorM));
        Valley main = MakeMain(recipe, random.Split(2), axis, damAxis);
        List<Valley> valleys = [main];
        if (recipe.ArmLines is { } given)
        {
            foreach (NamedLine arm in given) valleys.Add(MakeArm(recipe, random.Split(100 + (ulong)valleys.Count), main, arm.Name, arm.Corners));
        }
        else
        {
            DrawArms(recipe, random.Split(3), valleys, damAxis);
        }

        return valleys;
    }

    private static List<PlanePoint> DrawMain(LakeRecipe recipe, SeededRandom random)
    {
        double heading = random.NextDouble(0, 2 * Math.PI), wave1 = recipe.LengthM / random.NextDouble(1.6, 2.8), wave2 = recipe.LengthM / random.NextDouble(3.5, 5);
        double turn1 = random.NextDouble(0.3, 0.55), turn2 = random.NextDouble(0.08, 0.2), phase1 = random.NextDouble(0, 6.28), phase2 = random.NextDouble(0, 6.28);
        double stepM = recipe.LengthM / 60, x = 0, y = 0;
        List<PlanePoint> points = [];
        double totalM = (recipe.LengthM * 1.08) + (2.5 * recipe.HalfFloorM);
        for (double s = 0; s <= totalM; s += stepM)
        {
            points.Add(new PlanePoint(x, y));
            double h = heading + (turn1 * Math.Sin((2 * Math.PI * s / wave1) + phase1)) + (turn2 * Math.Sin((2 * Math.PI * s / wave2) + phase2));
            x += stepM * Math.Cos(h);
            y += stepM * Math.Sin(h);
        }

        return points;
    }

    private static Valley MakeMain(LakeRecipe recipe, SeededRandom random, PathLine axis, int dam)
    {
        int n = axis.Count;
        double headM = axis.LengthM * 0.06, damM = dam * axis.StepM, deepM = recipe.MaxDepthM - recipe.ChannelCutM, power = random.NextDouble(0.65, 0.85);
        double[] floor = new double[n], half = new double[n];
        for (int i = 0; i < n; i++)
        {
            double u = ((i * axis.StepM) - headM) / (damM - headM);
            floor[i] = u > 0 ? -deepM * Math.Pow(Math.Min(u, 1.1), power) : -u * (damM - headM) * 0.02;
            double gorge = 1 - (0.45 * Smooth((u - 0.82) / 0.15));
            half[i] = recipe.HalfFloorM * (0.5 + (0.5 * Math.Clamp(u * 1.6, 0, 1))) * gorge;
        }

        double waveM = recipe.HalfFloorM * random.NextDouble(5.5, 7.5);
        return Make(recipe, random, new Course("Main Lake", true, axis, floor, half, recipe.HalfChannelM, _ => recipe.ChannelCutM, waveM, 0));
    }

    private static void DrawArms(LakeRecipe recipe, SeededRandom random, List<Valley> valleys, int dam)
    {
        Valley main = valleys[0];
        double reachM = recipe.HalfFloorM + (recipe.MaxDepthM / 0.25);
        for (int tries = 0; tries < 60 * recipe.Arms && valleys.Count <= recipe.Arms; tries++)
        {
            int at = (int)(dam * random.NextDouble(0.25, 0.86));
            int side = random.NextInt(2);
            (double tx, double ty) = main.Axis.Tangent(at);
            double turn = (side == 0 ? 1 : -1) * random.NextDouble(1.25, 1.9), h = Math.Atan2(ty, tx) + turn;
            double lengthM = (main.HalfM[side][at] * 1.5) + (recipe.LengthM * random.NextDouble(0.13, 0.26)), bend = random.NextDouble(-0.7, 0.7) / lengthM;
            List<PlanePoint> points = [ChannelAt(main, at)];
            double partM = lengthM / 20;
            for (int k = 0; k < 20; k++)
            {
                h += (bend * partM) + (0.16 * random.NextNormal() * Math.Sqrt(1 / 20.0) * 2);
                points.Add(new PlanePoint(points[^1].XM + (partM * Math.Cos(h)), points[^1].YM + (partM * Math.Sin(h))));
            }

            if (Clear(points, valleys, reachM, at)) valleys.Add(MakeArm(recipe, random.Split((ulong)tries), main, $"Arm {valleys.Count}", points));
        }
    }

    private static bool Clear(List<PlanePoint> points, List<Valley> valleys, double reachM, int at)
    {
        for (int k = 1; k < points.Count; k++)
        {
            double aloneM = Math.Min(1, k / 8.0) * reachM;
            if (Math.Sqrt(valleys[0].Axis.Nearest(points[k]).SquaredM2) < Math.Min(aloneM, points[k].DistanceToM(points[0]) * 0.75)) return false;
            for (int v = 1; v < valleys.Count; v++)
                if (Math.Sqrt(valleys[v].Axis.Nearest(points[k]).SquaredM2) < 1.25 * reachM) return false;
        }

        for (int v = 1; v < valleys.Count; v++)
        {
            int other = valleys[0].Axis.Nearest(valleys[v].Axis[0]).Index;
            if (Math.Abs(other - at) * valleys[0].Axis.StepM < 1.3 * reachM) return false;
        }

        return true;
    }

    private static Valley MakeArm(LakeRecipe recipe, SeededRandom random, Valley main, string name, IReadOnlyList<PlanePoint> corners)
    {
        // The arm starts in the main channel, so that its own channel joins it.
        int joinChannel = main.Channel.Nearest(corners[0]).Index, join = main.ChannelAxis[joinChannel];
        List<PlanePoint> joined = [main.Channel[joinChannel], .. corners.Skip(1)];
        PathLine axis = new(PathLine.Smooth(joined), recipe.CellM);
        int n = axis.Count;
        int side = main.SideOf(axis[n / 2], main.Axis.Nearest(axis[n / 2]).Index);
        double mouthM = main.HalfM[side][join] + 1e-6, headShare = random.NextDouble(0.84, 0.9), power = random.NextDouble(0.85, 1.15);
        double[] floor = new double[n], half = new double[n];
        double wideM = recipe.HalfFloorM * random.NextDouble(0.3, 0.45);
        for (int i = 0; i < n; i++)
        {
            double t = (double)i / (n - 1), rise = Math.Min(1, t / headShare);
            floor[i] = (main.FloorM[join] * (1 - Math.Pow(rise, power))) + (Math.Max(0, t - headShare) * axis.LengthM * 0.12);
            half[i] = wideM * (1 - (0.65 * t));
        }

        double armCutM = recipe.ChannelCutM * 0.6;
        int mouth = axis.IndexAt(mouthM);
        for (int i = Math.Max(0, join - (int)(2.2 * wideM / recipe.CellM)); i <= Math.Min(main.Axis.Count - 1, join + (int)(2.2 * wideM / recipe.CellM)); i++)
            main.Used[side][i] = true;
        double bedGapM = recipe.ChannelCutM - armCutM;
        Valley arm = Make(recipe, random, new Course(name, false, axis, floor, half, recipe.HalfChannelM * 0.5,
            i => armCutM + (bedGapM * Math.Exp(-i * recipe.CellM / (2 * recipe.HalfFloorM))), wideM * random.NextDouble(7, 9), mouth));
        for (int s = 0; s < 2; s++)
            for (int i = 0; i <= Math.Min(n - 1, mouth + (int)(main.OutAtM(join, side, -main.FloorM[join]) / recipe.CellM)); i++) arm.Used[s][i] = true;
        return arm;
    }

    // A valley's floor and half width along its axis, m, and how its channel lies in it: half width, cut, wave length, and how far it runs straight.
    private sealed record Course(string Name, bool IsMain, PathLine Axis, double[] FloorM, double[] HalfM,
        double HalfChannelM, Func<int, double> CutM, double WaveM, int Straight);

    private static Valley Make(LakeRecipe recipe, SeededRandom random, Course course)
    {
        PathLine axis = course.Axis;
        int n = axis.Count;
        double[][] halves = [new double[n], new double[n]], tans = [new double[n], new double[n]];
        SmoothNoise noise = new(((ulong)random.NextUInt() << 32) | random.NextUInt());
        double baseTan = random.NextDouble(0.2, 0.32);
        for (int side = 0; side < 2; side++)
        {
            for (int i = 0; i < n; i++)
            {
                double s = i * axis.StepM;
                halves[side][i] = course.HalfM[i] * (1 + (0.22 * noise.Octaves(s, 5000 * side, recipe.HalfFloorM * 5, 2)));
                tans[side][i] = baseTan * (1 + (0.3 * noise.At(s, (5000 * side) + 2500, recipe.HalfFloorM * 6)));
            }
        }

        double[] offset = Meander(random, axis, halves, course.HalfChannelM * 1.6, course.WaveM, course.Straight);
        List<PlanePoint> raw = [];
        for (int i = 0; i < n; i++) raw.Add(axis.Beside(i, offset[i]));
        PathLine channel = new(raw, axis.StepM);
        int[] nearest = new int[channel.Count];
        double[] bed = new double[channel.Count];
        for (int i = 0; i < channel.Count; i++)
        {
            nearest[i] = axis.Nearest(channel[i]).Index;
            bed[i] = course.FloorM[nearest[i]] - course.CutM(i);
        }

        return new Valley
        {
            Name = course.Name,
            IsMain = course.IsMain,
            Axis = axis,
            FloorM = course.FloorM,
            HalfM = halves,
            WallTan = tans,
            Used = [new bool[n], new bool[n]],
            OffsetM = offset,
            Channel = channel,
            ChannelAxis = nearest,
            BedM = bed,
            HalfChannelM = course.HalfChannelM,
            ToeM = recipe.FormM * 0.35,
        };
    }

    // The bed swings from wall to wall; wave length and reach wander a little.
    private static double[] Meander(SeededRandom random, PathLine axis, double[][] halves, double keepM, double waveM, int straight)
    {
        double[] offset = new double[axis.Count];
        double phase = random.NextDouble(0, 2 * Math.PI), wander = random.NextDouble(0, 6.28);
        for (int i = 0; i < axis.Count; i++)
        {
            double s = i * axis.StepM, widthM = Math.Min(halves[0][i], halves[1][i]);
            double local = waveM * (1 + (0.18 * Math.Sin((s / (waveM * 2.3)) + wander)));
            phase += 2 * Math.PI * axis.StepM / local;
            double reach = Math.Max(0, widthM - keepM) * (0.8 + (0.2 * Math.Sin((s / (waveM * 1.7)) + (2 * wander))));
            offset[i] = reach * Math.Sin(phase) * Smooth((i - straight) * axis.StepM / (1.5 * widthM)) * Smooth(i * axis.StepM / (2 * widthM));
        }

        return offset;
    }

    private static PlanePoint ChannelAt(Valley main, int axis) => main.Axis.Beside(axis, main.OffsetM[axis]);

    internal static double Smooth(double t)
    {
        t = Math.Clamp(t, 0, 1);
        return t * t * (3 - (2 * t));
    }
}
