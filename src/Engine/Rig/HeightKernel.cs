namespace SecondShore.Engine.Rig;

/// <summary>
/// The height error of <see cref="TowKernel"/> alone, for a line that stays in the upright plane of the track: what a root is
/// sought of hundreds of times an answer. A third of the work: two forces and one height, no structs, drag by table.
/// </summary>
internal static class HeightKernel
{
    private const double TinyN = 1e-9;

    /// <summary>Height of the line's end over the rod tip, m, as <see cref="LineEnd.Residual"/>. No allocation, no throw.</summary>
    /// <param name="c">The case.</param>
    /// <param name="start">Force and place at the lower end.</param>
    /// <param name="lengthM">Line above the start, m.</param>
    public static double ResidualM(in TowSetup c, in LineState start, double lengthM)
    {
        if (start.Fy == 0 && c.Current.LargestAcrossMps == 0) return PlaneM(c, start.Fx, start.Fz, start.Z, lengthM);
        TowKernel.Shoot(c, start, lengthM, out LineEnd end, default);
        return end.Residual;
    }

    // One loop body serves all four stages: the fewer operations a loop holds, the better an interpreter runs it.
    // Symbols of the page docs/science/rig.md; k slopes, p probe, y state, all by q = ln(1 + s/a).
    private static double PlaneM(in TowSetup c, double fx, double fz, double z, double lengthM)
    {
        double[] pushes = DragTable.Normal, rubs = DragTable.Axial;
        double perSpeed = c.HalfRhoDiameter / c.DiameterPerViscosity, rub = Math.PI * c.DynamicViscosity, reynolds = c.DiameterPerViscosity;
        double wet = c.WetWeight, stretch = c.StretchPerN, surfaceM = c.SurfaceM, worked = c.WorkedIn ? c.SpeedMps / c.LineOutM : 0;
        double perM = c.LargestDragPerM + Math.Abs(wet);
        double scale = Math.Clamp(Math.Max(Math.Sqrt((fx * fx) + (fz * fz)), TinyN) / Math.Max(perM, 1e-12), 1e-5 * lengthM, 1e3 * lengthM);
        double step = Math.Log(1.0 + (lengthM / scale)) / c.Steps, half = Math.Exp(0.5 * step), grown = scale, below = c.LineOutM - lengthM - scale;
        bool sheared = c.Current.Count > 1;
        c.Current.At(z, out double flow, out _);
        double vx = flow - c.SpeedMps, kx = 0, kz = 0, kh = 0;
        double px = fx, pz = fz, ph = z, at = grown, k1x = 0, k1z = 0, k1h = 0, sumX = 0, sumZ = 0, sumH = 0, nextX = fx, nextZ = fz, nextH = z;
        int steps = c.Steps;
        for (int i = -1; i < steps; i++)
        {
            for (int stage = i < 0 ? 3 : 0; stage < 4; stage++)
            {
                double tension = Math.Sqrt((px * px) + (pz * pz)), inverse = 1.0 / Math.Max(tension, TinyN), tx = px * inverse, tz = pz * inverse;
                if (sheared)
                {
                    c.Current.At(ph, out flow, out _);
                    vx = flow - c.SpeedMps;
                }

                double vt = vx * tx, un = -vx * tz;
                // A line worked in swings about the rod tip: its sideways speed falls to nothing there.
                if (worked > 0) un -= worked * Math.Clamp(below + at, 0.0, c.LineOutM) * tz;
                double x = Math.Sqrt(Math.Abs(un) * reynolds), push, axial;
                if (x < DragTable.Most)
                {
                    double node = x * DragTable.PerUnit;
                    int k = (int)node;
                    double share = node - k;
                    push = pushes[k] + (share * (pushes[k + 1] - pushes[k]));
                    axial = rubs[k] + (share * (rubs[k + 1] - rubs[k]));
                }
                else
                {
                    push = x * ((1.1 * x) + 4.0);
                    axial = x * (0.55 + (0.084 * Math.Cbrt(x)));
                }

                double per = at * (1.0 + (tension * stretch));
                push *= per * perSpeed * un;
                axial *= per * rub * vt;
                kx = (push * tz) - (axial * tx);
                kz = (at * wet) - (push * tx) - (axial * tz);
                kh = per * tz;
                if (stage == 3) break;
                if (stage == 2)
                {
                    double sixth = step / 6.0;
                    px = nextX = fx + (sixth * (sumX + kx));
                    pz = nextZ = fz + (sixth * (sumZ + kz));
                    ph = nextH = z + (sixth * (sumH + kh));
                    continue;
                }

                sumX += 2.0 * kx;
                sumZ += 2.0 * kz;
                sumH += 2.0 * kh;
                double ahead = stage == 0 ? 0.5 * step : step;
                px = fx + (ahead * kx);
                pz = fz + (ahead * kz);
                ph = z + (ahead * kh);
                if (stage == 1) at = grown * half * half;
            }

            if (i >= 0)
            {
                if (nextH >= surfaceM && nextH > z)
                {
                    double share = TowKernel.Crossing(z, k1h, nextH, kh, step, surfaceM);
                    double wetM = (grown * Math.Exp(share * step)) - scale;
                    double u = 1.0 - share, ha = u * u * (1.0 + (2.0 * share)), hb = share * share * (3.0 - (2.0 * share));
                    double da = share * u * u * step, db = -share * share * u * step;
                    double atX = (ha * fx) + (hb * nextX) + (da * k1x) + (db * kx), atZ = (ha * fz) + (hb * nextZ) + (da * k1z) + (db * kz);
                    double tension = Math.Max(Math.Sqrt((atX * atX) + (atZ * atZ)), TinyN);
                    return surfaceM - c.TargetM + ((lengthM - wetM) * (atZ / tension) * (1.0 + (tension * stretch)));
                }

                if (nextZ <= 0 && wet < 0)
                {
                    double share = fz <= 0 ? 0 : TowKernel.Crossing(-fz, -k1z, -nextZ, -kz, step, 0), u = 1.0 - share;
                    double height = (u * u * (1.0 + (2.0 * share)) * z) + (share * share * (3.0 - (2.0 * share)) * nextH)
                        + (share * u * u * step * k1h) - (share * share * u * step * kh);
                    return Math.Min(height, surfaceM) - c.TargetM;
                }

                grown *= half * half;
            }

            fx = nextX;
            fz = nextZ;
            z = nextH;
            k1x = sumX = kx;
            k1z = sumZ = kz;
            k1h = sumH = kh;
            px = fx + (0.5 * step * kx);
            pz = fz + (0.5 * step * kz);
            ph = z + (0.5 * step * kh);
            at = grown * half;
        }

        return z - c.TargetM;
    }
}
