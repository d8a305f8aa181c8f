using System.Runtime.InteropServices;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>Turns what the finders found into forms, and keeps which cells are taken.</summary>
internal sealed partial class FormCollector
{
    private readonly Bed _bed;
    private readonly List<BottomForm> _forms = [];
    private readonly short[] _formOf;
    private readonly bool[] _banks;

    public FormCollector(Bed bed)
    {
        _bed = bed;
        Corridor = new bool[bed.Frame.Count];
        Taken = new bool[bed.Frame.Count];
        _banks = new bool[bed.Frame.Count];
        _formOf = new short[bed.Frame.Count];
        Array.Fill(_formOf, (short)-1);
    }

    /// <summary>Cells of channels and their banks.</summary>
    public bool[] Corridor { get; }

    /// <summary>Cells where an edge belongs to another form: channels with their whole banks, and what is taken.</summary>
    public bool[] NoLedge()
    {
        bool[] cells = (bool[])_banks.Clone();
        for (int i = 0; i < cells.Length; i++) cells[i] |= Taken[i];
        return cells;
    }

    /// <summary>Cells of every form so far.</summary>
    public bool[] Taken { get; }

    public void Channels(List<FoundChannel> channels)
    {
        foreach (FoundChannel channel in channels)
        {
            double least = Math.Max(FormSizes.LeastBankM, _bed.Options.BankShare * _bed.DeepM), bank = Mean(channel.BankM), half = Mean(channel.HalfWidthM);
            (double shallow, double deep) = Range(channel.Line);
            BottomForm form = Add(channel.IsMain ? FormClass.MainChannel : FormClass.SideChannel, FormGeometry.Line(channel.Line), channel.Line[channel.Line.Length / 2], new(channel.LengthM, 2 * half, shallow, deep, channel.Line[0].BearingToDeg(channel.Line[^1]), bank, bank / Math.Max(half, _bed.Frame.CellM), Bed.Sure(bank, least)));
            _forms[form.Id] = form with { LeftEdge = Edge(channel, 1), RightEdge = Edge(channel, -1) };
            _bed.Paint(Corridor, channel.Line, k => channel.HalfWidthM[k] + (FormSizes.CorridorS * _bed.ScaleM));
            _bed.Paint(_banks, channel.Line, k => channel.HalfWidthM[k] + (FormSizes.BanksS * _bed.ScaleM));
            PaintForm(form.Id, channel.Line, k => channel.HalfWidthM[k]);
            if (channel.Joins is { } join)
                Add(FormClass.Junction, FormGeometry.Point(join), join, new(4 * half, 2 * half, DepthAt(join), DepthAt(join), double.NaN, bank, 0, Bed.Sure(bank, least)));
            foreach (FoundBend bend in BendFinder.Find(channel.Line, Math.Max(2 * half, _bed.ScaleM), double.DegreesToRadians(FormSizes.BendSearchShare * _bed.Options.BendTurnDeg))) Bend(channel, bend, half);
        }

        for (int i = 0; i < Taken.Length; i++) Taken[i] |= Corridor[i];
    }

    public void Points(List<FoundCrest> crests, ArmDrainage arms)
    {
        foreach (FoundCrest crest in crests)
        {
            bool secondary = arms.IsInside(crest.Line);
            (double shallow, double deep) = Range(crest.Line);
            BottomForm form = Add(secondary ? FormClass.SecondaryPoint : FormClass.MainPoint, FormGeometry.Line(crest.Line), crest.Line[crest.Line.Length / 2], new(Length(crest.Line), 2 * _bed.ScaleM, shallow, deep, crest.Line[0].BearingToDeg(crest.Line[^1]), crest.FallM, 0, Bed.Sure(crest.FallM, crest.LeastM)));
            PaintForm(form.Id, crest.Line, _ => FormSizes.PointS * _bed.ScaleM);
            _bed.Paint(Taken, crest.Line, _ => FormSizes.PointTakenS * _bed.ScaleM);
        }
    }

    public void Bluffs(List<FoundEdge> walls)
    {
        foreach (FoundEdge wall in walls)
        {
            double sure = Bed.Sure(wall.DropM, FormSizes.BluffDropShare * _bed.DeepM);
            BottomForm form = Add(FormClass.BluffWall, FormGeometry.Line(wall.Line), wall.Line[wall.Line.Length / 2], new(Length(wall.Line), 0, wall.ShallowM, wall.DeepM, wall.Line[0].BearingToDeg(wall.Line[^1]), wall.DropM, wall.Tan, sure));
            PaintForm(form.Id, wall.Line, _ => FormSizes.BluffS * _bed.ScaleM);
            _bed.Paint(Taken, wall.Line, _ => FormSizes.BluffTakenS * _bed.ScaleM);
            foreach (PlanePoint end in (PlanePoint[])[wall.Line[0], wall.Line[^1]])
                Add(FormClass.BluffEnd, FormGeometry.Point(end), end, new(_bed.ScaleM, 0, wall.ShallowM, wall.DeepM, double.NaN, wall.DropM, wall.Tan, sure));
        }
    }

    public void Ledges(List<FoundEdge> ledges)
    {
        foreach (FoundEdge ledge in ledges)
        {
            BottomForm form = Add(FormClass.Ledge, FormGeometry.Line(ledge.Line), ledge.Line[ledge.Line.Length / 2], new(Length(ledge.Line), 0, ledge.ShallowM, ledge.DeepM, ledge.Line[0].BearingToDeg(ledge.Line[^1]), ledge.DropM, ledge.Tan, Bed.Sure(ledge.DropM, Math.Max(FormSizes.LeastLedgeM, _bed.Options.LedgeShare * _bed.DeepM))));
            PaintForm(form.Id, ledge.Line, _ => FormSizes.LedgeS * _bed.ScaleM);
        }
    }

    public FormMap Finish()
    {
        (FormClass?[] ground, List<(FormClass Class, List<int> Cells)> areas) = GroundFinder.Find(_bed, Taken);
        foreach ((FormClass kind, List<int> cells) in areas)
        {
            List<IReadOnlyList<PlanePoint>> rings = CellOutline.Trace(_bed.Frame, _bed.Z, CollectionsMarshal.AsSpan(cells));
            double shallow = double.MaxValue, deep = 0, sum = 0;
            int inmost = cells[0];
            foreach (int i in cells)
            {
                shallow = Math.Min(shallow, -_bed.Z[i]);
                deep = Math.Max(deep, -_bed.Z[i]);
                sum += _bed.SlopeTan[i];
                if (_bed.ShoreM[i] > _bed.ShoreM[inmost]) inmost = i;
            }

            if (rings.Count == 0 || _forms.Count >= short.MaxValue) continue;
            double mean = sum / cells.Count, size = Math.Sqrt(cells.Count * _bed.Frame.CellAreaM2);
            double sure = kind == FormClass.Flat ? Math.Clamp(1 - (0.5 * mean / _bed.Options.FlatTan), 0, 0.99) : Bed.Sure(mean, _bed.Options.SlopeTan);
            BottomForm form = Add(kind, FormGeometry.Area(rings), _bed.Frame.Centre(inmost), new(size, 0, shallow, deep, double.NaN, 0, mean, sure));
            foreach (int i in cells)
                if (_formOf[i] < 0) _formOf[i] = (short)form.Id;
        }

        MeasureFlats(ground);
        return new FormMap(_bed.Frame, _bed.ScaleM, _forms, _formOf, ground);
    }

    // How far a bend's or channel's edge is from the nearest flat.
    private void MeasureFlats(FormClass?[] ground)
    {
        bool[] flat = new bool[ground.Length];
        for (int i = 0; i < flat.Length; i++) flat[i] = ground[i] == FormClass.Flat;
        if (!Array.Exists(flat, f => f)) return;
        float[] squared = Gridding.NearestCell.Of(flat, _bed.Frame.Nx, _bed.Frame.Ny).SquaredCells;
        for (int k = 0; k < _forms.Count; k++)
        {
            BottomForm form = _forms[k];
            if (form.Class is not (FormClass.ChannelBend or FormClass.Junction) || !_bed.Frame.TryCellAt(form.Place, out int ix, out int iy)) continue;
            double toFlatM = Math.Max(0, (Math.Sqrt(squared[_bed.Frame.Index(ix, iy)]) * _bed.Frame.CellM) - (0.5 * form.WidthM) - (FormSizes.CorridorS * _bed.ScaleM));
            if (toFlatM < FormSizes.NearFlatS * _bed.ScaleM) _forms[k] = form with { ToFlatM = toFlatM };
        }
    }

    private void Bend(FoundChannel channel, FoundBend bend, double half)
    {
        PlanePoint apex = channel.Line[bend.Apex];
        BottomForm form = Add(FormClass.ChannelBend, FormGeometry.Point(apex), apex, new(bend.LengthM, 2 * half, DepthAt(apex) - channel.BankM[bend.Apex], DepthAt(apex), double.NaN, channel.BankM[bend.Apex], channel.BankM[bend.Apex] / Math.Max(half, _bed.Frame.CellM), Bed.Sure(Math.Abs(bend.TurnRad), double.DegreesToRadians(_bed.Options.BendTurnDeg))));
        PaintForm(form.Id, [apex], _ => half + _bed.ScaleM);
    }

    // What is measured of a form: sizes and depths, m; the bearing it runs, degrees; how far it stands out, m; its edge's slope; how sure it is.
    private readonly record struct Measures(double LengthM, double WidthM, double ShallowM, double DeepM, double OrientationDeg,
        double ProminenceM, double Tan, double SureShare);

    private BottomForm Add(FormClass kind, FormGeometry geometry, PlanePoint place, Measures size)
    {
        BottomForm form = new()
        {
            Id = _forms.Count,
            Class = kind,
            Geometry = geometry,
            Place = place,
            LengthM = size.LengthM,
            WidthM = size.WidthM,
            ShallowM = Math.Max(0, size.ShallowM),
            DeepM = size.DeepM,
            OrientationDeg = size.OrientationDeg,
            ProminenceM = size.ProminenceM,
            EdgeSlopeDeg = double.RadiansToDegrees(Math.Atan(size.Tan)),
            ConfidenceShare = size.SureShare,
        };
        _forms.Add(form);
        return form;
    }

    private void PaintForm(int id, IReadOnlyList<PlanePoint> line, Func<int, double> reachM)
    {
        bool isChannel = _forms[id].Class is FormClass.MainChannel or FormClass.SideChannel;
        _bed.ForRunsNear(line, reachM, (first, end) =>
        {
            for (int i = first; i < end; i++)
                if (_bed.IsWet(i) && (!isChannel || _formOf[i] < 0)) _formOf[i] = (short)id;
        });
    }

    private static PlanePoint[] Edge(FoundChannel channel, int side)
    {
        PlanePoint[] edge = new PlanePoint[channel.Line.Length];
        for (int k = 0; k < edge.Length; k++)
        {
            (double dx, double dy) = FlowLines.Direction(channel.Line, k, 4);
            edge[k] = new PlanePoint(channel.Line[k].XM - (side * dy * channel.HalfWidthM[k]), channel.Line[k].YM + (side * dx * channel.HalfWidthM[k]));
        }

        return edge;
    }

    private (double ShallowM, double DeepM) Range(IReadOnlyList<PlanePoint> line)
    {
        double shallow = double.MaxValue, deep = 0;
        foreach (PlanePoint p in line)
        {
            double depth = DepthAt(p);
            if (double.IsNaN(depth)) continue;
            shallow = Math.Min(shallow, depth);
            deep = Math.Max(deep, depth);
        }

        return (Math.Min(shallow, deep), deep);
    }

    private double DepthAt(PlanePoint p) => -_bed.At(p.XM, p.YM);

    private static double Mean(double[] values)
    {
        double sum = 0;
        foreach (double v in values) sum += v;
        return values.Length > 0 ? sum / values.Length : 0;
    }

    private static double Length(PlanePoint[] line)
    {
        double sum = 0;
        for (int k = 1; k < line.Length; k++) sum += line[k - 1].DistanceToM(line[k]);
        return sum;
    }
}
