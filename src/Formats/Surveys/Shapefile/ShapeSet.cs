using System.Buffers.Binary;

namespace SecondShore.Formats.Surveys.Shapefile;

/// <summary>What a shape is made of.</summary>
internal enum ShapeKind
{
    /// <summary>Points.</summary>
    Points,

    /// <summary>Lines.</summary>
    Lines,

    /// <summary>Rings.</summary>
    Polygons,
}

/// <summary>One shape: its record number, its points, where its parts start, its heights (empty without).</summary>
internal sealed record Shape(int Record, ShapeKind Kind, double[] X, double[] Y, double[] Z, int[] Starts)
{
    public int PartCount => Starts.Length;

    /// <summary>A part's points without a repeated last one, the height all share (0 when they differ), and whether it closes.</summary>
    public (double[] X, double[] Y, double Even, bool Closed) Part(int part)
    {
        int from = Starts[part], to = part + 1 < Starts.Length ? Starts[part + 1] : X.Length;
        bool closed = to - from > 3 && X[from] == X[to - 1] && Y[from] == Y[to - 1];
        int end = closed ? to - 1 : to;
        double even = from < Z.Length ? Z[from] : 0;
        for (int i = from; i < Math.Min(end, Z.Length); i++) if (Z[i] != even) even = 0;
        return (X[from..end], Y[from..end], even, closed);
    }
}

/// <summary>All shapes of a .shp file, every count checked against the bytes that are there.</summary>
internal sealed class ShapeSet(byte[] bytes, CancellationToken cancellation)
{
    public List<Shape> All { get; } = [];

    public int Records { get; private set; }

    public int Nulls { get; private set; }

    public int OtherKinds { get; private set; }

    public bool Damaged { get; private set; }

    public void Read()
    {
        int at = 100;
        while (at + 12 <= bytes.Length)
        {
            if (Records % 1000 == 0) cancellation.ThrowIfCancellationRequested();
            long length = (long)BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(at + 4)) * 2;
            if (length < 4 || at + 8 + length > bytes.Length)
            {
                Damaged = true;
                return;
            }

            ReadShape(bytes.AsSpan(at + 8, (int)length));
            Records++;
            at += 8 + (int)length;
        }

        Damaged = at < bytes.Length && bytes.Length - at > 2;
    }

    private void ReadShape(ReadOnlySpan<byte> b)
    {
        int type = BinaryPrimitives.ReadInt32LittleEndian(b);
        switch (type)
        {
            case 0: Nulls++; break;
            case 1 or 11 or 21: ReadPoint(b, type); break;
            case 8 or 18 or 28: ReadMultiPoint(b, type == 18); break;
            case 3 or 13 or 23: ReadParts(b, ShapeKind.Lines, type == 13); break;
            case 5 or 15 or 25: ReadParts(b, ShapeKind.Polygons, type == 15); break;
            default: OtherKinds++; break;
        }
    }

    private void ReadPoint(ReadOnlySpan<byte> b, int type)
    {
        if (b.Length < 20) Damaged = true;
        else All.Add(new Shape(Records, ShapeKind.Points, [F64(b, 4)], [F64(b, 12)], type == 11 && b.Length >= 28 ? [F64(b, 20)] : [], [0]));
    }

    private void ReadMultiPoint(ReadOnlySpan<byte> b, bool hasZ)
    {
        int n = b.Length < 40 ? -1 : BinaryPrimitives.ReadInt32LittleEndian(b[36..]);
        if (n < 1 || 40 + ((long)n * 16) > b.Length)
        {
            Damaged = true;
            return;
        }

        Points(b, 40, n, out double[] x, out double[] y);
        All.Add(new Shape(Records, ShapeKind.Points, x, y, Heights(b, 40 + (n * 16), n, hasZ), [0]));
    }

    private void ReadParts(ReadOnlySpan<byte> b, ShapeKind kind, bool hasZ)
    {
        int parts = b.Length < 44 ? -1 : BinaryPrimitives.ReadInt32LittleEndian(b[36..]), n = b.Length < 44 ? -1 : BinaryPrimitives.ReadInt32LittleEndian(b[40..]);
        if (parts < 1 || n < 2 || 44 + ((long)parts * 4) + ((long)n * 16) > b.Length)
        {
            Damaged = true;
            return;
        }

        int[] starts = new int[parts];
        for (int i = 0; i < parts; i++)
        {
            starts[i] = BinaryPrimitives.ReadInt32LittleEndian(b[(44 + (i * 4))..]);
            if (starts[i] < (i == 0 ? 0 : starts[i - 1]) || starts[i] >= n)
            {
                Damaged = true;
                return;
            }
        }

        int at = 44 + (parts * 4);
        Points(b, at, n, out double[] x, out double[] y);
        All.Add(new Shape(Records, kind, x, y, Heights(b, at + (n * 16), n, hasZ), starts));
    }

    private static void Points(ReadOnlySpan<byte> b, int at, int n, out double[] x, out double[] y)
    {
        (x, y) = (new double[n], new double[n]);
        for (int i = 0; i < n; i++)
        {
            x[i] = F64(b, at + (i * 16));
            y[i] = F64(b, at + (i * 16) + 8);
        }
    }

    private static double[] Heights(ReadOnlySpan<byte> b, int at, int n, bool hasZ)
    {
        if (!hasZ || at + 16 + ((long)n * 8) > b.Length) return [];
        double[] z = new double[n];
        for (int i = 0; i < n; i++) z[i] = F64(b, at + 16 + (i * 8));
        return z;
    }

    private static double F64(ReadOnlySpan<byte> b, int at) => BinaryPrimitives.ReadDoubleLittleEndian(b[at..]);
}
