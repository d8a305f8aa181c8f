using System.Text;
using SecondShore.Answers.Rig;
using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Sheet;

/// <summary>Draws the line under water, height and length to one scale: middle case as a line, one in ten either way as a band.</summary>
public static class RigSvg
{
    private const double WidePx = 690, MarginPx = 26, MostHighPx = 320;

    /// <summary>The picture, boat to the right. Well-formed, no script.</summary>
    public static string Picture(RigReply reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        UnitSystem units = reply.Request.Units;
        double depthM = reply.Conditions.DepthM, tipM = reply.Conditions.TipHeightM;
        double behindM = Math.Max(Furthest(reply.Shape), Math.Max(Furthest(reply.SteepShape), Furthest(reply.FlatShape)));
        double pxPerM = Math.Min((WidePx - (2 * MarginPx) - 90) / Math.Max(behindM, 0.5), MostHighPx / (depthM + tipM));
        double high = ((depthM + tipM) * pxPerM) + (2 * MarginPx), boatPx = WidePx - MarginPx - 90;
        StringBuilder svg = new();
        svg.Append(Fmt($"<svg class=\"chart\" viewBox=\"0 0 {WidePx:0} {high:0.#}\" role=\"img\" aria-label=\"{SheetHtml.Escape(Alt(reply))}\">"))
            .Append(Fmt($"<rect class=\"w2\" x=\"{MarginPx}\" y=\"{Y(depthM):0.#}\" width=\"{WidePx - (2 * MarginPx)}\" height=\"{depthM * pxPerM:0.#}\"/>"))
            .Append(Fmt($"<path class=\"ax\" d=\"M{MarginPx} {Y(depthM):0.#}H{WidePx - MarginPx}M{MarginPx} {Y(0):0.#}H{WidePx - MarginPx}\"/>"))
            .Append("<path class=\"w6\" d=\"").Append(Path(reply.SteepShape, false)).Append(Path(reply.FlatShape, true)).Append("Z\"/>")
            .Append("<path class=\"ac\" style=\"stroke-width:2\" d=\"").Append(Path(reply.Shape, false)).Append("\"/>");
        LinePoint jig = reply.Shape.Points[0];
        svg.Append(Fmt($"<circle class=\"f\" cx=\"{X(jig):0.#}\" cy=\"{Y(jig.HeightM):0.#}\" r=\"4.5\"/>"))
            .Append(Fmt($"<circle class=\"k\" cx=\"{boatPx:0.#}\" cy=\"{Y(depthM + tipM):0.#}\" r=\"3.5\"/>"))
            .Append(Text(boatPx + 8, Y(depthM + tipM) + 4, "rod tip"))
            .Append(Text(WidePx - MarginPx - 50, Y(0) - 5, units.Depth(depthM)))
            .Append(Text(X(jig) + 8, Y(jig.HeightM) - 8, Fmt($"jig, {units.ShortDistance(reply.Shape.Tow.TrailM)} behind")));
        return svg.Append("</svg>").ToString();

        double X(LinePoint p) => boatPx - (p.BehindM * pxPerM);
        double Y(double heightM) => MarginPx + ((depthM + tipM - heightM) * pxPerM);
        string Path(TowShape shape, bool back)
        {
            StringBuilder path = new();
            int count = shape.Points.Count;
            for (int i = 0; i < count; i++)
            {
                LinePoint p = shape.Points[back ? count - 1 - i : i];
                path.Append(i == 0 && !back ? 'M' : 'L').Append(Fmt($"{X(p):0.#} {Y(Math.Max(0, p.HeightM)):0.#}"));
            }

            return path.ToString();
        }
    }

    private static double Furthest(TowShape shape)
    {
        double furthest = 0;
        foreach (LinePoint p in shape.Points) furthest = Math.Max(furthest, p.BehindM);
        return furthest;
    }

    private static string Alt(RigReply reply)
    {
        UnitSystem units = reply.Request.Units;
        double angleDeg = double.RadiansToDegrees(reply.Choice.Chosen.LineAngleRad.P50);
        return Fmt($"The line under water to scale: it enters {angleDeg:0}° below level and the jig trails {units.ShortDistance(reply.Shape.Tow.TrailM)} behind the rod tip in {units.Depth(reply.Conditions.DepthM)} of water.");
    }

    private static string Text(double x, double y, string text) => Fmt($"<text x=\"{x:0.#}\" y=\"{y:0.#}\">{SheetHtml.Escape(text)}</text>");

    private static string Fmt(FormattableString text) => FormattableString.Invariant(text);
}
