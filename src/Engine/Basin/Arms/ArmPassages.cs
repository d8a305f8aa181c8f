using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>The ways between neighbouring arms.</summary>
internal static class ArmPassages
{
    /// <summary>Links of each arm, widest first.</summary>
    public static IReadOnlyList<ArmLink>[] Of(DepthGrid grid, short[] label, int arms)
    {
        GridFrame frame = grid.Frame;
        Dictionary<(int Low, int High), Passage> passages = [];
        for (int i = 0; i < label.Length; i++)
        {
            if (label[i] < 0) continue;
            if (i % frame.Nx < frame.Nx - 1) Meet(grid, label, i, i + 1, passages);
            if (i + frame.Nx < label.Length) Meet(grid, label, i, i + frame.Nx, passages);
        }

        List<ArmLink>[] links = new List<ArmLink>[arms];
        for (int a = 0; a < arms; a++) links[a] = [];
        foreach (((int low, int high), Passage p) in passages)
        {
            double widthM = Math.Sqrt(((double)p.Across * p.Across) + ((double)p.Up * p.Up)) * frame.CellM;
            PlanePoint place = frame.Centre(p.DeepestCell);
            links[low].Add(new ArmLink(high, p.SillM, widthM, place));
            links[high].Add(new ArmLink(low, p.SillM, widthM, place));
        }

        foreach (List<ArmLink> list in links) list.Sort((a, b) => b.WidthM.CompareTo(a.WidthM));
        return links;
    }

    private static void Meet(DepthGrid grid, short[] label, int i, int j, Dictionary<(int Low, int High), Passage> passages)
    {
        if (label[j] < 0 || label[j] == label[i]) return;
        (int Low, int High) key = (Math.Min(label[i], label[j]), Math.Max(label[i], label[j]));
        if (!passages.TryGetValue(key, out Passage? passage)) passages[key] = passage = new Passage();
        // Sides between columns add to the passage's height, sides between rows to its width; together they give a slanting line its length.
        if (j == i + 1) passage.Up++; else passage.Across++;
        double depthM = Math.Min(grid.DepthM[i], grid.DepthM[j]);
        if (depthM <= passage.SillM) return;
        passage.SillM = depthM;
        passage.DeepestCell = grid.DepthM[i] < grid.DepthM[j] ? i : j;
    }

    private sealed class Passage
    {
        public int Across { get; set; }

        public int Up { get; set; }

        public double SillM { get; set; }

        public int DeepestCell { get; set; }
    }
}
