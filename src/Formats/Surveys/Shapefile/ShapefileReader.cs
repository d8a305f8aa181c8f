using System.Buffers.Binary;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Shapefile;

/// <summary>Reads ESRI shapefiles: points as soundings, lines and polygons with a depth as contours, without one as outlines.</summary>
internal sealed class ShapefileReader : ISurveyReader
{
    public string Format => "Shapefile";

    public double Sniff(SurveySource source) =>
        source.Bytes.Length >= 100 && BinaryPrimitives.ReadInt32BigEndian(source.Bytes) == 9994 ? 0.99 : source.Ending == "shp" ? 0.5 : 0;

    public RawSurvey? Read(SurveySource source, SurveyOptions options, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation)
    {
        if (Sniff(source) < 0.9)
        {
            log.Error(source.Name, "the file is cut short or is no shapefile; copy or export it again.");
            return null;
        }

        RawSurvey raw = new(Format);
        ShapeSet shapes = new(source.Bytes, cancellation);
        shapes.Read();
        DbfTable? table = DbfTable.Open(source.Companion("dbf"));
        if (table is null) raw.Doubts.Add("There is no attribute table (.dbf) beside the file that can be read, so no depth by name.");
        DepthAttribute? attribute = table is null ? null : DepthAttribute.Choose(table.NumericNames(shapes.Records), options);
        if (options.DepthColumn is string wanted && attribute is null && table is not null)
        {
            log.Error(source.Name, $"there is no attribute '{TextDecoding.Excerpt(wanted)}' with numbers; the table has {string.Join(", ", table.NumericNames(shapes.Records).Take(12))}.");
            return null;
        }

        attribute?.Tell(raw);
        if (attribute is not null) raw.RolesTaken.Add($"{attribute.Name}: {(attribute.Sense == DepthSense.Elevation ? "elevation" : "depth")}");
        Fill(raw, shapes, table, attribute);
        if (shapes.Damaged) log.Warn(source.Name, "the file ends in the middle of a shape; the shapes before it are used.");
        if (shapes.Nulls > 0) log.Note(source.Name, $"{shapes.Nulls} records have no shape.");
        if (shapes.OtherKinds > 0) log.Warn(source.Name, $"{shapes.OtherKinds} shapes are of a kind not read here and are not used.");
        return raw;
    }

    private static void Fill(RawSurvey raw, ShapeSet shapes, DbfTable? table, DepthAttribute? attribute)
    {
        List<double> x = [], y = [], z = [];
        List<(double[] X, double[] Y)> loops = [];
        bool heights = shapes.All.Any(s => s.Z.Any(v => v != 0 && !double.IsNaN(v)));
        int open = 0;
        foreach (Shape shape in shapes.All)
        {
            double depth = attribute is null ? double.NaN : table!.Depth(shape.Record, attribute.Name, raw);
            if (shape.Kind == ShapeKind.Points)
            {
                for (int i = 0; i < shape.X.Length; i++)
                {
                    x.Add(shape.X[i]);
                    y.Add(shape.Y[i]);
                    z.Add(attribute is not null ? depth : heights && i < shape.Z.Length ? shape.Z[i] : double.NaN);
                }

                continue;
            }

            List<(double[] X, double[] Y)> own = [];
            for (int part = 0; part < shape.PartCount; part++)
            {
                (double[] px, double[] py, double even, bool closed) = shape.Part(part);
                double level = attribute is not null ? depth : heights && even != 0 && shape.Kind == ShapeKind.Lines ? even : double.NaN;
                if (px.Length < (closed ? 3 : 2)) continue;
                if (!double.IsNaN(level)) raw.Lines.Add(new RawLine(px, py, level, closed));
                else if (!closed) open++;
                else if (shape.Kind == ShapeKind.Polygons) own.Add((px, py));
                else loops.Add((px, py));
            }

            if (own.Count > 0) raw.Polygons.AddRange(own.Count == 1 ? [new RawPolygon(own[0], [])] : RingNesting.Nest(own));
        }

        if (loops.Count > 0) raw.Polygons.AddRange(RingNesting.Nest(loops));
        if (x.Count > 0) raw.Points.Add(new RawPoints([.. x], [.. y], [.. z], []));
        if (open > 0) raw.Doubts.Add($"{open} lines without a depth are open pieces, not loops, and cannot serve as a shoreline.");
    }
}
