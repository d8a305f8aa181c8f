using System.Text.Json;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Formats.Writers;

/// <summary>Writes GeoJSON (RFC 7946): longitude first, outer rings anticlockwise, seven decimals (a centimetre).</summary>
public static class GeoJsonWriter
{
    /// <summary>Text of a feature collection.</summary>
    /// <param name="features">The features.</param>
    /// <param name="members">Further text members of the collection, such as a caution.</param>
    public static string Write(IEnumerable<MapFeature> features, params ReadOnlySpan<MapProperty> members)
    {
        ArgumentNullException.ThrowIfNull(features);
        MapProperty[] more = members.ToArray();
        return JsonText.Write(json =>
        {
            json.WriteStartObject();
            json.WriteString("type", "FeatureCollection");
            foreach (MapProperty member in more) Property(json, member);
            json.WriteStartArray("features");
            foreach (MapFeature feature in features)
            {
                json.WriteStartObject();
                json.WriteString("type", "Feature");
                json.WriteStartObject("properties");
                foreach (MapProperty property in feature.Properties) Property(json, property);
                json.WriteEndObject();
                json.WriteStartObject("geometry");
                Geometry(json, feature.Shape);
                json.WriteEndObject();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        });
    }

    /// <summary>Text of shoreline.geojson.</summary>
    public static string Shoreline(Shoreline shoreline)
    {
        ArgumentNullException.ThrowIfNull(shoreline);
        return Write(shoreline.Polygons.Select(p => new MapFeature(new MapShape.Polygon(p.Outer, p.Islands), [])));
    }

    private static void Geometry(Utf8JsonWriter json, MapShape shape)
    {
        switch (shape)
        {
            case MapShape.Point point:
                json.WriteString("type", "Point");
                json.WritePropertyName("coordinates");
                Position(json, point.Place, point.Place.LonDeg);
                break;
            case MapShape.Line line:
                json.WriteString("type", "LineString");
                json.WritePropertyName("coordinates");
                Path(json, line.Points, false);
                break;
            case MapShape.Lines lines:
                json.WriteString("type", "MultiLineString");
                json.WriteStartArray("coordinates");
                foreach (IReadOnlyList<GeoPoint> part in lines.Parts) Path(json, part, false);
                json.WriteEndArray();
                break;
            case MapShape.Polygon polygon:
                json.WriteString("type", "Polygon");
                json.WritePropertyName("coordinates");
                Rings(json, polygon);
                break;
            case MapShape.Polygons polygons:
                json.WriteString("type", "MultiPolygon");
                json.WriteStartArray("coordinates");
                foreach (MapShape.Polygon part in polygons.Parts) Rings(json, part);
                json.WriteEndArray();
                break;
            default: throw new ArgumentException($"{shape.GetType().Name} is no shape that is written.", nameof(shape));
        }
    }

    private static void Rings(Utf8JsonWriter json, MapShape.Polygon polygon)
    {
        json.WriteStartArray();
        Path(json, Turned(polygon.Outer, anticlockwise: true), true);
        foreach (IReadOnlyList<GeoPoint> hole in polygon.Holes) Path(json, Turned(hole, anticlockwise: false), true);
        json.WriteEndArray();
    }

    // Longitudes run on past 180 rather than jump, so that a lake on the date line stays in one piece.
    private static void Path(Utf8JsonWriter json, IReadOnlyList<GeoPoint> points, bool close)
    {
        json.WriteStartArray();
        double lonDeg = points.Count > 0 ? points[0].LonDeg : 0;
        for (int i = 0; i < points.Count + (close ? 1 : 0); i++)
        {
            GeoPoint point = points[i % points.Count];
            lonDeg += GeoPoint.WrapLongitudeDeg(point.LonDeg - lonDeg);
            Position(json, point, lonDeg);
        }

        json.WriteEndArray();
    }

    private static void Position(Utf8JsonWriter json, GeoPoint place, double lonDeg)
    {
        json.WriteStartArray();
        json.WriteNumberValue(Math.Round(lonDeg, 7));
        json.WriteNumberValue(Math.Round(place.LatDeg, 7));
        json.WriteEndArray();
    }

    private static IReadOnlyList<GeoPoint> Turned(IReadOnlyList<GeoPoint> ring, bool anticlockwise)
    {
        double twiceArea = 0;
        for (int i = 0; i < ring.Count; i++)
        {
            GeoPoint a = ring[i], b = ring[(i + 1) % ring.Count];
            double x1 = GeoPoint.WrapLongitudeDeg(a.LonDeg - ring[0].LonDeg), x2 = GeoPoint.WrapLongitudeDeg(b.LonDeg - ring[0].LonDeg);
            twiceArea += (x1 * b.LatDeg) - (x2 * a.LatDeg);
        }

        return twiceArea > 0 == anticlockwise ? ring : [.. ring.Reverse()];
    }

    private static void Property(Utf8JsonWriter json, MapProperty property)
    {
        switch (property.Value)
        {
            case null: json.WriteNull(property.Name); break;
            case string text: json.WriteString(property.Name, text); break;
            case double number when double.IsFinite(number): json.WriteNumber(property.Name, number); break;
            case double: json.WriteNull(property.Name); break;
            case int whole: json.WriteNumber(property.Name, whole); break;
            case bool flag: json.WriteBoolean(property.Name, flag); break;
            case IEnumerable<string> texts:
                json.WriteStartArray(property.Name);
                foreach (string text in texts) json.WriteStringValue(text);
                json.WriteEndArray();
                break;
            default: throw new ArgumentException($"Property '{property.Name}' is of a type that is not written.", nameof(property));
        }
    }
}
