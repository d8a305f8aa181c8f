namespace SecondShore.TestKit;

/// <summary>Damages bytes in the ways files get damaged, and in the ways an attacker would, from a seed.</summary>
public sealed class Mutator(ulong seed)
{
    private static readonly uint[] Extremes = [0, 1, 0x7FFFFFFF, 0x80000000, 0xFFFFFFFF, 0x7FFF, 0xFFFF, 0x10000, 0x7FC00000, 0xFF800000];
    private ulong _state = (seed * 0x9E3779B97F4A7C15) + 0xD1B54A32D192ED03;

    /// <summary>A damaged copy; the input is not changed.</summary>
    public byte[] Damage(byte[] bytes)
    {
        List<byte> result = [.. bytes];
        int times = 1 + Next(4);
        for (int i = 0; i < times && result.Count > 0; i++) Once(result);
        return [.. result];
    }

    private void Once(List<byte> b)
    {
        int at = Next(b.Count);
        switch (Next(10))
        {
            case 0: b[at] ^= (byte)(1 << Next(8)); break;
            case 1: b[at] = (byte)Next(256); break;
            case 2: b.RemoveRange(at, b.Count - at); break;
            case 3: b.RemoveRange(at, Math.Min(1 + Next(64), b.Count - at)); break;
            case 4: b.InsertRange(at, b.GetRange(at, Math.Min(1 + Next(200), b.Count - at))); break;
            case 5 or 6: Word(b, at); break;
            case 7: Digits(b, at); break;
            case 8: b.InsertRange(at, Enumerable.Repeat((byte)"\0\"<[{,;\n\r-"[Next(10)], 1 + Next(300))); break;
            default: for (int i = 0; i < 16 && at + i < b.Count; i++) b[at + i] = (byte)Next(256); break;
        }
    }

    // Lengths and counts of binary formats stand on even places, mostly near the head.
    private void Word(List<byte> b, int at)
    {
        if (Next(2) == 0) at = Next(Math.Min(b.Count, 400));
        uint value = Extremes[Next(Extremes.Length)];
        for (int i = 0; i < 4 && (at & ~1) + i < b.Count; i++) b[(at & ~1) + i] = (byte)(value >> (8 * i));
    }

    private void Digits(List<byte> b, int at)
    {
        for (int i = at; i < Math.Min(b.Count, at + 400); i++)
        {
            if (b[i] is < (byte)'0' or > (byte)'9') continue;
            if (Next(2) == 0) b[i] = (byte)('0' + Next(10));
            else b.InsertRange(i, Enumerable.Repeat((byte)'9', 1 + Next(30)));
            return;
        }
    }

    private int Next(int below)
    {
        _state ^= _state << 13;
        _state ^= _state >> 7;
        _state ^= _state << 17;
        return (int)(_state % (ulong)below);
    }
}
