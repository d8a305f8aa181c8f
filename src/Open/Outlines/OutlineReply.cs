using System.Text.Json;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Open.Asking;

namespace SecondShore.Open.Outlines;

/// <summary>Makes an outline of a water's answer: one closed line, or many lines with their parts in it (outer shores, islands).</summary>
internal static class OutlineReply
{
    private const int MostPoints = 600_000;
    private const double LeastAreaM2 = 500, LargestAreaM2 = 1e11, MostDeg = 6;

    // A shore that breaks off by less than this of its own length is closed with a straight line, and that is said.
    private const double LargestGapShare = 0.05, BoxMarginDeg = 0.01;

    /// <summary>Reads an answer.</summary>
    /// <exception cref="OpenException">No outline can be made of it; the finding says how to go on.</exception>
    public static LakeOutline Read(ReadOnlyMemory<byte> body, FoundWater water, OpenServices services)
    {
        string host = services.Map.Host;
        using JsonDocument json = WaterSearch.Parsed(body, host);
        string type = water.IsRelation ? "relation" : "way";
        JsonElement element = json.RootElement.Items("elements")
            .FirstOrDefault(e => e.Text("type") == type && e.Number("id", 1, 9e15) == water.Id);
        if (element.ValueKind != JsonValueKind.Object)
        {
            string remark = json.RootElement.Text("remark", 200);
            throw remark.Length > 0 ? new OpenException($"{host} stopped on its way: {remark}. {WaterSearch.Otherwise}")
                : new OpenException($"{host} sent another water than the one asked for. {WaterSearch.Otherwise}");
        }

        List<Finding> notes = [];
        (List<IReadOnlyList<GeoPoint>> shores, List<IReadOnlyList<GeoPoint>> islands) = water.IsRelation ? Members(element)
            : ([Line(element)], []);
        List<IReadOnlyList<GeoPoint>> waters = Rings(shores, notes, "shore");
        List<IReadOnlyList<GeoPoint>> dry = Rings(islands, notes, "island");
        if (waters.Count == 0) throw new OpenException($"The outline that {host} sent is no closed line. {WaterSearch.Otherwise}");
        (List<WaterPolygon> polygons, int homeless) = OutlineRings.Nest(waters, dry);
        if (homeless > 0) notes.Add($"{homeless} islands of the outline lie outside its water and are left out.");
        LakeOutline? outline = LakeOutline.Of(polygons, services.MapAttribution, water.Source);
        if (outline is null || outline.AreaM2 is < LeastAreaM2 or > LargestAreaM2)
            throw new OpenException($"The outline that {host} sent encloses no lake. {WaterSearch.Otherwise}");
        // The shape must be that of the water in the list, not of one elsewhere.
        if (water.Box != default && !Within(water.Box.Wider(BoxMarginDeg), outline.Box))
            throw new OpenException($"{host} sent another water than the one asked for. {WaterSearch.Otherwise}");
        return outline with { Notes = notes };
    }

    private static (List<IReadOnlyList<GeoPoint>> Shores, List<IReadOnlyList<GeoPoint>> Islands) Members(JsonElement relation)
    {
        List<IReadOnlyList<GeoPoint>> shores = [], islands = [];
        int points = 0;
        foreach (JsonElement member in relation.Items("members"))
        {
            if (member.Text("type") != "way") continue;
            List<GeoPoint> line = Line(member);
            points += line.Count;
            if (points > MostPoints) throw new OpenException(
                $"The outline has more than {MostPoints} points and is not used. {WaterSearch.Otherwise}");
            (member.Text("role") == "inner" ? islands : shores).Add(line);
        }

        return (shores, islands);
    }

    // Points that are no places are left out: a line of fewer than two is then no line, and its ring stays open.
    private static List<GeoPoint> Line(JsonElement way)
    {
        List<GeoPoint> line = [];
        foreach (JsonElement point in way.Items("geometry").Take(MostPoints))
        {
            if (point.Number("lat", -89, 89) is not { } latDeg || point.Number("lon", -180, 180) is not { } lonDeg) continue;
            GeoPoint place = new(latDeg, lonDeg);
            if (line.Count == 0 || line[^1] != place) line.Add(place);
        }

        return line;
    }

    private static List<IReadOnlyList<GeoPoint>> Rings(List<IReadOnlyList<GeoPoint>> lines, List<Finding> notes, string what)
    {
        (List<IReadOnlyList<GeoPoint>> closed, List<IReadOnlyList<GeoPoint>> open) = OutlineRings.Join([.. lines.Where(l => l.Count > 1)]);
        int mended = 0, left = 0;
        foreach (IReadOnlyList<GeoPoint> line in open)
        {
            if (line.Count > 3 && GapShare(line) < LargestGapShare)
            {
                closed.Add(line);
                mended++;
            }
            else
            {
                left++;
            }
        }

        Finding part = what == "shore" ? Finding.Of("lines of the shore") : Finding.Of("lines of islands");
        if (mended > 0) notes.Add($"{mended} {part} broke off and were closed with a straight line.");
        if (left > 0) notes.Add($"{left} {part} do not close and are left out.");
        // Far rings are no part of one lake; a box of a continent would be gridded for ever.
        closed.RemoveAll(r => GeoBox.Around(r) is not { } box || box.NorthDeg - box.SouthDeg is <= 0 or > MostDeg
            || box.EastDeg - box.WestDeg is <= 0 or > MostDeg);
        return closed;
    }

    private static bool Within(GeoBox around, GeoBox box) => box.SouthDeg >= around.SouthDeg && box.WestDeg >= around.WestDeg
        && box.NorthDeg <= around.NorthDeg && box.EastDeg <= around.EastDeg;

    private static double GapShare(IReadOnlyList<GeoPoint> line)
    {
        LocalProjection plane = new(line[0]);
        PlanePoint first = plane.ToPlane(line[0]), last = first;
        double lengthM = 0;
        foreach (GeoPoint point in line)
        {
            PlanePoint next = plane.ToPlane(point);
            lengthM += Math.Sqrt(((next.XM - last.XM) * (next.XM - last.XM)) + ((next.YM - last.YM) * (next.YM - last.YM)));
            last = next;
        }

        return lengthM > 0 ? Math.Sqrt((last.XM * last.XM) + (last.YM * last.YM)) / lengthM : 1;
    }
}
