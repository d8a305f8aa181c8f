namespace SecondShore.Formats.Surveys.Arrays;

/// <summary>Kind of the elements of an array.</summary>
internal enum ElementKind
{
    /// <summary>Neither number nor text that is read here.</summary>
    Other,

    /// <summary>Whole numbers.</summary>
    Whole,

    /// <summary>IEEE 754 floating point.</summary>
    Floating,

    /// <summary>Text of a fixed length.</summary>
    Text,

    /// <summary>Text that stands elsewhere in the file.</summary>
    TextElsewhere,
}

/// <summary>Type of the elements of an array.</summary>
internal readonly record struct ElementType(ElementKind Kind, int Bytes, bool BigEndian, bool Signed)
{
    /// <summary>Whether an element is a number that <see cref="Number"/> reads.</summary>
    public bool IsNumber => (Kind == ElementKind.Floating && Bytes is 4 or 8) || (Kind == ElementKind.Whole && Bytes is 1 or 2 or 4 or 8);

    /// <summary>The element as a number.</summary>
    public double Number(ReadOnlySpan<byte> element)
    {
        ulong bits = 0;
        for (int i = 0; i < Bytes; i++) bits |= (ulong)element[BigEndian ? Bytes - 1 - i : i] << (8 * i);
        if (Kind == ElementKind.Floating) return Bytes == 4 ? BitConverter.UInt32BitsToSingle((uint)bits) : BitConverter.UInt64BitsToDouble(bits);
        int spare = 64 - (8 * Bytes);
        return Signed ? (long)(bits << spare) >> spare : bits;
    }

    /// <summary>Elements that stand in a row, as numbers.</summary>
    public double[] Numbers(ReadOnlySpan<byte> elements)
    {
        double[] numbers = new double[elements.Length / Bytes];
        for (int i = 0; i < numbers.Length; i++) numbers[i] = Number(elements.Slice(i * Bytes, Bytes));
        return numbers;
    }
}
