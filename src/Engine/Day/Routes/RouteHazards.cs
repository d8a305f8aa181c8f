using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Day;

/// <summary>Significant wave height by place and time: what the motion of the water tells the day.</summary>
public interface ISeaState
{
    /// <summary>Significant wave height, m, 0 or more.</summary>
    double WaveM(PlanePoint place, DateTimeOffset at);
}

/// <summary>A round piece of water that no route may cross.</summary>
/// <param name="Centre">Its centre.</param>
/// <param name="RadiusM">Its radius, m.</param>
/// <param name="Name">What it is, in words.</param>
public sealed record HazardArea(PlanePoint Centre, double RadiusM, string Name);

/// <summary>A polygon in which the boat idles.</summary>
/// <param name="Ring">Its corners, three or more, either turn, no corner repeated.</param>
/// <param name="Name">Its name; may be empty.</param>
public sealed record NoWakeArea(IReadOnlyList<PlanePoint> Ring, string Name);

/// <summary>Finds hazards among cover marks at today's level.</summary>
public static class RouteHazards
{
    /// <summary>Radius taken for a mark without one, m: a fix is no better.</summary>
    public static readonly double LeastRadiusM = 12.0;

    /// <summary>Marks whose top may stand within reach of the hull: blocked for routes.</summary>
    /// <param name="marks">Cover.</param>
    /// <param name="grid">The lake at today's level.</param>
    /// <param name="boat">The boat.</param>
    /// <remarks>
    /// Timber, stumps and works of unknown height are taken to reach the surface where the water is under 12, 2 and 4 m
    /// deep: our own guesses, on the safe side. Brush and weed bend; rock of unknown height is taken as 1 m high.
    /// </remarks>
    public static IReadOnlyList<HazardArea> From(IEnumerable<CoverMark> marks, DepthGrid grid, Boat boat)
    {
        Require.NotNull(marks);
        Require.NotNull(grid);
        Require.NotNull(boat);
        List<HazardArea> hazards = [];
        foreach (CoverMark mark in marks)
        {
            PlanePoint place = grid.Projection.ToPlane(mark.Place);
            double depthM = grid.DepthAtM(place);
            if (double.IsNaN(depthM)) continue;
            double heightM = mark.HeightM ?? mark.Kind switch
            {
                CoverKind.StandingTimber => 12.0,
                CoverKind.Works => 4.0,
                CoverKind.Stumps => 2.0,
                CoverKind.Rock => 1.0,
                _ => 0.0,
            };
            if (depthM - heightM >= boat.LeastDepthM) continue;
            hazards.Add(new HazardArea(place, Math.Max(mark.RadiusM, LeastRadiusM), Describe(mark)));
        }

        return hazards;
    }

    private static string Describe(CoverMark mark)
    {
        string kind = mark.Kind switch
        {
            CoverKind.StandingTimber => "standing timber",
            CoverKind.Stumps => "stumps",
            CoverKind.Rock => "rock",
            CoverKind.Works => "drowned works",
            CoverKind.Brush => "brush",
            CoverKind.Weed => "weed",
            _ => "hazard",
        };
        return mark.Note.Length > 0 ? $"{kind} ({mark.Note})" : kind;
    }
}
