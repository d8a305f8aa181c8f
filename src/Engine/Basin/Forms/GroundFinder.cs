namespace SecondShore.Engine.Basin.Forms;

/// <summary>Tells near-level and evenly sloping bottom apart where no sharper form lies.</summary>
internal static class GroundFinder
{
    public static (FormClass?[] Ground, List<(FormClass Class, List<int> Cells)> Areas) Find(Bed bed, bool[] taken)
    {
        bool[] flat = new bool[bed.Frame.Count], slope = new bool[bed.Frame.Count];
        for (int i = 0; i < flat.Length; i++)
        {
            if (!bed.IsWet(i) || taken[i]) continue;
            flat[i] = bed.SlopeTan[i] <= bed.Options.FlatTan;
            slope[i] = bed.SlopeTan[i] >= bed.Options.SlopeTan && bed.SlopeTan[i] < bed.Options.BluffTan;
        }

        FormClass?[] ground = new FormClass?[bed.Frame.Count];
        List<(FormClass, List<int>)> areas = [];
        double open = 0.25 * bed.ScaleM / bed.Frame.CellM;
        int least = Math.Max(6, (int)(4 * bed.ScaleM * bed.ScaleM / bed.Frame.CellAreaM2));
        foreach ((bool[] mask, FormClass form) in ((bool[], FormClass)[])[(flat, FormClass.Flat), (slope, FormClass.Slope)])
        {
            // Closing over pimples, then opening away what is thinner than half the yardstick.
            bool[] closed = CellGroups.Grow(CellGroups.Grow(mask, bed.Frame, 1), bed.Frame, -1);
            for (int i = 0; i < closed.Length; i++) closed[i] &= bed.IsWet(i) && !taken[i];
            bool[] opened = open >= 1 ? CellGroups.Grow(CellGroups.Grow(closed, bed.Frame, -open), bed.Frame, open) : closed;
            for (int i = 0; i < opened.Length; i++) opened[i] &= closed[i];
            foreach (List<int> group in CellGroups.Of(opened, bed.Frame, least))
            {
                areas.Add((form, group));
                foreach (int i in group) ground[i] = form;
            }
        }

        return (ground, areas);
    }
}
