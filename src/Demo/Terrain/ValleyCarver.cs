using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Demo.Terrain;

/// <summary>Carves valleys into a height field and keeps, per cell, whose valley it is and how far the channel lies.</summary>
internal sealed class ValleyCarver
{
    private readonly List<Valley> _valleys;
    private readonly float[] _squared;
    private readonly int[] _index;

    public ValleyCarver(List<Valley> valleys, Canvas canvas)
    {
        _valleys = valleys;
        Canvas = canvas;
        _squared = new float[canvas.Frame.Count];
        _index = new int[canvas.Frame.Count];
        Owner = new byte[canvas.Frame.Count];
        ChannelM = new float[canvas.Frame.Count];
        Array.Fill(ChannelM, float.MaxValue);
    }

    public Canvas Canvas { get; }

    /// <summary>Valley of each cell.</summary>
    public byte[] Owner { get; }

    /// <summary>Distance outside the nearest channel's bed, m; large where none is near.</summary>
    public float[] ChannelM { get; }

    public static GridFrame FrameOf(List<Valley> valleys, double cellM)
    {
        double west = double.MaxValue, south = double.MaxValue, east = double.MinValue, north = double.MinValue;
        foreach (Valley valley in valleys)
        {
            for (int i = 0; i < valley.Axis.Count; i++)
            {
                if (valley.FloorM[i] > 3) continue;
                double reach = ReachM(valley, i);
                PlanePoint p = valley.Axis[i];
                west = Math.Min(west, p.XM - reach);
                east = Math.Max(east, p.XM + reach);
                south = Math.Min(south, p.YM - reach);
                north = Math.Max(north, p.YM + reach);
            }
        }

        return new GridFrame(west, south, cellM, (int)((east - west) / cellM) + 1, (int)((north - south) / cellM) + 1);
    }

    public void Carve(int dam)
    {
        for (int v = 0; v < _valleys.Count; v++) CarveWalls(v);
        BuildDam(_valleys[0], dam);
        for (int v = 0; v < _valleys.Count; v++) CarveChannel(_valleys[v], v == 0 ? dam : int.MaxValue);
    }

    private static double ReachM(Valley valley, int i) =>
        Math.Max(valley.HalfM[0][i], valley.HalfM[1][i]) + Math.Max(40, 1.3 * (Math.Max(0, -valley.FloorM[i]) + 6) / Math.Min(valley.WallTan[0][i], valley.WallTan[1][i])) + (valley.ToeM * 4);

    private void CarveWalls(int v)
    {
        Valley valley = _valleys[v];
        GridFrame frame = Canvas.Frame;
        int[] channelIndex = [];
        float[] channelSquared = valley.Terraces.Count > 0 ? Terraced(valley, out channelIndex) : [];
        Nearest(valley.Axis, i => ReachM(valley, i));
        for (int c = 0; c < frame.Count; c++)
        {
            int i = _index[c];
            if (i < 0) continue;
            PlanePoint place = frame.Centre(c);
            int side = valley.SideOf(place, i);
            double d = Math.Sqrt(_squared[c]), half = valley.HalfM[side][i];
            double e = valley.FloorM[i] + (0.008 * Math.Min(d, half)) + valley.WallM(i, side, d - half);
            if (channelSquared.Length > 0 && channelIndex[c] >= 0) e += TerraceM(valley, place, channelIndex[c], Math.Sqrt(channelSquared[c]));
            if (e >= Canvas.ElevationM[c]) continue;
            Canvas.ElevationM[c] = (float)e;
            Owner[c] = (byte)v;
        }
    }

    private float[] Terraced(Valley valley, out int[] index)
    {
        Nearest(valley.Channel, i => 2.5 * Math.Max(valley.HalfM[0][valley.ChannelAxis[i]], valley.HalfM[1][valley.ChannelAxis[i]]) * 1.3);
        index = [.. _index];
        return [.. _squared];
    }

    private static double TerraceM(Valley valley, PlanePoint place, int channel, double d)
    {
        double rise = 0;
        (double tx, double ty) = valley.Channel.Tangent(channel);
        int side = (tx * (place.YM - valley.Channel[channel].YM)) - (ty * (place.XM - valley.Channel[channel].XM)) >= 0 ? 0 : 1;
        foreach (Terrace t in valley.Terraces)
        {
            if (t.Side != side || channel < t.From || channel > t.To) continue;
            double edge = Math.Min(channel - t.From, t.To - channel) * valley.Channel.StepM;
            rise = Math.Max(rise, t.RiseM * Math.Min(1, edge / (4 * t.RunM)) * ValleyPlan.Smooth((d - t.FromChannelM) / t.RunM));
        }

        return rise;
    }

    private void BuildDam(Valley main, int dam)
    {
        GridFrame frame = Canvas.Frame;
        (double tx, double ty) = main.Axis.Tangent(dam);
        PlanePoint at = main.Axis[dam];
        double lateral = ReachM(main, dam);
        for (int c = 0; c < frame.Count; c++)
        {
            PlanePoint p = frame.Centre(c);
            double along = ((p.XM - at.XM) * tx) + ((p.YM - at.YM) * ty), across = Math.Abs(((p.YM - at.YM) * tx) - ((p.XM - at.XM) * ty));
            if (across > lateral || along > lateral * 2 || Owner[c] != 0) continue;
            double face = along >= 0 ? 5 : 5 + (0.45 * along);
            if (face > Canvas.ElevationM[c]) Canvas.ElevationM[c] = (float)face;
        }
    }

    private void CarveChannel(Valley valley, int dam)
    {
        Nearest(valley.Channel, i => valley.HalfChannelM + ((valley.FloorM[valley.ChannelAxis[i]] - valley.BedM[i] + 3) / Valley.BankTan) + (3 * Canvas.Frame.CellM));
        for (int c = 0; c < Canvas.Frame.Count; c++)
        {
            int i = _index[c];
            if (i < 0 || valley.ChannelAxis[i] >= dam - 3) continue;
            double outM = Math.Sqrt(_squared[c]) - valley.HalfChannelM;
            double e = valley.BedM[i] + (outM <= 0 ? 0 : Valley.BankTan * outM);
            if (e < Canvas.ElevationM[c]) Canvas.ElevationM[c] = (float)e;
            if (valley.BedM[i] < -0.5) ChannelM[c] = Math.Min(ChannelM[c], (float)Math.Max(0, outM));
        }
    }

    private void Nearest(PathLine line, Func<int, double> reachM)
    {
        GridFrame frame = Canvas.Frame;
        Array.Fill(_squared, float.MaxValue);
        Array.Fill(_index, -1);
        for (int i = 0; i < line.Count; i++)
        {
            double reach = reachM(i), column = frame.ColumnAt(line[i].XM), row = frame.RowAt(line[i].YM), n = reach / frame.CellM;
            int x0 = Math.Max(0, (int)(column - n)), x1 = Math.Min(frame.Nx - 1, (int)(column + n) + 1);
            int y0 = Math.Max(0, (int)(row - n)), y1 = Math.Min(frame.Ny - 1, (int)(row + n) + 1);
            double square = n * n, scale = frame.CellAreaM2;
            for (int iy = y0; iy <= y1; iy++)
            {
                double dy = iy - row, dy2 = dy * dy;
                int at = (iy * frame.Nx) + x0;
                for (int ix = x0; ix <= x1; ix++, at++)
                {
                    double d2 = ((ix - column) * (ix - column)) + dy2;
                    if (d2 > square) continue;
                    float metres = (float)(d2 * scale);
                    if (metres < _squared[at]) { _squared[at] = metres; _index[at] = i; }
                }
            }
        }
    }
}
