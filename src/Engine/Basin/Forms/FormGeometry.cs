using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>What a form's geometry is.</summary>
public enum FormShape
{
    /// <summary>One place.</summary>
    Point,

    /// <summary>An open line.</summary>
    Line,

    /// <summary>An area: an outer ring and rings of what is left out; rings repeat no point.</summary>
    Area,
}

/// <summary>Where a form lies, in the lake's plane. Immutable.</summary>
/// <param name="Shape">Point, line or area.</param>
/// <param name="Parts">One part of one point; one part of a line's points; or rings, the outer first.</param>
public sealed record FormGeometry(FormShape Shape, IReadOnlyList<IReadOnlyList<PlanePoint>> Parts)
{
    /// <summary>A single place.</summary>
    public static FormGeometry Point(PlanePoint place) => new(FormShape.Point, [[place]]);

    /// <summary>An open line of two points or more.</summary>
    public static FormGeometry Line(IReadOnlyList<PlanePoint> points) => new(FormShape.Line, [Require.NotNull(points)]);

    /// <summary>An area by its rings, the outer first.</summary>
    public static FormGeometry Area(IReadOnlyList<IReadOnlyList<PlanePoint>> rings) => new(FormShape.Area, Require.NotNull(rings));

    /// <summary>Points of the first part: the place, the line, or the outer ring.</summary>
    public IReadOnlyList<PlanePoint> Points => Parts[0];

    /// <summary>Length of the line or of the outer ring, m; 0 for a point.</summary>
    public double LengthM
    {
        get
        {
            double sumM = 0;
            IReadOnlyList<PlanePoint> points = Parts[0];
            for (int i = 1; i < points.Count; i++) sumM += points[i - 1].DistanceToM(points[i]);
            if (Shape == FormShape.Area && points.Count > 2) sumM += points[^1].DistanceToM(points[0]);
            return sumM;
        }
    }
}
