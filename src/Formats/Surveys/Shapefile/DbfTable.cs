using System.Buffers.Binary;
using System.Text;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Shapefile;

/// <summary>The attribute table (dBASE) beside a shapefile; damaged tables read as far as they go.</summary>
internal sealed class DbfTable
{
    private readonly byte[] _bytes;
    private readonly int _first;
    private readonly int _recordBytes;
    private readonly List<(string Name, char Type, int Offset, int Length)> _fields = [];

    private DbfTable(byte[] bytes, int first, int recordBytes) => (_bytes, _first, _recordBytes) = (bytes, first, recordBytes);

    /// <summary>Opens a table; null when its head makes no sense.</summary>
    public static DbfTable? Open(byte[]? bytes)
    {
        if (bytes is null || bytes.Length < 33) return null;
        int first = BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(8)), record = BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(10));
        if (first < 33 || first > bytes.Length || record < 2) return null;
        DbfTable table = new(bytes, first, record);
        int offset = 1;
        for (int at = 32; at + 32 <= first && bytes[at] != 0x0D; at += 32)
        {
            string name = Encoding.Latin1.GetString(bytes, at, 11).Split('\0')[0].Trim();
            int length = bytes[at + 16];
            if (offset + length > record) break;
            if (name.Length > 0) table._fields.Add((name, (char)bytes[at + 11], offset, length));
            offset += length;
        }

        return table._fields.Count > 0 ? table : null;
    }

    /// <summary>Names of the columns with a number in one of the first rows.</summary>
    public IReadOnlyList<string> NumericNames(int rows)
    {
        List<string> names = [];
        foreach ((string name, _, _, _) in _fields)
        {
            // Words such as "2-4 m" count as numbers where the name says that they are depths.
            bool written = DepthAttribute.Of(name) is not null;
            for (int row = 0; row < Math.Min(rows, 200); row++)
            {
                if (double.IsNaN(Number(row, name)) && !(written && DepthText.TryParse(Cell(row, name), out _))) continue;
                names.Add(name);
                break;
            }
        }

        return names;
    }

    /// <summary>A cell as a number; NaN where it is none.</summary>
    public double Number(int row, string column) => NumberText.TryParse(Cell(row, column), true, out double value) ? value : double.NaN;

    /// <summary>A cell as a depth or the beginning of a band, in the survey's own unit; NaN where it is none.</summary>
    public double Depth(int row, string column, RawSurvey raw)
    {
        string cell = Cell(row, column);
        if (NumberText.TryParse(cell, true, out double value)) return value;
        return DepthText.TryParse(cell, out DepthText written) ? raw.Written(written) : double.NaN;
    }

    private string Cell(int row, string column)
    {
        foreach ((string name, _, int offset, int length) in _fields)
        {
            if (name != column) continue;
            long at = _first + ((long)row * _recordBytes) + offset;
            return at + length > _bytes.Length ? "" : Encoding.Latin1.GetString(_bytes, (int)at, length).Trim('\0', ' ');
        }

        return "";
    }
}
