using System.Text.Json;
using SecondShore.App.Shell;
using SecondShore.App.Words;
using SecondShore.Desk.Views;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.App.Places;

/// <summary>Chart data of the Rig place, in the user's units.</summary>
internal static class RigCharts
{
    /// <summary>The line under water.</summary>
    public static string Line(RigView r, Spread? thermoclineM, Wording w)
    {
        double behindM = r.Shape.Count > 0 ? r.Shape.Max(p => p.X) : 0;
        string lineOut = $"{w.Number(w.Units.DepthFrom(r.LineOutM), "0")} {w.Units.DepthUnit}", behind = $"{w.Number(w.Units.DepthFrom(behindM), "0")} {w.Units.DepthUnit}";
        LineChart chart = new(
            w["rig.aria", lineOut, behind, w.Depth(r.Asked.DepthM)], w.Units.DepthFrom(r.Asked.DepthM),
            Shown(r.Shape, w), Shown(r.Steep, w), Shown(r.Flat, w),
            thermoclineM is { } m ? new BeltBand(w.Units.DepthFrom(m.P10), w.Units.DepthFrom(m.P90), w["rig.belt", w.DepthRange(m.P10, m.P90)]) : null,
            w.Pace(r.Asked.SpeedMps), w["rig.lineout", lineOut], w["rig.behind", behind]);
        return JsonSerializer.Serialize(chart, PageJson.Default.LineChart);
    }

    private static IReadOnlyList<LinePoint> Shown(IReadOnlyList<LinePoint> points, Wording w) =>
        [.. points.Select(p => new LinePoint(Math.Round(w.Units.DepthFrom(p.X), 2), Math.Round(w.Units.DepthFrom(p.Z), 2)))];
}
