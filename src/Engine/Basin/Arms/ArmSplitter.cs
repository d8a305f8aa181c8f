using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>Cuts a lake into arms: basins behind sills, and drowned side valleys that join a main channel without one.</summary>
public static class ArmSplitter
{
    /// <summary>Splits a lake.</summary>
    /// <param name="grid">Depths at the level wanted.</param>
    /// <param name="options">What counts as an arm; null takes the usual choice.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>Arms, deepest first; none where no cell is water.</returns>
    public static ArmSet Split(DepthGrid grid, ArmOptions? options = null, CancellationToken cancel = default)
    {
        Require.NotNull(grid);
        options ??= ArmOptions.Default;
        GridFrame frame = grid.Frame;
        int water = 0;
        foreach (float depthM in grid.DepthM) if (depthM > 0) water++;
        short[] label = new short[frame.Count];
        Array.Fill(label, (short)-1);
        if (water == 0) return new ArmSet(grid, label, []);
        int leastCells = (int)Math.Max(1, Math.Ceiling(Math.Max(options.LeastShare * water, options.LeastAreaM2 / frame.CellAreaM2)));
        int[] regions = Regions(grid, options, leastCells, cancel);
        regions = CutReaches(grid, regions, options.ReachLengthM, leastCells, cancel);
        cancel.ThrowIfCancellationRequested();
        return Describe(grid, regions, leastCells, options);
    }

    private static int[] Regions(DepthGrid grid, ArmOptions options, int leastCells, CancellationToken cancel)
    {
        GridFrame frame = grid.Frame;
        int[] basins = SillBasins.Label(grid, options.SillShare, Math.Max(1, leastCells / 3));
        cancel.ThrowIfCancellationRequested();
        int[] widths = NarrowArms.Label(grid, options.NarrowShare);
        long[] key = new long[frame.Count];
        for (int i = 0; i < key.Length; i++) key[i] = basins[i] < 0 ? -1 : ((long)basins[i] << 32) | (uint)widths[i];
        RegionMap map = new(frame, key);
        map.MergeSmall(leastCells);
        MergeStubs(grid, map, options.SillShare);
        return map.Labels();
    }

    // A bay no longer than its mouth is wide is a part of the lake, not an arm, unless a sill cuts it off.
    private static void MergeStubs(DepthGrid grid, RegionMap map, double sillShare)
    {
        GridFrame frame = grid.Frame;
        bool merged = true;
        while (merged)
        {
            merged = false;
            int[] labels = map.Labels(), standing = map.Standing();
            foreach (int r in standing)
            {
                (int into, int sides) = map.LongestBorder(r);
                if (into < 0 || map.NeighboursOf(r) != 1 || map.CellsOf(r) > map.CellsOf(into)) continue;
                List<int> mouth = MouthCells(frame, labels, r);
                if (HasSill(grid, labels, r, mouth, sillShare)) continue;
                float[] inland = WaterDistance.From(frame, labels, r, mouth);
                float longest = 0;
                foreach (float cells in inland) if (float.IsFinite(cells)) longest = Math.Max(longest, cells);
                // A slanting mouth has about four thirds as many sides as its straight length.
                if (longest >= 0.75 * sides) continue;
                map.Merge(r, into);
                merged = true;
                break;
            }
        }
    }

    private static bool HasSill(DepthGrid grid, int[] labels, int region, List<int> mouth, double sillShare)
    {
        float floorM = 0, mouthM = 0;
        for (int i = 0; i < labels.Length; i++) if (labels[i] == region) floorM = Math.Max(floorM, grid.DepthM[i]);
        foreach (int i in mouth) mouthM = Math.Max(mouthM, grid.DepthM[i]);
        return floorM - mouthM >= Math.Max(SillBasins.LeastReliefM, sillShare * floorM);
    }

    private static List<int> MouthCells(GridFrame frame, int[] labels, int region)
    {
        List<int> mouth = [];
        for (int i = 0; i < labels.Length; i++)
        {
            if (labels[i] != region) continue;
            int x = i % frame.Nx, y = i / frame.Nx;
            for (int k = 1; k < 9; k += 2)
            {
                int nx = x + (k % 3) - 1, ny = y + (k / 3) - 1;
                if (!frame.Contains(nx, ny)) continue;
                int other = labels[frame.Index(nx, ny)];
                if (other < 0 || other == region) continue;
                mouth.Add(i);
                break;
            }
        }

        return mouth;
    }

    // A lake of many kilometres is cut along the water, from its deepest place: its shallow end cools and mixes first.
    private static int[] CutReaches(DepthGrid grid, int[] regions, double reachM, int leastCells, CancellationToken cancel)
    {
        GridFrame frame = grid.Frame;
        Dictionary<int, int> deepest = [];
        for (int i = 0; i < regions.Length; i++)
        {
            if (regions[i] >= 0 && (!deepest.TryGetValue(regions[i], out int best) || grid.DepthM[i] > grid.DepthM[best])) deepest[regions[i]] = i;
        }

        long[] key = new long[regions.Length];
        for (int i = 0; i < key.Length; i++) key[i] = regions[i] < 0 ? -1 : (long)regions[i] << 16;
        bool cut = false;
        foreach ((int region, int start) in deepest)
        {
            cancel.ThrowIfCancellationRequested();
            if (Math.Max(frame.Nx, frame.Ny) * frame.CellM < 1.2 * reachM) break;
            float[] along = WaterDistance.From(frame, regions, region, [start]);
            float longest = 0;
            foreach (float cells in along) if (float.IsFinite(cells)) longest = Math.Max(longest, cells);
            int reaches = (int)Math.Clamp(Math.Round(longest * frame.CellM / reachM), 1, 12);
            if (reaches < 2) continue;
            cut = true;
            for (int i = 0; i < key.Length; i++)
                if (regions[i] == region) key[i] += Math.Min(reaches - 1, (int)(along[i] / (longest * 1.0001f) * reaches));
        }

        if (!cut) return regions;
        RegionMap map = new(frame, key);
        map.MergeSmall(leastCells);
        return map.Labels();
    }

    private static ArmSet Describe(DepthGrid grid, int[] regions, int leastCells, ArmOptions options)
    {
        GridFrame frame = grid.Frame;
        Dictionary<int, List<int>> cells = [];
        for (int i = 0; i < regions.Length; i++)
        {
            if (regions[i] < 0) continue;
            if (!cells.TryGetValue(regions[i], out List<int>? list)) cells[regions[i]] = list = [];
            list.Add(i);
        }

        // A puddle apart from the lake has no neighbour to be merged with, and is no arm: it counts with the largest water.
        List<int> largest = cells.Values.MaxBy(list => list.Count)!;
        foreach (List<int> puddle in cells.Values.Where(list => list.Count < leastCells && list != largest)) largest.AddRange(puddle);
        ArmCells[] parts = [.. cells.Values.Where(list => list.Count >= leastCells || list == largest).Select(list => new ArmCells(grid, list))];
        Array.Sort(parts, (a, b) => b.MaxDepthM.CompareTo(a.MaxDepthM));
        short[] label = new short[frame.Count];
        Array.Fill(label, (short)-1);
        for (int a = 0; a < parts.Length; a++)
            foreach (int i in parts[a].Cells) label[i] = (short)a;
        string[] names = ArmNames.For([.. parts.Select(p => p.Centroid)], [.. parts.Select(p => p.Basin.VolumeM3)], Given(grid, label, parts, options.Names));
        double[][] stretches = OpenWater.StretchesM(grid, label, parts.Length);
        IReadOnlyList<ArmLink>[] links = ArmPassages.Of(grid, label, parts.Length);
        double lakeMean = 0, total = 0;
        for (int a = 0; a < parts.Length; a++)
        {
            lakeMean += stretches[a].Average() * parts[a].Cells.Count;
            total += parts[a].Cells.Count;
        }

        lakeMean /= total;
        Arm[] arms = [.. parts.Select((p, a) => new Arm
        {
            Name = names[a],
            Hypsography = p.Basin,
            AreaM2 = p.Cells.Count * frame.CellAreaM2,
            MeanDepthM = p.MeanDepthM,
            MaxDepthM = p.MaxDepthM,
            Deepest = p.Deepest,
            Centroid = p.Centroid,
            FetchM = stretches[a].Max(),
            ExposureShare = stretches[a].Average() / lakeMean,
            Links = links[a],
        })];
        return new ArmSet(grid, label, arms);
    }

    // A creek too small for an arm of its own lies in the main lake: its name must not become the main lake's. So the largest
    // water takes a name only from a place over its deeper half.
    private static string?[] Given(DepthGrid grid, short[] label, ArmCells[] parts, IReadOnlyList<NamedPlace> names)
    {
        string?[] given = new string?[parts.Length];
        ArmCells main = parts.MaxBy(p => p.Basin.VolumeM3)!;
        foreach (NamedPlace named in names)
        {
            if (!grid.Frame.TryCellAt(grid.Projection.ToPlane(named.Place), out int ix, out int iy)) continue;
            int cell = grid.Frame.Index(ix, iy), a = label[cell];
            if (a < 0 || (parts.Length > 1 && ReferenceEquals(parts[a], main) && grid.DepthM[cell] < 0.5 * main.MaxDepthM)) continue;
            given[a] ??= named.Name;
        }

        return given;
    }
}
