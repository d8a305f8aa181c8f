namespace SecondShore.Formats.Surveys.Arrays;

/// <summary>Takes one element of an array: its place in rows of the last dimension, and its bytes as filed.</summary>
internal delegate void TakeElement(long index, ReadOnlySpan<byte> element);

/// <summary>A named array of a NetCDF or HDF5 file. Its elements are read when asked for.</summary>
/// <param name="Name">Name; groups are parted by slashes.</param>
/// <param name="Shape">Length of each dimension; empty for a single value.</param>
/// <param name="Dimensions">Names of the dimensions; empty where the file does not name them plainly.</param>
/// <param name="Type">Type of an element.</param>
/// <param name="Attributes">What is said of the array.</param>
/// <param name="ReadElements">Hands every element that the file holds to the taker; throws <see cref="ArrayFault"/> where the file is damaged.</param>
internal sealed record FiledArray(
    string Name, IReadOnlyList<long> Shape, IReadOnlyList<string> Dimensions, ElementType Type,
    IReadOnlyDictionary<string, ArrayAttribute> Attributes, Action<TakeElement, CancellationToken> ReadElements)
{
    /// <summary>Number of elements.</summary>
    public long Count => Shape.Aggregate(1L, (all, n) => all * n);

    /// <summary>Text of an attribute; empty without it.</summary>
    public string Text(string attribute) => Attributes.TryGetValue(attribute, out ArrayAttribute? found) ? found.Text : "";

    /// <summary>First number of an attribute; null without it.</summary>
    public double? Number(string attribute) => Attributes.TryGetValue(attribute, out ArrayAttribute? found) && found.Numbers.Count > 0 ? found.Numbers[0] : null;

    /// <summary>All elements of a short array as numbers; NaN where the file holds none.</summary>
    public double[] Numbers(CancellationToken cancel)
    {
        double[] numbers = new double[Count];
        Array.Fill(numbers, double.NaN);
        ReadElements((i, element) => numbers[i] = Type.Number(element), cancel);
        return numbers;
    }
}

/// <summary>What is said of an array: a text, or numbers.</summary>
internal sealed record ArrayAttribute(string Text, IReadOnlyList<double> Numbers);

/// <summary>What an array file cannot be read for, as a sentence.</summary>
internal sealed class ArrayFault(string sentence) : Exception(sentence)
{
    /// <summary>The usual one.</summary>
    public static ArrayFault Damaged() => new("the file is cut short or damaged: its table of contents cannot be followed. Copy or export it again.");
}
