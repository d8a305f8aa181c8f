using SecondShore.Answers.Documents;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Rig;

/// <summary>Turns an answer into its document.</summary>
public static class RigDocuments
{
    /// <summary>The document of an answer, rounded to what the numbers are good for.</summary>
    public static RigDocument Of(RigReply reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        RigChoice choice = reply.Choice;
        WeightOutlook chosen = choice.Chosen;
        List<RigDocument.WeightRow> weights = [Row("chosen", chosen)];
        if (choice.Lighter is { } lighter) weights.Add(Row("lighter", lighter));
        if (choice.Heavier is { } heavier) weights.Add(Row("heavier", heavier));
        if (reply.Asked is { } asked) weights.Add(Row("asked", asked));
        TowResult tow = reply.Shape.Tow;
        return new RigDocument
        {
            WeightG = Math.Round(chosen.Jig.MassKg * 1000, 2),
            WeightOz = Math.Round(Mass.FromKilograms(chosen.Jig.MassKg).Ounces, 4),
            LineOutM = Math.Round(reply.Conditions.LineOutAtM(reply.Conditions.DepthM), 2),
            FallS = Seconds(chosen.FallS.P50),
            LineAngleDeg = Math.Round(Degrees(chosen.LineAngleRad.P50), 1),
            Table = Table(reply),
            Holds = choice.Holds,
            Reason = choice.Reason switch
            {
                WeightReason.Hold => "hold",
                WeightReason.Feel => "feel",
                WeightReason.LightestOwned => "lightest_owned",
                _ => "nothing_holds",
            },
            NeededG = Grams(choice.NeededKg),
            DepthM = reply.Conditions.DepthM,
            SpeedMps = reply.Conditions.SpeedMps,
            Jig = chosen.Jig.Name,
            Material = chosen.Jig.Material.Name,
            Line = reply.Line.Name,
            LineDiameterMm = Math.Round(reply.Line.DiameterM * 1000, 3),
            Weights = weights,
            Sizes = [.. reply.Sizes.Select(Row)],
            Lines = [.. reply.Lines.Select(Row)],
            RodTensionN = Math.Round(tow.TensionN, 3),
            TrailM = Math.Round(tow.TrailM, 2),
            SideM = Math.Round(tow.SideM, 2),
            BowM = Math.Round(reply.Shape.BowM, 2),
            LineOnBottomM = Math.Round(tow.LineOnBottomM, 2),
            SweepS = double.IsFinite(reply.Sweep.TimeS) ? Math.Round(reply.Sweep.TimeS, 2) : null,
            Shape = Points(reply.Shape),
            ShapeSteep = Points(reply.SteepShape),
            ShapeFlat = Points(reply.FlatShape),
            Words = RigWords.Of(reply),
            Cautions = RigCautions.Of(reply),
            Assumed = reply.Assumed,
        };
    }

    private static List<RigDocument.TableRow> Table(RigReply reply)
    {
        List<RigDocument.TableRow> rows = [];
        for (int i = 0; i < reply.Table.Count; i++)
        {
            WeightCell cell = reply.Table[i];
            rows.Add(new RigDocument.TableRow(Math.Round(cell.DepthM, 3), Math.Round(cell.SpeedMps, 4),
                cell.Size is { } size ? Math.Round(size.MassKg * 1000, 2) : null, cell.Size?.Label, Grams(cell.NeededKg),
                Math.Round(reply.Tows[i].Tow.WeightOnBottomShare, 3)));
        }

        return rows;
    }

    private static RigDocument.WeightRow Row(string role, WeightOutlook outlook) => new(role, outlook.Jig.Name,
        Math.Round(outlook.Jig.MassKg * 1000, 2), Math.Round(outlook.HoldsChance, 3), SpreadDocument.From(outlook.OnBottomShare, 3),
        SpreadDocument.From(outlook.HeightM), SpreadDocument.From(outlook.FallS, 1), Math.Round(outlook.TightFallS, 1),
        SpreadDocument.From(outlook.FastestMps, 3), SpreadDocument.From(outlook.LeastLineM, 1),
        SpreadDocument.From(new Spread(Degrees(outlook.LineAngleRad.P10), Degrees(outlook.LineAngleRad.P50), Degrees(outlook.LineAngleRad.P90)), 1));

    private static RigDocument.SizeRow Row(SizeRow row) => new(row.Size.Label, Math.Round(row.Size.MassKg * 1000, 2), Math.Round(row.HoldsChance, 3),
        Math.Round(row.Tow.WeightOnBottomShare, 3), Math.Round(row.Tow.HeightOverBottomM, 2), Seconds(row.FallS), Math.Round(row.FastestMps, 3));

    private static RigDocument.LineRow Row(LineTrade trade) => new(trade.Line.Name, Math.Round(trade.Line.DiameterM * 1000, 3),
        Math.Round(trade.Line.StrengthN, 1), Grams(trade.NeededKg), trade.Size is { } size ? Math.Round(size.MassKg * 1000, 2) : null,
        Seconds(trade.FallS), Math.Round(trade.BowM, 2), Math.Round(trade.StretchM, 3));

    private static List<RigDocument.PointRow> Points(TowShape shape)
    {
        List<RigDocument.PointRow> points = [];
        foreach (LinePoint p in shape.Points) points.Add(new(Math.Round(p.BehindM, 3), Math.Round(p.LeftM, 3), Math.Round(p.HeightM, 3)));
        return points;
    }

    private static double? Grams(double massKg) => massKg < 1.99 ? Math.Round(massKg * 1000, 2) : null;

    private static double? Seconds(double s) => s < 3599 ? Math.Round(s, 1) : null;

    private static double Degrees(double rad) => double.RadiansToDegrees(rad);
}
