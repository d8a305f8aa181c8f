using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Spots;

/// <summary>What each cell owes to forms and cover nearby: the best form, the best of another class, and cover.</summary>
internal sealed class FormField
{
    private readonly GridFrame _frame;

    public FormField(SpotRequest request)
    {
        _frame = request.Forms.Frame;
        int n = _frame.Count;
        (First, Second, Cover) = (new float[n], new float[n], new float[n]);
        (FirstForm, SecondForm, CoverMark) = (new short[n], new short[n], new short[n]);
        Array.Fill(FirstForm, (short)-1);
        Array.Fill(SecondForm, (short)-1);
        Array.Fill(CoverMark, (short)-1);
        double reach = 1.2 * request.Forms.YardstickM;
        foreach (BottomForm form in request.Forms.Forms)
        {
            double points = request.Weights.Of(form.Class) * (0.4 + (0.6 * form.ConfidenceShare));
            if (form.Class == FormClass.ChannelBend && form.ToFlatM < 30) points += request.Weights.BendByFlat;
            if (points <= 0) continue;
            if (form.Geometry.Shape == FormShape.Area) continue;
            if (form.LeftEdge.Count > 0)
            {
                Line(request.Forms, form, form.LeftEdge, points, reach);
                Line(request.Forms, form, form.RightEdge, points, reach);
            }
            else if (form.Geometry.Shape == FormShape.Point)
            {
                Splat(request.Forms, form, form.Place, points, reach + (0.5 * form.WidthM));
            }
            else
            {
                Line(request.Forms, form, form.Geometry.Points, points, reach);
            }
        }

        AddGround(request);
        AddCover(request);
    }

    /// <summary>Points of the best form at each cell.</summary>
    public float[] First { get; }

    /// <summary>Points of the best form of another class.</summary>
    public float[] Second { get; }

    /// <summary>Share of the full points of cover, 0 to 1.</summary>
    public float[] Cover { get; }

    /// <summary>The best form.</summary>
    public short[] FirstForm { get; }

    /// <summary>The best form of another class.</summary>
    public short[] SecondForm { get; }

    /// <summary>Index of the nearest mark of cover.</summary>
    public short[] CoverMark { get; }

    private void Line(FormMap map, BottomForm form, IReadOnlyList<PlanePoint> line, double points, double reach)
    {
        PlanePoint last = default;
        for (int k = 0; k < line.Count; k++)
        {
            if (k > 0 && line[k].DistanceToM(last) < 0.6 * _frame.CellM && k + 1 < line.Count) continue;
            last = line[k];
            Splat(map, form, line[k], points, reach);
        }
    }

    // Full points to half the reach, none beyond it.
    private void Splat(FormMap map, BottomForm form, PlanePoint at, double points, double reach)
    {
        double column = _frame.ColumnAt(at.XM), row = _frame.RowAt(at.YM), n = reach / _frame.CellM;
        short id = (short)form.Id;
        for (int y = Math.Max(0, (int)Math.Ceiling(row - n)); y <= Math.Min(_frame.Ny - 1, (int)(row + n)); y++)
        {
            for (int x = Math.Max(0, (int)Math.Ceiling(column - n)); x <= Math.Min(_frame.Nx - 1, (int)(column + n)); x++)
            {
                double d = Math.Sqrt(((x - column) * (x - column)) + ((y - row) * (y - row))) / n;
                if (d >= 1) continue;
                Offer(map, (y * _frame.Nx) + x, id, form.Class, (float)(points * Math.Min(1, 2 * (1 - d))));
            }
        }
    }

    private void Offer(FormMap map, int i, short id, FormClass kind, float points)
    {
        if (points <= 0) return;
        if (FirstForm[i] >= 0 && map.Forms[FirstForm[i]].Class == kind)
        {
            if (points > First[i]) (First[i], FirstForm[i]) = (points, id);
        }
        else if (points > First[i])
        {
            (Second[i], SecondForm[i]) = (First[i], FirstForm[i]);
            (First[i], FirstForm[i]) = (points, id);
        }
        else if (points > Second[i])
        {
            (Second[i], SecondForm[i]) = (points, id);
        }
    }

    private void AddGround(SpotRequest request)
    {
        for (int i = 0; i < First.Length; i++)
        {
            if (First[i] > 0 || request.Forms.FormOfCell[i] < 0) continue;
            BottomForm form = request.Forms.Forms[request.Forms.FormOfCell[i]];
            if (form.Class is not (FormClass.Flat or FormClass.Slope)) continue;
            (First[i], FirstForm[i]) = ((float)request.Weights.Of(form.Class), (short)form.Id);
        }
    }

    private void AddCover(SpotRequest request)
    {
        for (int m = 0; m < Math.Min(request.Cover.Count, short.MaxValue); m++)
        {
            PlanePoint at = request.Grid.Projection.ToPlane(request.Cover[m].Place);
            double full = request.Cover[m].RadiusM + 15, reach = request.Cover[m].RadiusM + request.Weights.CoverReachM;
            double column = _frame.ColumnAt(at.XM), row = _frame.RowAt(at.YM), n = reach / _frame.CellM;
            if (!(Math.Abs(column) < 1e6 && Math.Abs(row) < 1e6)) continue;
            for (int y = Math.Max(0, (int)Math.Ceiling(row - n)); y <= Math.Min(_frame.Ny - 1, (int)(row + n)); y++)
            {
                for (int x = Math.Max(0, (int)Math.Ceiling(column - n)); x <= Math.Min(_frame.Nx - 1, (int)(column + n)); x++)
                {
                    double d = Math.Sqrt(((x - column) * (x - column)) + ((y - row) * (y - row))) * _frame.CellM;
                    float share = (float)Math.Clamp((reach - d) / Math.Max(1, reach - full), 0, 1);
                    int i = (y * _frame.Nx) + x;
                    if (share > Cover[i]) (Cover[i], CoverMark[i]) = (share, (short)m);
                }
            }
        }
    }
}
