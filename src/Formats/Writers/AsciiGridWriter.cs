using System.Globalization;
using System.Text;

namespace SecondShore.Formats.Writers;

/// <summary>Writes ESRI ASCII grids.</summary>
public static class AsciiGridWriter
{
    /// <summary>Value written where there is no data.</summary>
    public static readonly double NoData = -9999;

    /// <summary>Writes a grid of square cells.</summary>
    /// <param name="columns">Columns.</param>
    /// <param name="rows">Rows.</param>
    /// <param name="westX">West edge, in the coordinate system's unit.</param>
    /// <param name="southY">South edge.</param>
    /// <param name="cell">Side of a cell.</param>
    /// <param name="values">[rows*columns], row-major, row 0 southmost (as the engine's grids); NaN where there is no data.</param>
    /// <param name="decimals">Digits after the point, 0 to 6.</param>
    /// <exception cref="ArgumentException">The number of values is not rows times columns.</exception>
    public static string Write(int columns, int rows, double westX, double southY, double cell, ReadOnlySpan<float> values, int decimals = 2)
    {
        if (values.Length != checked(columns * rows)) throw new ArgumentException($"{values.Length} values are given for {columns} x {rows} cells.", nameof(values));
        string form = "F" + Math.Clamp(decimals, 0, 6).ToString(CultureInfo.InvariantCulture);
        StringBuilder text = new((values.Length * 6) + 200);
        text.Append(CultureInfo.InvariantCulture, $"ncols {columns}\nnrows {rows}\nxllcorner {westX:R}\nyllcorner {southY:R}\ncellsize {cell:R}\nNODATA_value {NoData}\n");
        for (int row = rows - 1; row >= 0; row--)
        {
            for (int column = 0; column < columns; column++)
            {
                float value = values[(row * columns) + column];
                if (column > 0) text.Append(' ');
                if (float.IsNaN(value)) text.Append(CultureInfo.InvariantCulture, $"{NoData}");
                else text.Append(value.ToString(form, CultureInfo.InvariantCulture));
            }

            text.Append('\n');
        }

        return text.ToString();
    }
}
