using SecondShore.Engine.Basin;
using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys;

/// <summary>Decides coordinate system, unit and sense of a raw survey, says how each is known, and makes depths of it.</summary>
internal sealed class SurveyResolver
{
    private readonly string _file;
    private readonly RawSurvey _raw;
    private readonly SurveyOptions _options;
    private readonly SurveyContext _context;
    private readonly ProblemLog _log;
    private readonly List<Finding> _doubts;

    public SurveyResolver(string file, RawSurvey raw, SurveyOptions options, SurveyContext context, ProblemLog log)
    {
        (_file, _raw, _options, _context, _log) = (file, raw, options, context, log);
        _doubts = [.. raw.Doubts];
    }

    /// <summary>Makes the survey; null, with an error in the log, when something that must be known is not.</summary>
    public (Survey? Survey, SurveyUnderstanding Understanding) Resolve(CancellationToken cancellation)
    {
        SurveyKind kind = KindOf();
        bool helps = kind is not (SurveyKind.Nothing or SurveyKind.TrackOnly);
        FiledValues filed = FiledValues.Of(_raw);
        (CoordinateSystem? crs, Knowledge crsKnown) = new CrsDecision(_file, _raw, _options, _context, helps ? _log : new ProblemLog(), _doubts).Decide();
        (DepthSense sense, Knowledge senseKnown) = DecideSense(filed);
        (DepthUnit unit, Knowledge unitKnown) = DecideUnit(filed, sense);
        double? surfaceM = _options.SurfaceElevationM ?? _context.FullPoolElevationM;
        DepthScale scale = new(unit, sense, surfaceM ?? double.NaN,
            (_options.BelowFullPoolM ?? _context.BelowFullPoolM ?? 0) + (_options.TransducerDepthM ?? 0));
        bool hasDepths = kind is SurveyKind.Soundings or SurveyKind.Contours or SurveyKind.Raster;
        if (hasDepths && sense == DepthSense.Elevation && surfaceM is null) SayElevation(filed, unit);
        bool usable = crs is not null && helps && !(hasDepths && sense == DepthSense.Elevation && surfaceM is null);
        if (kind == SurveyKind.Nothing) _log.Error(_file, $"the file was read as {Finding.Of(_raw.Format)} and holds no soundings, contours, outlines or raster.");
        if (kind == SurveyKind.TrackOnly) _log.Error(_file, $"the file was read as {Finding.Of(_raw.Format)}: it has positions and no depths, so it does not help as a survey.");
        SurveyBuilder builder = new(_file, _raw, crs, scale, _log);
        Survey? survey = usable ? builder.Build(cancellation) : null;
        SurveyUnderstanding understanding = new()
        {
            File = _file,
            Format = _raw.Format,
            Kind = kind,
            Unit = unit,
            UnitKnown = unitKnown,
            Sense = sense,
            SenseKnown = senseKnown,
            Crs = crs?.Name ?? "",
            CrsKnown = crsKnown,
            Count = CountOf(kind, filed),
            Columns = _raw.Raster?.Columns ?? 0,
            Rows = _raw.Raster?.Rows ?? 0,
            Extent = builder.Extent,
            LowestFiled = filed.Low,
            HighestFiled = filed.High,
            MinDepthM = usable && hasDepths ? builder.MinDepthM : double.NaN,
            MaxDepthM = usable && hasDepths ? builder.MaxDepthM : double.NaN,
            RolesTaken = _raw.RolesTaken,
            Doubts = _doubts,
        };
        return (survey, understanding);
    }

    private SurveyKind KindOf()
    {
        if (_raw.Raster is not null) return SurveyKind.Raster;
        if (_raw.Lines.Count > 0) return SurveyKind.Contours;
        if (_raw.Points.Any(p => p.Z.Any(z => !double.IsNaN(z)))) return SurveyKind.Soundings;
        if (_raw.Polygons.Count > 0) return SurveyKind.Shoreline;
        return _raw.Points.Any(p => p.Z.Length > 0) ? SurveyKind.TrackOnly : SurveyKind.Nothing;
    }

    private long CountOf(SurveyKind kind, FiledValues filed) => kind switch
    {
        SurveyKind.Contours => _raw.Lines.Count,
        SurveyKind.Shoreline => _raw.Polygons.Count,
        SurveyKind.TrackOnly => _raw.Points.Sum(p => (long)p.Z.Length),
        _ => filed.Count,
    };

    private (DepthSense Sense, Knowledge Known) DecideSense(FiledValues filed)
    {
        if (_options.Sense is DepthSense set) return (set, Knowledge.Set);
        if (_raw.Sense is DepthSense stated && _raw.SenseKnown == Knowledge.Stated)
        {
            if (stated != DepthSense.Depth || filed.Count == 0 || filed.ShareNegative < 0.95) return (stated, Knowledge.Stated);
        }

        if (filed.Count == 0) return (DepthSense.Depth, Knowledge.Assumed);
        if (filed.ShareNegative > 0.95)
        {
            _doubts.Add($"Nearly all values are negative ({filed.Low:G6} to {filed.High:G6}): taken as heights against the water surface, negative under water. Set sense if they are something else.");
            return (DepthSense.NegativeDepth, Knowledge.Found);
        }

        bool aroundPool = _context.FullPoolElevationM is double pool && pool > 50
            && (Near(pool, filed) || Near(pool / 0.3048, filed));
        bool highAndNarrow = filed.Low > 30 && filed.High - filed.Low < filed.Low;
        if (aroundPool || highAndNarrow)
        {
            _doubts.Add($"Values run from {filed.Low:G6} to {filed.High:G6}: taken as elevations above sea level, not depths. Set sense if they are depths.");
            return (DepthSense.Elevation, Knowledge.Found);
        }

        if (filed.ShareNegative > 0.02)
            _doubts.Add($"{filed.ShareNegative:P0} of the values are negative; the positive ones are taken as depths. Set sense to be sure.");
        return (DepthSense.Depth, _raw.Sense == DepthSense.Depth ? _raw.SenseKnown : Knowledge.Assumed);

        static bool Near(double poolM, FiledValues filed) => filed.Low > poolM * 0.5 && filed.High > poolM - 5 && filed.Low < poolM;
    }

    private (DepthUnit Unit, Knowledge Known) DecideUnit(FiledValues filed, DepthSense sense)
    {
        if (_options.Unit is DepthUnit set) return (set, Knowledge.Set);
        if (_raw.Unit is DepthUnit stated) return (stated, _raw.UnitKnown);
        if (filed.Count == 0) return (DepthUnit.Metres, Knowledge.Assumed);
        if (_context.MaxDepthM is double deepest && sense != DepthSense.Elevation)
        {
            double span = sense == DepthSense.NegativeDepth ? -filed.Low : filed.High;
            bool metresFit = Math.Abs((span / deepest) - 1) < 0.25, feetFit = Math.Abs((span * 0.3048 / deepest) - 1) < 0.25;
            if (feetFit && !metresFit)
            {
                _doubts.Add($"The file names no unit. Its deepest value, {span:G5}, fits the lake's {deepest} m only in feet: taken as feet.");
                return (DepthUnit.Feet, Knowledge.Found);
            }
        }

        _doubts.Add($"The file names no unit; its values ({filed.Low:G6} to {filed.High:G6}) are taken as metres. Set unit to 'ft' if they are feet.");
        return (DepthUnit.Metres, Knowledge.Assumed);
    }

    private void SayElevation(FiledValues filed, DepthUnit unit) => _log.Error(_file, $"the file holds elevations ({filed.Low:G6} to {filed.High:G6} {(unit == DepthUnit.Metres ? "m" : "ft")}), and the level of full pool is not known; set elevation_m in lake.json, or survey.surface_elevation_m.");
}

/// <summary>How filed values become depth below full pool in metres.</summary>
internal readonly record struct DepthScale(DepthUnit Unit, DepthSense Sense, double SurfaceM, double AddM)
{
    private double MetresPerUnit => Unit switch
    {
        DepthUnit.Feet => 0.3048,
        DepthUnit.Fathoms => 1.8288,
        _ => 1,
    };

    public double ToDepthM(double filed) => Sense switch
    {
        DepthSense.NegativeDepth => (-filed * MetresPerUnit) + AddM,
        DepthSense.Elevation => SurfaceM - (filed * MetresPerUnit) + AddM,
        _ => (filed * MetresPerUnit) + AddM,
    };
}

/// <summary>Range and signs of a raw survey's filed values.</summary>
internal sealed record FiledValues(long Count, double Low, double High, double ShareNegative)
{
    public static FiledValues Of(RawSurvey raw)
    {
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        long count = 0, negative = 0, signed = 0;
        foreach (RawPoints points in raw.Points) foreach (double z in points.Z) Take(z);
        foreach (RawLine line in raw.Lines) Take(line.Z);
        if (raw.Raster is not null) foreach (float z in raw.Raster.Values) Take(z);
        return count == 0 ? new FiledValues(0, double.NaN, double.NaN, 0)
            : new FiledValues(count, low, high, signed == 0 ? 0 : (double)negative / signed);

        void Take(double z)
        {
            if (double.IsNaN(z)) return;
            count++;
            low = Math.Min(low, z);
            high = Math.Max(high, z);
            if (z == 0) return;
            signed++;
            if (z < 0) negative++;
        }
    }
}
