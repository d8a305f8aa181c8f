using SecondShore.Engine.Core.Grid;

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
    /// <summary>Elements of an array, at most: more than any file holds, and their bytes still fit a number.</summary>
    private const long MostElements = 1L << 40;

    /// <summary>No depth or height in any unit is as large: what is stands for none.</summary>
    private const double MostM = 90_000;

    /// <summary>Number of elements.</summary>
    public long Count => CountOf(Shape);

    /// <summary>Number of elements of a shape.</summary>
    /// <exception cref="ArrayFault">No file holds as many.</exception>
    public static long CountOf(IReadOnlyList<long> shape)
    {
        long all = 1;
        foreach (long length in shape) all = length > 0 && all > MostElements / length ? throw ArrayFault.Damaged() : all * length;
        return all;
    }

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

    /// <summary>All elements as depths or heights, scaled as the attributes say; NaN where the file holds none.</summary>
    /// <exception cref="ArrayFault">The array is too large or damaged.</exception>
    public float[] Scaled(CancellationToken cancel)
    {
        HoldToSize();
        float[] scaled = new float[Count];
        Array.Fill(scaled, float.NaN);
        double scale = Number("scale_factor") ?? 1, shift = Number("add_offset") ?? 0;
        double fill = Number("_FillValue") ?? double.NaN, missing = Number("missing_value") ?? double.NaN;
        ReadElements((i, element) =>
        {
            double value = Type.Number(element);
            if (value != fill && value != missing && Math.Abs((value * scale) + shift) < MostM) scaled[i] = (float)((value * scale) + shift);
        }, cancel);
        return scaled;
    }

    /// <summary>Refuses a grid with more cells than are taken.</summary>
    /// <exception cref="ArrayFault">It is too large.</exception>
    public void HoldToSize()
    {
        if (Count > GridFrame.MaxCells)
            throw new ArrayFault($"the grid has {string.Join(" x ", Shape)} cells where at most {GridFrame.MaxCells} are taken; cut or coarsen it.");
    }
}

/// <summary>What is said of an array: a text, or numbers.</summary>
internal sealed record ArrayAttribute(string Text, IReadOnlyList<double> Numbers);

/// <summary>What an array file cannot be read for.</summary>
internal sealed class ArrayFault(FindingForm sentence) : Exception
{
    /// <summary>What is wrong, and what to do.</summary>
    public Finding Finding { get; } = sentence.ToFinding();

    /// <summary>The usual one.</summary>
    public static ArrayFault Damaged() => new("the file is cut short or damaged: its table of contents cannot be followed. Copy or export it again.");
}
