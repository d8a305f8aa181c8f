using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>Humps, holes and the saddles between them.</summary>
internal sealed partial class FormCollector
{
    public void Rises(List<FoundRise> humps, List<FoundRise> holes)
    {
        double humpLeast = Math.Max(FormSizes.LeastRiseM, _bed.Options.HumpShare * _bed.DeepM), holeLeast = Math.Max(FormSizes.LeastRiseM, _bed.Options.HoleShare * _bed.DeepM);
        Dictionary<int, FoundRise> known = [];
        foreach (FoundRise hump in humps)
        {
            if (!Rise(hump, FormClass.Hump, humpLeast)) continue;
            known[hump.Top] = hump;
        }

        foreach (FoundRise hump in humps)
            if (known.ContainsKey(hump.Top) && hump.HigherM >= humpLeast) Saddle(hump, humpLeast, false);
        foreach (FoundRise hole in holes)
        {
            // Only basins have a sill between them; the rim of a small hollow is no saddle.
            bool basin = hole.HigherM >= FormSizes.BasinFactor * holeLeast
                && hole.Core.Count * _bed.Frame.CellAreaM2 > FormSizes.BasinAreaS2 * _bed.ScaleM * _bed.ScaleM;
            if (Rise(hole, FormClass.Hole, holeLeast) && basin) Saddle(hole, holeLeast, true);
        }
    }

    private bool Rise(FoundRise rise, FormClass kind, double least)
    {
        double size = 2 * Math.Sqrt(rise.Core.Count * _bed.Frame.CellAreaM2 / Math.PI);
        if (size < FormSizes.LeastRiseS * _bed.ScaleM || (kind == FormClass.Hump && size > FormSizes.MostHumpS * _bed.ScaleM)) return false;
        double x = 0, y = 0, tan = 0;
        foreach (int i in rise.Core)
        {
            PlanePoint p = _bed.Frame.Centre(i);
            x += p.XM / rise.Core.Count;
            y += p.YM / rise.Core.Count;
            tan = Math.Max(tan, _bed.SlopeTan[i]);
        }

        PlanePoint middle = new(x, y), top = _bed.Frame.Centre(rise.Top), place = kind == FormClass.Hump ? top : double.IsNaN(_bed.At(x, y)) ? top : middle;
        double topM = -_bed.Z[rise.Top], passM = -_bed.Z[rise.Pass];
        BottomForm form = Add(kind, FormGeometry.Point(place), place, new(size, size, Math.Min(topM, passM), Math.Max(topM, passM), AxisDeg(rise.Core, middle), rise.HeightM, tan, Bed.Sure(rise.HeightM, least)));
        if (size > FormSizes.MostPaintedS * _bed.ScaleM) return true;
        foreach (int i in rise.Core)
        {
            if (_formOf[i] < 0 || kind == FormClass.Hump) _formOf[i] = (short)form.Id;
            Taken[i] = true;
        }

        _bed.Paint(Taken, [place], _ => (0.5 * size) + ((kind == FormClass.Hole ? FormSizes.HoleTakenS : FormSizes.HumpTakenS) * _bed.ScaleM));
        return true;
    }

    // A pass is a saddle when the ground falls (between rises) or climbs (between hollows) on both sides of the way through.
    private void Saddle(FoundRise rise, double least, bool hollow)
    {
        PlanePoint pass = _bed.Frame.Centre(rise.Pass), top = _bed.Frame.Centre(rise.Top);
        double d = pass.DistanceToM(top), z = _bed.Z[rise.Pass], reach = (hollow ? FormSizes.SillReachS : FormSizes.SaddleReachS) * _bed.ScaleM;
        if (d < 1e-6) return;
        double ux = (top.XM - pass.XM) / d, uy = (top.YM - pass.YM) / d;
        double side = 0;
        for (int k = -2; k <= 2; k++)
        {
            double c = Math.Cos(k * Math.PI / 8), s = Math.Sin(k * Math.PI / 8), vx = (-uy * c) - (ux * s), vy = (ux * c) - (uy * s);
            side = Math.Max(side, hollow
                ? Math.Min(_bed.RiseM(pass, vx, vy, reach, z), _bed.RiseM(pass, -vx, -vy, reach, z))
                : Math.Min(_bed.FallM(pass, vx, vy, reach, z), _bed.FallM(pass, -vx, -vy, reach, z)));
        }

        double need = Math.Max((hollow ? FormSizes.SillRiseShare : FormSizes.SaddleFallShare) * Math.Min(rise.HeightM, rise.HigherM), FormSizes.SaddleLeastShare * least);
        if (side < need) return;
        BottomForm form = Add(FormClass.Saddle, FormGeometry.Point(pass), pass, new(2 * _bed.ScaleM, 2 * _bed.ScaleM, -z, -z, pass.BearingToDeg(top) % 180, side, 0, Bed.Sure(side, need)));
        PaintForm(form.Id, [pass], _ => FormSizes.SaddleS * _bed.ScaleM);
    }

    // Bearing of the longer principal axis of cells about their middle, 0 to 180.
    private double AxisDeg(List<int> cells, PlanePoint middle)
    {
        double xx = 0, yy = 0, xy = 0;
        foreach (int i in cells)
        {
            PlanePoint p = _bed.Frame.Centre(i);
            double dx = p.XM - middle.XM, dy = p.YM - middle.YM;
            xx += dx * dx;
            yy += dy * dy;
            xy += dx * dy;
        }

        double angle = 0.5 * Math.Atan2(2 * xy, xx - yy);
        return (450 - double.RadiansToDegrees(angle)) % 180;
    }
}
