using SecondShore.Engine.Core.Geo;

namespace SecondShore.Demo.Terrain;

/// <summary>A level step in a valley wall. Its lip, on the deep side, is a ledge.</summary>
internal sealed record Bench(int From, int To, int Side, double AboveFloorM, double WidthM);

/// <summary>A raised part of a valley floor beyond a distance from the channel. Its lip is a ledge.</summary>
internal sealed record Terrace(int From, int To, int Side, double FromChannelM, double RiseM, double RunM);

/// <summary>One valley: a floor with walls about an axis, and a channel cut into the floor. Sides: 0 left, 1 right, looking downstream along the arrays.</summary>
internal sealed class Valley
{
    public required string Name { get; init; }

    public required bool IsMain { get; init; }

    public required PathLine Axis { get; init; }

    /// <summary>Elevation of the floor by axis point, m.</summary>
    public required double[] FloorM { get; init; }

    /// <summary>[2][axis] half width of the floor, m.</summary>
    public required double[][] HalfM { get; init; }

    /// <summary>[2][axis] rise per run of the walls.</summary>
    public required double[][] WallTan { get; init; }

    /// <summary>[2][axis] stations already given to a form.</summary>
    public required bool[][] Used { get; init; }

    /// <summary>Channel's distance from the axis by axis point, positive left, m.</summary>
    public required double[] OffsetM { get; init; }

    public required PathLine Channel { get; init; }

    /// <summary>Axis point nearest to each channel point.</summary>
    public required int[] ChannelAxis { get; init; }

    /// <summary>Elevation of the bed by channel point, m.</summary>
    public required double[] BedM { get; init; }

    public required double HalfChannelM { get; init; }

    public static double BankTan { get; } = 0.5;

    /// <summary>Rounding at the foot of a wall, m.</summary>
    public required double ToeM { get; init; }

    public List<Bench> Benches { get; } = [];

    public List<Terrace> Terraces { get; } = [];

    /// <summary>Rise of the wall at a distance outside the floor's edge, m.</summary>
    public double WallM(int axis, int side, double outM)
    {
        if (outM <= 0) return 0;
        double tan = WallTan[side][axis], toe = Math.Min(ToeM, 4 / tan);
        foreach (Bench bench in Benches)
        {
            if (bench.Side != side || axis < bench.From || axis > bench.To) continue;
            double edgeM = Math.Min(axis - bench.From, bench.To - axis) * Axis.StepM;
            double widthM = bench.WidthM * Math.Min(1, edgeM / (2 * bench.WidthM));
            double atM = OutAtM(axis, side, bench.AboveFloorM);
            if (outM > atM) return outM < atM + widthM ? bench.AboveFloorM + (0.03 * (outM - atM)) : (0.03 * widthM) + Plain(outM - widthM, tan, toe);
        }

        return Plain(outM, tan, toe);
    }

    /// <summary>Distance outside the floor's edge at which the wall, without benches, has risen by a height, m.</summary>
    public double OutAtM(int axis, int side, double riseM)
    {
        double tan = WallTan[side][axis], toe = Math.Min(ToeM, 4 / tan), toeRise = 0.5 * tan * toe;
        return riseM <= toeRise ? Math.Sqrt(2 * riseM * toe / tan) : toe + ((riseM - toeRise) / tan);
    }

    /// <summary>Elevation of this valley's walls and floor at a place, from the nearest axis point, without terraces, m.</summary>
    public double ElevationAtM(PlanePoint place)
    {
        (double squared, int axis) = Axis.Nearest(place);
        int side = SideOf(place, axis);
        double d = Math.Sqrt(squared);
        return FloorM[axis] + (0.008 * Math.Min(d, HalfM[side][axis])) + WallM(axis, side, d - HalfM[side][axis]);
    }

    public int SideOf(PlanePoint place, int axis)
    {
        (double tx, double ty) = Axis.Tangent(axis);
        return (tx * (place.YM - Axis[axis].YM)) - (ty * (place.XM - Axis[axis].XM)) >= 0 ? 0 : 1;
    }

    /// <summary>The place on the wall of a side where it has risen by a height over the floor.</summary>
    public PlanePoint OnWall(int axis, int side, double riseM) =>
        Axis.Beside(axis, (side == 0 ? 1 : -1) * (HalfM[side][axis] + OutAtM(axis, side, riseM)));

    /// <summary>Reserves a stretch of a side with a margin; false when part of it is taken.</summary>
    public bool TryReserve(int side, int from, int to, int margin)
    {
        if (from < 0 || to >= Axis.Count) return false;
        for (int i = Math.Max(0, from - margin); i <= Math.Min(Axis.Count - 1, to + margin); i++)
            if (Used[side][i]) return false;
        for (int i = from; i <= to; i++) Used[side][i] = true;
        return true;
    }

    private static double Plain(double outM, double tan, double toe) =>
        outM < toe ? 0.5 * tan * outM * outM / toe : tan * (outM - (0.5 * toe));
}
