using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>A bend of a channel: apex, turn, and which side is its outside (+1 left).</summary>
internal sealed record FoundBend(int Apex, double TurnRad, double LengthM, int OuterSide);

/// <summary>Cuts a line where its turn changes sign; stretches that turn far enough are bends.</summary>
internal static class BendFinder
{
    public static List<FoundBend> Find(IReadOnlyList<PlanePoint> line, double lagM, double leastTurnRad)
    {
        List<FoundBend> bends = [];
        PlanePoint[] even = Even(line, lagM / 4, out int[] source);
        const int lag = 4;
        double turn = 0, sharpest = 0;
        int apex = 0, start = lag;
        for (int k = lag; k < even.Length - lag; k++)
        {
            double local = TurnRad(even[k - lag], even[k], even[k + lag]) / lag;
            if (turn != 0 && Math.Sign(local) != Math.Sign(turn) && local != 0)
            {
                Close(k);
                (turn, sharpest, start) = (0, 0, k);
            }

            turn += local;
            if (Math.Abs(local) > sharpest) { sharpest = Math.Abs(local); apex = k; }
        }

        Close(even.Length - lag);
        return bends;

        void Close(int end)
        {
            if (Math.Abs(turn) >= leastTurnRad) bends.Add(new FoundBend(source[apex], turn, (end - start) * lagM / 4, turn > 0 ? -1 : 1));
        }
    }

    private static PlanePoint[] Even(IReadOnlyList<PlanePoint> line, double stepM, out int[] source)
    {
        List<PlanePoint> points = [line[0]];
        List<int> at = [0];
        double along = 0;
        for (int k = 1; k < line.Count; k++)
        {
            along += line[k - 1].DistanceToM(line[k]);
            if (along < stepM) continue;
            points.Add(line[k]);
            at.Add(k);
            along = 0;
        }

        source = [.. at];
        return [.. points];
    }

    private static double TurnRad(PlanePoint a, PlanePoint b, PlanePoint c)
    {
        double ux = b.XM - a.XM, uy = b.YM - a.YM, vx = c.XM - b.XM, vy = c.YM - b.YM;
        return Math.Atan2((ux * vy) - (uy * vx), (ux * vx) + (uy * vy));
    }
}
