using SecondShore.Answers.Rig;
using SecondShore.Engine.Core;
using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Sheet.Drawing;

/// <summary>The line under water, height and length to one scale, boat to the right: middle case as a line, one in ten either way as a band.</summary>
public sealed class RigDrawing
{
    /// <summary>Width, px.</summary>
    public static readonly double WidthPx = 690;

    private const double MarginPx = 26, MostHighPx = 320, BoatRoomPx = 90;
    private readonly ISheetCanvas _canvas;
    private readonly RigReply _reply;
    private readonly double _tipOverBottomM, _pxPerM;

    private RigDrawing(ISheetCanvas canvas, RigReply reply)
    {
        (_canvas, _reply, _tipOverBottomM) = (canvas, reply, reply.Conditions.DepthM + reply.Conditions.TipHeightM);
        _pxPerM = PxPerM(reply);
    }

    /// <summary>Height that a picture of a rig takes, px.</summary>
    public static double HeightPx(RigReply reply) =>
        ((Require.NotNull(reply).Conditions.DepthM + reply.Conditions.TipHeightM) * PxPerM(reply)) + (2 * MarginPx);

    /// <summary>Draws the picture with its corner at 0, 0.</summary>
    public static void Draw(ISheetCanvas canvas, RigReply reply)
    {
        RigDrawing drawing = new(Require.NotNull(canvas), Require.NotNull(reply));
        drawing.Water();
        drawing.Lines();
        drawing.Names();
    }

    /// <summary>The same in words.</summary>
    public static string Instead(RigReply reply)
    {
        UnitSystem units = Require.NotNull(reply).Request.Units;
        double angleDeg = double.RadiansToDegrees(reply.Choice.Chosen.LineAngleRad.P50);
        return FormattableString.Invariant($"The line under water to scale: it enters {angleDeg:0}° below level and the jig trails ")
            + $"{units.ShortDistance(reply.Shape.Tow.TrailM)} behind the rod tip in {units.Depth(reply.Conditions.DepthM)} of water.";
    }

    private static double BoatPx => WidthPx - MarginPx - BoatRoomPx;

    private void Water()
    {
        double surface = Y(_reply.Conditions.DepthM), bottom = Y(0), right = WidthPx - MarginPx;
        _canvas.Area([[new(MarginPx, surface), new(right, surface), new(right, bottom), new(MarginPx, bottom)]], SheetMarks.Washes[2]);
        foreach (double y in (double[])[surface, bottom]) _canvas.Line([new(MarginPx, y), new(right, y)], false, SheetMarks.Curve);
    }

    private void Lines()
    {
        _canvas.Area([[.. Points(_reply.SteepShape), .. Points(_reply.FlatShape).Reverse()]], SheetMarks.Washes[6]);
        _canvas.Line([.. Points(_reply.Shape)], false, SheetMarks.LineUnderWater);
        _canvas.Circle(At(_reply.Shape.Points[0]), 4.5, SheetMarks.Full);
        _canvas.Circle(new(BoatPx, Y(_tipOverBottomM)), 3.5, SheetMarks.Thin);
    }

    private void Names()
    {
        UnitSystem units = _reply.Request.Units;
        SheetPoint jig = At(_reply.Shape.Points[0]);
        Name("rod tip", new(BoatPx + 8, Y(_tipOverBottomM) + 4));
        Name(units.Depth(_reply.Conditions.DepthM), new(WidthPx - MarginPx - 50, Y(0) - 5));
        Name($"jig, {units.ShortDistance(_reply.Shape.Tow.TrailM)} behind", new(jig.X + 8, jig.Y - 8));

        void Name(string text, SheetPoint at) => _canvas.Text(text, at, SheetMarks.Axis, SheetAnchor.Start);
    }

    private static double PxPerM(RigReply reply)
    {
        double behindM = Math.Max(Furthest(reply.Shape), Math.Max(Furthest(reply.SteepShape), Furthest(reply.FlatShape)));
        double high = MostHighPx / (reply.Conditions.DepthM + reply.Conditions.TipHeightM);
        return Math.Min((WidthPx - (2 * MarginPx) - BoatRoomPx) / Math.Max(behindM, 0.5), high);
    }

    private static double Furthest(TowShape shape)
    {
        double furthest = 0;
        foreach (LinePoint p in shape.Points) furthest = Math.Max(furthest, p.BehindM);
        return furthest;
    }

    private IEnumerable<SheetPoint> Points(TowShape shape) => shape.Points.Select(p => At(p with { HeightM = Math.Max(0, p.HeightM) }));

    private SheetPoint At(LinePoint p) => new(BoatPx - (p.BehindM * _pxPerM), Y(p.HeightM));

    private double Y(double heightM) => MarginPx + ((_tipOverBottomM - heightM) * _pxPerM);
}
