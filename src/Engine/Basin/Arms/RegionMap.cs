using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>Regions of a grid, their sizes and shared borders, merged step by step.</summary>
internal sealed class RegionMap
{
    private readonly GridFrame _frame;
    private readonly int[] _label;
    private readonly int[] _parent;
    private readonly int[] _cells;
    private readonly Dictionary<int, int>[] _borders;

    /// <summary>Regions are the connected pieces (by sides and corners) of equal keys.</summary>
    public RegionMap(GridFrame frame, ReadOnlySpan<long> key)
    {
        _frame = frame;
        _label = Pieces(frame, key, out List<int> cells);
        _cells = [.. cells];
        _parent = new int[_cells.Length];
        _borders = new Dictionary<int, int>[_cells.Length];
        for (int r = 0; r < _parent.Length; r++) (_parent[r], _borders[r]) = (r, []);
        for (int i = 0; i < _label.Length; i++)
        {
            if (_label[i] < 0) continue;
            if (i % frame.Nx < frame.Nx - 1) AddBorder(_label[i], _label[i + 1]);
            if (i + frame.Nx < _label.Length) AddBorder(_label[i], _label[i + frame.Nx]);
        }
    }

    /// <summary>Number of regions still standing that touch a given one.</summary>
    public int NeighboursOf(int region) => _borders[region].Count;

    /// <summary>Cells of a region.</summary>
    public int CellsOf(int region) => _cells[region];

    /// <summary>Longest border of a region, in cell sides, and with whom; -1 where it stands alone.</summary>
    public (int Neighbour, int Sides) LongestBorder(int region)
    {
        (int Neighbour, int Sides) best = (-1, 0);
        foreach ((int other, int sides) in _borders[region])
            if (sides > best.Sides || (sides == best.Sides && other < best.Neighbour)) best = (other, sides);
        return best;
    }

    /// <summary>Regions still standing, smallest first.</summary>
    public int[] Standing()
    {
        List<int> list = [];
        for (int r = 0; r < _parent.Length; r++) if (_parent[r] == r) list.Add(r);
        list.Sort((a, b) => _cells[a] != _cells[b] ? _cells[a].CompareTo(_cells[b]) : a.CompareTo(b));
        return [.. list];
    }

    /// <summary>Merges a region into another.</summary>
    public void Merge(int region, int into)
    {
        _parent[region] = into;
        _cells[into] += _cells[region];
        foreach ((int other, int sides) in _borders[region])
        {
            _borders[other].Remove(region);
            if (other == into) continue;
            _borders[into][other] = _borders[into].GetValueOrDefault(other) + sides;
            _borders[other][into] = _borders[other].GetValueOrDefault(into) + sides;
        }

        _borders[region].Clear();
    }

    /// <summary>Merges regions under a size into the neighbour they share most border with; those that stand alone stay.</summary>
    public void MergeSmall(int leastCells)
    {
        PriorityQueue<int, (int, int)> queue = new();
        foreach (int r in Standing()) if (_cells[r] < leastCells) queue.Enqueue(r, (_cells[r], r));
        while (queue.TryDequeue(out int r, out (int Cells, int) at))
        {
            if (_parent[r] != r || _cells[r] != at.Cells) continue;
            (int into, _) = LongestBorder(r);
            if (into < 0) continue;
            Merge(r, into);
            if (_cells[into] < leastCells) queue.Enqueue(into, (_cells[into], into));
        }
    }

    /// <summary>Region by cell, -1 on land.</summary>
    public int[] Labels()
    {
        int[] labels = new int[_label.Length];
        for (int i = 0; i < labels.Length; i++) labels[i] = _label[i] < 0 ? -1 : Find(_label[i]);
        return labels;
    }

    private int Find(int r)
    {
        while (_parent[r] != r) r = _parent[r] = _parent[_parent[r]];
        return r;
    }

    private void AddBorder(int a, int b)
    {
        if (b < 0 || a == b) return;
        _borders[a][b] = _borders[a].GetValueOrDefault(b) + 1;
        _borders[b][a] = _borders[b].GetValueOrDefault(a) + 1;
    }

    private static int[] Pieces(GridFrame frame, ReadOnlySpan<long> key, out List<int> cells)
    {
        int[] label = new int[frame.Count], queue = new int[frame.Count];
        Array.Fill(label, -1);
        cells = [];
        for (int seed = 0; seed < label.Length; seed++)
        {
            if (key[seed] < 0 || label[seed] >= 0) continue;
            int head = 0, tail = 0;
            queue[tail++] = seed;
            label[seed] = cells.Count;
            while (head < tail)
            {
                int i = queue[head++], cx = i % frame.Nx, cy = i / frame.Nx;
                for (int k = 0; k < 9; k++)
                {
                    int x = cx + (k % 3) - 1, y = cy + (k / 3) - 1;
                    if (!frame.Contains(x, y)) continue;
                    int j = frame.Index(x, y);
                    if (label[j] >= 0 || key[j] != key[seed]) continue;
                    label[j] = cells.Count;
                    queue[tail++] = j;
                }
            }

            cells.Add(tail);
        }

        return label;
    }
}
