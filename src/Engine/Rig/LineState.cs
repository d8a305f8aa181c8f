namespace SecondShore.Engine.Rig;

/// <summary>Force in the line and place of one point of it, in the frame of <see cref="TowCase"/>; also used for their slopes.</summary>
internal struct LineState
{
    /// <summary>Tension vector toward the boat, N: along, across, up.</summary>
    public double Fx, Fy, Fz;

    /// <summary>Place, m: along and across from the jig, height over the bottom.</summary>
    public double X, Y, Z;

    public readonly double Tension => Math.Sqrt((Fx * Fx) + (Fy * Fy) + (Fz * Fz));

    public static void Step(in LineState from, in LineState slope, double step, out LineState to)
    {
        to.Fx = from.Fx + (step * slope.Fx);
        to.Fy = from.Fy + (step * slope.Fy);
        to.Fz = from.Fz + (step * slope.Fz);
        to.X = from.X + (step * slope.X);
        to.Y = from.Y + (step * slope.Y);
        to.Z = from.Z + (step * slope.Z);
    }

    /// <summary>Cubic Hermite between two states with slopes over a step, at a share 0 to 1 of it.</summary>
    public static LineState Hermite(in LineState a, in LineState slopeA, in LineState b, in LineState slopeB, double step, double share)
    {
        double t = share, u = 1.0 - t;
        double ha = u * u * (1.0 + (2.0 * t)), hb = t * t * (3.0 - (2.0 * t));
        double da = t * u * u * step, db = -t * t * u * step;
        return new LineState
        {
            Fx = (ha * a.Fx) + (hb * b.Fx) + (da * slopeA.Fx) + (db * slopeB.Fx),
            Fy = (ha * a.Fy) + (hb * b.Fy) + (da * slopeA.Fy) + (db * slopeB.Fy),
            Fz = (ha * a.Fz) + (hb * b.Fz) + (da * slopeA.Fz) + (db * slopeB.Fz),
            X = (ha * a.X) + (hb * b.X) + (da * slopeA.X) + (db * slopeB.X),
            Y = (ha * a.Y) + (hb * b.Y) + (da * slopeA.Y) + (db * slopeB.Y),
            Z = (ha * a.Z) + (hb * b.Z) + (da * slopeA.Z) + (db * slopeB.Z),
        };
    }
}
