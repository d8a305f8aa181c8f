using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Rig;

/// <summary>One draw of all that is doubtful, as standard normal numbers.</summary>
internal readonly record struct RigDraw(double Line, double JigDrag, double Diameter, double Friction, double Depth, double Speed, double Current)
{
    /// <summary>Number of doubtful things.</summary>
    public const int Kinds = 7;

    /// <summary>The draw that moves one thing alone.</summary>
    public static RigDraw Single(int kind, double z) => new(
        kind == 0 ? z : 0, kind == 1 ? z : 0, kind == 2 ? z : 0, kind == 3 ? z : 0, kind == 4 ? z : 0, kind == 5 ? z : 0, kind == 6 ? z : 0);

    /// <summary>A Latin hypercube: every doubt meets each of its <paramref name="count"/> equal parts once.</summary>
    public static RigDraw[] Hypercube(int count, ulong seed)
    {
        Require.InRange(count, 1, 100_000);
        SeededRandom random = new(seed);
        double[][] columns = new double[Kinds][];
        for (int k = 0; k < Kinds; k++)
        {
            double[] column = new double[count];
            for (int i = 0; i < count; i++) column[i] = NormalLaw.Quantile((i + 0.5) / count);
            for (int i = count - 1; i > 0; i--)
            {
                int j = random.NextInt(i + 1);
                (column[i], column[j]) = (column[j], column[i]);
            }

            columns[k] = column;
        }

        RigDraw[] draws = new RigDraw[count];
        for (int i = 0; i < count; i++)
        {
            draws[i] = new RigDraw(columns[0][i], columns[1][i], columns[2][i], columns[3][i], columns[4][i], columns[5][i], columns[6][i]);
        }

        return draws;
    }

    /// <summary>The tow of a draw. Line out stays what it was set to; the bottom, the boat and the water vary.</summary>
    public TowCase Tow(in TowCase middle, RigBelief belief, FishingLine line, RigConditions conditions) => middle with
    {
        DepthM = Math.Clamp(middle.DepthM + (conditions.DepthSdM * Depth), 0.3, 100),
        SpeedMps = Math.Clamp(middle.SpeedMps + (conditions.SpeedSdMps * Speed), 0, 3),
        Current = conditions.CurrentSdMps > 0
            ? conditions.Current.Shifted(Math.Clamp(conditions.CurrentSdMps * Current, -1.0, 1.0))
            : middle.Current,
        FrictionCoefficient = Math.Min(middle.FrictionCoefficient * Math.Exp(BottomFriction.LnSd(conditions.Bottom) * Friction), 2),
        LineDiameterM = Math.Clamp(middle.LineDiameterM * Math.Exp(line.DiameterLnSd * Diameter), 5e-5, 2e-3),
        LineDragFactor = Math.Clamp(belief.LineFactor(Line), 0.1, 5),
    };

    /// <summary>Factor on the jig's drag area in this draw.</summary>
    public double JigFactor(RigBelief belief) => Math.Clamp(belief.JigFactor(Line, JigDrag), 0.05, 20);
}
