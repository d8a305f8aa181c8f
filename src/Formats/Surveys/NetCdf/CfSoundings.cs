using SecondShore.Engine.Core.Grid;
using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.NetCdf;

/// <summary>Soundings in a NetCDF file: three arrays of one length, east, north and depth (CF 1.11, discrete sampling).</summary>
internal static class CfSoundings
{
    /// <summary>The survey that the arrays hold; null where they hold no soundings.</summary>
    /// <exception cref="ArrayFault">There are too many, or the file is damaged.</exception>
    public static RawSurvey? Read(List<FiledArray> arrays, string format, CancellationToken cancel)
    {
        foreach (FiledArray x in arrays.Where(a => IsList(a) && CfFacts.IsEast(a)))
        {
            List<FiledArray> alike = arrays.FindAll(a => a != x && IsList(a) && a.Count == x.Count);
            if (alike.Find(CfFacts.IsNorth) is not FiledArray y || CfFacts.NamedForDepth(alike) is not FiledArray depths) continue;
            if (x.Count > GridFrame.MaxCells) throw new ArrayFault($"the file has {x.Count} soundings where at most {GridFrame.MaxCells} are taken; cut or thin it.");
            RawSurvey raw = new(format);
            raw.Points.Add(new RawPoints(x.Numbers(cancel), y.Numbers(cancel), [.. depths.Scaled(cancel).Select(depth => (double)depth)], []));
            CfFacts.Tell(depths, arrays, CfFacts.IsDegrees(x) && CfFacts.IsDegrees(y), raw);
            raw.RolesTaken.Add($"{x.Name}: east");
            raw.RolesTaken.Add($"{y.Name}: north");
            raw.RolesTaken.Add($"{depths.Name}: depth");
            return raw;
        }

        return null;
    }

    private static bool IsList(FiledArray a) => a.Type.IsNumber && a.Shape.Count == 1 && a.Shape[0] > 2;
}
