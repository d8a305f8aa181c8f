using System.Globalization;
using System.Text;

namespace SecondShore.TestKit;

/// <summary>
/// Services of depths of the tests' own, in the documented forms of the open standards. All of them hold the same 60 soundings of Ferncombe
/// Water:
/// a bowl of 12 m, deepest in its middle, twenty of them to a page.
/// </summary>
public static class DepthServiceStandIn
{
    /// <summary>Soundings in all.</summary>
    public const int Count = 60;

    /// <summary>Features to a page.</summary>
    public const int Page = 20;

    /// <summary>The services: <c>/ogc</c>, <c>/wfs</c>, <c>/wcs</c>, <c>/rest/services/Depths/FeatureServer</c>,
    /// <c>/rest/services/Bottom/ImageServer</c>, <c>/files/depths.csv</c>.</summary>
    public static ServiceStandIn Start() => new(Answer);

    /// <summary>What a service answers.</summary>
    public static ServiceReply Answer(ServiceQuestion q) => q.Path switch
    {
        "/ogc/collections" => ServiceReply.Of("""{"collections":[{"id":"depths","title":"Lake depths","links":[{"rel":"license","title":"CC BY 4.0","href":"https://licence.example"}]},{"id":"buoys","title":"Buoys"}]}"""),
        "/ogc/collections/depths/items" => ServiceReply.Of(Items(q)),
        "/rest/services/Depths/FeatureServer" => ServiceReply.Of("""{"maxRecordCount":20,"copyrightText":"Shire Survey, public domain","layers":[{"id":0,"name":"Depths","type":"Feature Layer"},{"id":1,"name":"Group","type":"Group Layer"}]}"""),
        "/rest/services/Depths/FeatureServer/0" => ServiceReply.Of("""{"id":0,"name":"Depths","type":"Feature Layer","maxRecordCount":20,"copyrightText":"Shire Survey, public domain"}"""),
        "/rest/services/Depths/FeatureServer/0/query" => ServiceReply.Of(ArcGis(q)),
        "/rest/services/Bottom/ImageServer" => ServiceReply.Of("""{"name":"Bottom","copyrightText":"Shire Survey"}"""),
        "/rest/services/Bottom/ImageServer/exportImage" => new ServiceReply(Tiff(), "image/tiff"),
        "/wfs" => Wfs(q),
        "/wcs" => Wcs(q),
        "/files/depths.csv" => ServiceReply.Of(Csv(), "text/csv"),
        _ => ServiceReply.Of("", status: 404),
    };

    /// <summary>A sounding: latitude, longitude, depth.</summary>
    public static (double LatDeg, double LonDeg, double DepthM) Sounding(int k)
    {
        double turn = k * 2.399963, share = Math.Sqrt((k + 0.5) / Count) * 0.95;
        return (OpenMapStandIn.LatDeg + (OpenMapStandIn.RadiusLatDeg * share * Math.Sin(turn)),
            OpenMapStandIn.LonDeg + (OpenMapStandIn.RadiusLonDeg * share * Math.Cos(turn)), 12 * (1 - (share * share)));
    }

    private static string Text(double value) => value.ToString("0.0######", CultureInfo.InvariantCulture);

    private static string Feature(int k)
    {
        (double lat, double lon, double depth) = Sounding(k);
        return $"{{\"type\":\"Feature\",\"id\":{k},\"properties\":{{\"OBJECTID\":{k},\"depth_m\":{Text(depth)},\"lake\":\"Ferncombe Water\"}},\"geometry\":{{\"type\":\"Point\",\"coordinates\":[{Text(lon)},{Text(lat)}]}}}}";
    }

    private static string Features(int from, int count) =>
        "\"type\":\"FeatureCollection\",\"features\":[" + string.Join(',',
        Enumerable.Range(from, Math.Max(0, Math.Min(count, Count - from))).Select(Feature)) + "]";

    private static string Items(ServiceQuestion q)
    {
        int from = int.Parse(q.Value("offset") ?? "0", CultureInfo.InvariantCulture);
        string next = from + Page < Count
            ? $",\"links\":[{{\"rel\":\"next\",\"href\":\"/ogc/collections/depths/items?f=json&bbox={q.Value("bbox")}&offset={from + Page}\"}}]" : "";
        return "{" + Features(from, Page) + $",\"numberMatched\":{Count}" + next + "}";
    }

    private static string ArcGis(ServiceQuestion q)
    {
        int from = int.Parse(q.Value("resultOffset") ?? "0", CultureInfo.InvariantCulture);
        return "{" + Features(from, Page) + (from + Page < Count ? ",\"properties\":{\"exceededTransferLimit\":true}" : "") + "}";
    }

    private static ServiceReply Wfs(ServiceQuestion q)
    {
        if (q.Value("request") == "GetCapabilities")
        {
            return ServiceReply.Of("""
                <wfs:WFS_Capabilities version="2.0.0" xmlns:wfs="http://www.opengis.net/wfs/2.0" xmlns:ows="http://www.opengis.net/ows/1.1"><ows:ServiceIdentification><ows:Fees>none</ows:Fees><ows:AccessConstraints>Open Licence 3</ows:AccessConstraints></ows:ServiceIdentification>
                <wfs:FeatureTypeList><wfs:FeatureType><wfs:Name>shire:depths</wfs:Name><wfs:Title>Lake depths</wfs:Title></wfs:FeatureType></wfs:FeatureTypeList></wfs:WFS_Capabilities>
                """, "application/xml");
        }

        int from = int.Parse(q.Value("startIndex") ?? "0", CultureInfo.InvariantCulture), count = Math.Min(Page, Count - from);
        StringBuilder gml =
            new($"<wfs:FeatureCollection numberMatched=\"{Count}\" numberReturned=\"{count}\" xmlns:wfs=\"http://www.opengis.net/wfs/2.0\" xmlns:gml=\"http://www.opengis.net/gml/3.2\" xmlns:shire=\"http://shire.example\">");
        for (int k = from; k < from + count; k++)
        {
            (double lat, double lon, double depth) = Sounding(k);
            gml.Append(CultureInfo.InvariantCulture, $"<wfs:member><shire:depths gml:id=\"d.{k}\"><shire:depth_m>{Text(depth)}</shire:depth_m><shire:geom><gml:Point srsName=\"urn:ogc:def:crs:EPSG::4326\"><gml:pos>{Text(lat)} {Text(lon)}</gml:pos></gml:Point></shire:geom></shire:depths></wfs:member>");
        }

        return ServiceReply.Of(gml.Append("</wfs:FeatureCollection>").ToString(), "application/gml+xml; version=3.2");
    }

    private static ServiceReply Wcs(ServiceQuestion q) => q.Value("request") switch
    {
        "GetCapabilities" =>
            ServiceReply.Of(
            "<wcs:Capabilities xmlns:wcs=\"http://www.opengis.net/wcs/2.0\"><wcs:Contents><wcs:CoverageSummary><wcs:CoverageId>shire__bottom</wcs:CoverageId></wcs:CoverageSummary></wcs:Contents></wcs:Capabilities>", "application/xml"),
        "DescribeCoverage" =>
            ServiceReply.Of(
            "<wcs:CoverageDescriptions xmlns:wcs=\"http://www.opengis.net/wcs/2.0\" xmlns:gml=\"http://www.opengis.net/gml/3.2\"><gml:boundedBy><gml:Envelope srsName=\"http://www.opengis.net/def/crs/EPSG/0/4326\" axisLabels=\"Lat Long\"/></gml:boundedBy></wcs:CoverageDescriptions>", "application/xml"),
        _ => new ServiceReply(Tiff(), "image/tiff"),
    };

    private static string Csv() =>
        "latitude,longitude,depth_m\n" + string.Concat(Enumerable.Range(0, Count).Select(Sounding)
        .Select(s => $"{Text(s.LatDeg)},{Text(s.LonDeg)},{Text(s.DepthM)}\n"));

    private static byte[] Tiff()
    {
        const int Side = 40;
        const double Cell = 0.0008;
        float[] depths = new float[Side * Side];
        double west = OpenMapStandIn.LonDeg - (Side * Cell / 2), north = OpenMapStandIn.LatDeg + (Side * Cell / 2);
        for (int r = 0; r < Side; r++)
        {
            for (int c = 0; c < Side; c++)
            {
                double y = (north - ((r + 0.5) * Cell) - OpenMapStandIn.LatDeg) / OpenMapStandIn.RadiusLatDeg,
                    x = (west + ((c + 0.5) * Cell) - OpenMapStandIn.LonDeg) / OpenMapStandIn.RadiusLonDeg;
                double share2 = (x * x) + (y * y);
                depths[(r * Side) + c] = share2 < 1 ? (float)(12 * (1 - share2)) : -9999;
            }
        }

        return TiffBuilder.Floats(Side, Side, depths, west, north, Cell).Text(42113, "-9999").Build();
    }
}
