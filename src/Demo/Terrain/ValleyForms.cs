using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Demo.Terrain;

/// <summary>Places forms on valleys before they are carved (bluffs, benches, terraces) and tells where they and the valleys' own forms lie.</summary>
internal sealed class ValleyForms(LakeRecipe recipe, List<Valley> valleys, int dam, SeededRandom random)
{
    private readonly List<(Valley Valley, int From, int To, int Side)> _bluffs = [];

    public List<TruthForm> Truth { get; } = [];

    public List<SpurPlan> Spurs { get; } = [];

    /// <summary>Chooses stretches for bluffs, spurs, benches and terraces, and shapes the walls.</summary>
    public void Plan()
    {
        Valley main = valleys[0];
        for (int i = dam - (int)(recipe.HalfFloorM / recipe.CellM); i < main.Axis.Count; i++) main.Used[0][i] = main.Used[1][i] = true;
        PlanSpurs(main, recipe.Points, true);
        for (int tries = 0; tries < 60 * recipe.Bluffs && _bluffs.Count < recipe.Bluffs; tries++) TryBluff();
        for (int v = 1; v < valleys.Count; v++) PlanSpurs(valleys[v], recipe.PointsPerArm, false);
        int benches = 0;
        for (int tries = 0; tries < 60 * recipe.Ledges && benches < (recipe.Ledges + 1) / 2; tries++)
            if (TryBench()) benches++;
        int terraces = 0;
        for (int tries = 0; tries < 60 * recipe.Ledges && terraces < recipe.Ledges / 2; tries++)
            if (TryTerrace(main)) terraces++;
        foreach ((Valley valley, int from, int to, int side) in _bluffs) Steepen(valley, from, to, side);
    }

    /// <summary>Writes down the forms that the valleys themselves make: channels, bends, junctions, corners at arm mouths, bluffs, ledges.</summary>
    public void Tell()
    {
        foreach (Valley valley in valleys)
        {
            TellChannel(valley);
            TellLedges(valley);
        }

        for (int v = 1; v < valleys.Count; v++)
        {
            Valley arm = valleys[v];
            int join = valleys[0].Channel.Nearest(arm.Channel[0]).Index;
            if (valleys[0].BedM[join] < -1) Truth.Add(new(FormClass.Junction, FormGeometry.Point(arm.Channel[0]), -valleys[0].BedM[join], double.NaN, recipe.HalfChannelM * 2, $"mouth of {arm.Name}"));
            for (int side = 0; side < 2; side++) TellCorner(arm, side);
        }

        foreach ((Valley valley, int from, int to, int side) in _bluffs)
        {
            List<PlanePoint> wall = [];
            for (int i = from; i <= to; i++) wall.Add(valley.OnWall(i, side, -valley.FloorM[i] * 0.5));
            double depthM = -valley.FloorM[(from + to) / 2];
            Truth.Add(new(FormClass.BluffWall, FormGeometry.Line(wall), depthM, wall[0].BearingToDeg(wall[^1]), (to - from) * valley.Axis.StepM));
            Truth.Add(new(FormClass.BluffEnd, FormGeometry.Point(wall[0]), depthM, double.NaN, recipe.FormM));
            Truth.Add(new(FormClass.BluffEnd, FormGeometry.Point(wall[^1]), depthM, double.NaN, recipe.FormM));
        }
    }

    private void PlanSpurs(Valley valley, int wished, bool isMain)
    {
        int placed = 0;
        for (int tries = 0; tries < 80 * wished && placed < wished; tries++)
        {
            int side = random.NextInt(2), at = random.NextInt(Math.Min(valley.Axis.Count, isMain ? dam : int.MaxValue));
            double deepM = -valley.FloorM[at];
            if (deepM < 0.15 * recipe.MaxDepthM) continue;
            double sign = side == 0 ? 1 : -1, shoreM = valley.HalfM[side][at] + valley.OutAtM(at, side, deepM), wallM = shoreM - valley.HalfM[side][at];
            double toChannelM = shoreM - (sign * valley.OffsetM[at]) - (2.5 * valley.HalfChannelM);
            double lengthM = toChannelM * random.NextDouble(0.75, 0.95);
            if (lengthM < 1.45 * wallM || lengthM < 2.5 * recipe.FormM) continue;
            int halfSpan = (int)((1.6 * recipe.FormM + (0.5 * wallM)) / recipe.CellM);
            if (!valley.TryReserve(side, at - halfSpan, at + halfSpan, (int)(recipe.FormM / recipe.CellM))) continue;
            PlanePoint root = valley.Axis.Beside(at, sign * (shoreM + (0.2 * lengthM)));
            (double tx, double ty) = valley.Axis.Tangent(at);
            FormClass kind = isMain ? FormClass.MainPoint : FormClass.SecondaryPoint;
            Spurs.Add(Spur(kind, root, sign * ty, -sign * tx, lengthM, deepM));
            placed++;
        }
    }

    // A spur from the shore toward the valley's floor, down to its depth; inX and inY point away from the wall.
    private SpurPlan Spur(FormClass kind, PlanePoint root, double inX, double inY, double lengthM, double deepM)
    {
        double skew = random.NextDouble(-0.3, 0.3);
        double dx = (inX * Math.Cos(skew)) - (inY * Math.Sin(skew)), dy = (inX * Math.Sin(skew)) + (inY * Math.Cos(skew));
        List<PlanePoint> crest = [];
        List<double> crestM = [];
        double stepM = recipe.CellM * 0.7;
        for (double t = 0; t <= 1.2 * lengthM; t += stepM)
        {
            crest.Add(new PlanePoint(root.XM + (dx * t), root.YM + (dy * t)));
            crestM.Add(-(t - (0.2 * lengthM)) / lengthM * (deepM - 0.5));
        }

        return new SpurPlan(kind, crest, crestM, random.NextDouble(0.22, 0.38), recipe.FormM * random.NextDouble(0.3, 0.6));
    }

    private void TryBluff()
    {
        Valley valley = valleys[random.NextInt(4) == 0 ? random.NextInt(valleys.Count) : 0];
        int side = random.NextInt(2), span = (int)(recipe.FormM * random.NextDouble(4, 10) / recipe.CellM), from = random.NextInt(valley.Axis.Count), to = from + span;
        if (to >= valley.Axis.Count || (valley.IsMain && to >= dam) || -valley.FloorM[from] < 0.3 * recipe.MaxDepthM) return;
        double sign = side == 0 ? 1 : -1;
        bool undercut = sign * valley.OffsetM[(from + to) / 2] > 0.4 * valley.HalfM[side][from];
        if (!undercut && random.NextInt(3) > 0) return;
        if (valley.TryReserve(side, from, to, (int)(1.5 * recipe.FormM / recipe.CellM))) _bluffs.Add((valley, from, to, side));
    }

    private void Steepen(Valley valley, int from, int to, int side)
    {
        double tan = random.NextDouble(1.0, 1.6);
        int soft = Math.Max(1, (int)(0.3 * recipe.FormM / recipe.CellM));
        for (int i = Math.Max(0, from - soft); i <= Math.Min(valley.Axis.Count - 1, to + soft); i++)
        {
            double share = i < from ? (from - i) / (soft + 1.0) : i > to ? (i - to) / (soft + 1.0) : 0;
            valley.WallTan[side][i] = (tan * (1 - share)) + (valley.WallTan[side][i] * share);
        }
    }

    private bool TryBench()
    {
        Valley valley = valleys[random.NextInt(3) == 0 ? random.NextInt(valleys.Count) : 0];
        int side = random.NextInt(2), span = (int)(recipe.FormM * random.NextDouble(6, 12) / recipe.CellM), from = random.NextInt(valley.Axis.Count), to = from + span;
        if (to >= valley.Axis.Count || (valley.IsMain && to >= dam)) return false;
        double deepM = -Math.Max(valley.FloorM[from], valley.FloorM[to]);
        if (deepM < 0.35 * recipe.MaxDepthM || !valley.TryReserve(side, from, to, (int)(recipe.FormM / recipe.CellM))) return false;
        valley.Benches.Add(new Bench(from, to, side, deepM * random.NextDouble(0.35, 0.65), recipe.FormM * random.NextDouble(0.9, 1.6)));
        return true;
    }

    private bool TryTerrace(Valley valley)
    {
        int side = random.NextInt(2), span = (int)(recipe.FormM * random.NextDouble(6, 12) / recipe.CellM), from = random.NextInt(valley.Channel.Count), to = from + span;
        if (to >= valley.Channel.Count || valley.ChannelAxis[to] >= dam) return false;
        int middle = valley.ChannelAxis[(from + to) / 2];
        double sign = side == 0 ? 1 : -1, roomM = double.MaxValue;
        for (int i = from; i <= to; i++)
        {
            int a = valley.ChannelAxis[i];
            roomM = Math.Min(roomM, valley.HalfM[side][a] - (sign * valley.OffsetM[a]));
        }

        double fromChannelM = (2.2 * valley.HalfChannelM) + (recipe.ChannelCutM / Valley.BankTan) + (recipe.FormM * 0.4), riseM = Math.Max(recipe.MaxDepthM * 0.05, 0.8) * random.NextDouble(1, 1.8), runM = riseM / 0.35;
        if (-valley.FloorM[middle] < riseM * 2.5 || roomM < fromChannelM + runM + recipe.FormM) return false;
        int a0 = valley.ChannelAxis[from], a1 = valley.ChannelAxis[to];
        for (int i = a0; i <= a1; i++)
            if (valley.Used[side][i]) return false;
        for (int i = a0; i <= a1; i++) valley.Used[side][i] = true;
        valley.Terraces.Add(new Terrace(from, to, side, fromChannelM, riseM, runM));
        return true;
    }

    private void TellChannel(Valley valley)
    {
        int from = 0, to = valley.IsMain ? dam - (int)(recipe.HalfFloorM / recipe.CellM) : valley.Channel.Count - 1;
        List<PlanePoint> points = [];
        List<int> indices = [];
        for (int i = from; i < valley.Channel.Count && valley.ChannelAxis[i] <= to; i++)
        {
            if (valley.BedM[i] > -1) continue;
            points.Add(valley.Channel[i]);
            indices.Add(i);
        }

        if (points.Count < 4) return;
        Truth.Add(new(valley.IsMain ? FormClass.MainChannel : FormClass.SideChannel, FormGeometry.Line(points), -valley.BedM[indices[points.Count / 2]],
            points[0].BearingToDeg(points[^1]), points.Count * valley.Channel.StepM, valley.Name));
        foreach (Bend bend in Bend.Find(points, valley.Channel.StepM, valley.HalfChannelM * 2))
            Truth.Add(new(FormClass.ChannelBend, FormGeometry.Point(points[bend.Apex]), -valley.BedM[indices[bend.Apex]], double.NaN, bend.LengthM));
    }

    private void TellLedges(Valley valley)
    {
        foreach (Bench b in valley.Benches)
        {
            List<PlanePoint> lip = [];
            for (int i = b.From; i <= b.To; i++) lip.Add(valley.OnWall(i, b.Side, b.AboveFloorM));
            Truth.Add(new(FormClass.Ledge, FormGeometry.Line(lip), -valley.FloorM[(b.From + b.To) / 2] - b.AboveFloorM, lip[0].BearingToDeg(lip[^1]), (b.To - b.From) * valley.Axis.StepM));
        }

        foreach (Terrace t in valley.Terraces)
        {
            List<PlanePoint> lip = [];
            for (int i = t.From; i <= t.To; i++) lip.Add(valley.Channel.Beside(i, (t.Side == 0 ? 1 : -1) * (t.FromChannelM + (0.5 * t.RunM))));
            int middle = valley.ChannelAxis[(t.From + t.To) / 2];
            Truth.Add(new(FormClass.Ledge, FormGeometry.Line(lip), -valley.FloorM[middle] - t.RiseM, lip[0].BearingToDeg(lip[^1]), (t.To - t.From) * valley.Channel.StepM));
        }
    }

    // Where an arm's wall meets the main valley's wall the land between them noses into the lake: the line on which both stand equally high.
    private void TellCorner(Valley arm, int side)
    {
        Valley main = valleys[0];
        double floorM = main.FloorM[main.Axis.Nearest(arm.Axis[0]).Index];
        List<PlanePoint> crest = [];
        double deepestM = 0;
        for (double level = -0.5; level > floorM + 1; level += floorM / 14)
        {
            bool below = false;
            for (int i = 2; i < arm.Axis.Count; i++)
            {
                if (arm.FloorM[i] >= level) break;
                PlanePoint place = arm.OnWall(i, side, level - arm.FloorM[i]);
                double elsewhere = main.ElevationAtM(place);
                if (elsewhere < level) { below = true; continue; }
                if (below) { crest.Add(place); deepestM = -level; }
                break;
            }
        }

        if (crest.Count < 3) return;
        double lengthM = crest[0].DistanceToM(crest[^1]);
        if (lengthM < 1.2 * recipe.FormM) return;
        Truth.Add(new(FormClass.MainPoint, FormGeometry.Line(crest), deepestM / 2, crest[0].BearingToDeg(crest[^1]), lengthM, $"{arm.Name} mouth"));
    }
}

/// <summary>A nose of land to be laid onto the carved valley.</summary>
internal sealed record SpurPlan(FormClass Class, IReadOnlyList<PlanePoint> Crest, IReadOnlyList<double> CrestM, double SideTan, double RoundM);

/// <summary>A bend of a line: the stretch between two changes of turn.</summary>
internal sealed record Bend(int Apex, double TurnRad, double LengthM)
{
    /// <summary>Bends that turn by at least 50 degrees, by the line's heading smoothed over a width.</summary>
    public static List<Bend> Find(IReadOnlyList<PlanePoint> points, double stepM, double widthM)
    {
        int lag = Math.Max(2, (int)(1.5 * widthM / stepM));
        List<Bend> bends = [];
        double turn = 0, best = 0;
        int apex = 0, start = lag;
        for (int i = lag; i < points.Count - lag; i++)
        {
            double local = CornerRad(points[i - lag], points[i], points[i + lag]) / lag;
            if (i > lag && Math.Sign(local) != Math.Sign(turn) && turn != 0)
            {
                Add(i);
                (turn, best, start) = (0, 0, i);
            }

            turn += local;
            if (Math.Abs(local) > best) { best = Math.Abs(local); apex = i; }
        }

        Add(points.Count - lag);
        return bends;

        void Add(int end)
        {
            if (Math.Abs(turn) >= double.DegreesToRadians(50)) bends.Add(new Bend(apex, turn, (end - start) * stepM));
        }
    }

    private static double CornerRad(PlanePoint a, PlanePoint b, PlanePoint c)
    {
        double ux = b.XM - a.XM, uy = b.YM - a.YM, vx = c.XM - b.XM, vy = c.YM - b.YM;
        return Math.Atan2((ux * vy) - (uy * vx), (ux * vx) + (uy * vy));
    }
}
