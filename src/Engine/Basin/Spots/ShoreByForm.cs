using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Shore;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Spots;

/// <summary>How much of the second shore runs along each kind of form.</summary>
public static class ShoreByForm
{
    /// <summary>Length by form class, m, longest first; null stands for ground without a form. The lengths add up to the line's.</summary>
    /// <param name="line">The second shore.</param>
    /// <param name="map">Forms of the same lake.</param>
    public static IReadOnlyList<(FormClass? Form, double LengthM)> Of(SecondShoreLine line, FormMap map)
    {
        Require.NotNull(line);
        Require.NotNull(map);
        double[] lengths = new double[Enum.GetValues<FormClass>().Length + 1];
        foreach (DepthContour part in line.Lines)
        {
            int n = part.Points.Length;
            for (int k = 1; k < n + (part.Closed ? 1 : 0); k++)
            {
                PlanePoint a = part.Points[k - 1], b = part.Points[k % n], middle = new(0.5 * (a.XM + b.XM), 0.5 * (a.YM + b.YM));
                int form = map.Frame.TryCellAt(middle, out int ix, out int iy) ? map.FormOfCell[map.Frame.Index(ix, iy)] : -1;
                lengths[form < 0 ? lengths.Length - 1 : (int)map.Forms[form].Class] += a.DistanceToM(b);
            }
        }

        List<(FormClass? Form, double LengthM)> list = [];
        for (int k = 0; k < lengths.Length; k++)
            if (lengths[k] > 0) list.Add((k == lengths.Length - 1 ? null : (FormClass)k, lengths[k]));
        list.Sort((a, b) => b.LengthM.CompareTo(a.LengthM));
        return list;
    }
}
