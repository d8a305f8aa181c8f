using System.Runtime.InteropServices;
using SecondShore.App.Compute.Views;
using SecondShore.Engine.Basin.Shore;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.App.Compute;

/// <summary>The second shore at the outlook's depth, or at one that is tried.</summary>
internal sealed partial class LakeDesk
{
    private static readonly double[] BeltShares = [0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9];

    private ShoreView Shore(AskAbout about)
    {
        if (_grid is null || _outlook?.Lake.ThermoclineM is not { } depthM) return new ShoreView();
        // A depth that is tried keeps the outlook's width of doubt: only its middle moves.
        double shiftM = about.ThermoclineM is { } tried ? tried - depthM.Quantile(0.5) : 0;
        double[] belt = [.. BeltShares.Select(share => Math.Max(0.1, depthM.Quantile(share) + shiftM))];
        SecondShoreLine line = SecondShoreLine.Trace(_grid, belt[3]);
        PutLines("second-shore", line.Lines);
        return new ShoreView
        {
            ThermoclineM = new Spread(belt[0], belt[3], belt[6]),
            WhatIf = about.ThermoclineM is not null,
            LengthM = line.LengthM,
            Chart = new ShoreChart(belt, [], [], ""),
        };
    }

    private void PutLines(string name, IReadOnlyList<DepthContour> lines)
    {
        int count = lines.Sum(l => l.Points.Length + (l.Closed ? 1 : 0)), at = 0;
        float[] points = new float[2 * count];
        int[] starts = new int[lines.Count + 1];
        for (int i = 0; i < lines.Count; i++)
        {
            DepthContour line = lines[i];
            foreach (PlanePoint point in line.Points) Add(point);
            if (line.Closed) Add(line.Points[0]);
            starts[i + 1] = at;
        }

        tray.Put(name + ".points", MemoryMarshal.AsBytes(points.AsSpan()));
        tray.Put(name + ".starts", MemoryMarshal.AsBytes(starts.AsSpan()));

        void Add(PlanePoint point)
        {
            points[2 * at] = (float)point.XM;
            points[(2 * at) + 1] = (float)point.YM;
            at++;
        }
    }
}
