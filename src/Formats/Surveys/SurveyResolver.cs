using SecondShore.Engine.Basin;
using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Surveys.Hypotheses;

namespace SecondShore.Formats.Surveys;

/// <summary>Decides coordinate system, unit and sense of a raw survey, says how each is known, and makes depths of it; or asks one question.</summary>
internal sealed class SurveyResolver
{
    private readonly string _file;
    private readonly RawSurvey _raw;
    private readonly SurveyOptions _options;
    private readonly SurveyContext _context;
    private readonly ProblemLog _log;
    private readonly List<Finding> _doubts;
    private SurveyQuestion? _question;
    private bool _refused;

    public SurveyResolver(string file, RawSurvey raw, SurveyOptions options, SurveyContext context, ProblemLog log)
    {
        (_file, _raw, _options, _context, _log) = (file, raw, options, context, log);
        _doubts = [.. raw.Doubts];
    }

    /// <summary>Makes the survey; null, with an error in the log or a question, when something that must be known is not.</summary>
    public (Survey? Survey, SurveyUnderstanding Understanding, SurveyQuestion? Question) Resolve(CancellationToken cancellation)
    {
        SurveyKind kind = KindOf();
        bool helps = kind is not (SurveyKind.Nothing or SurveyKind.TrackOnly), hasDepths = kind is SurveyKind.Soundings or SurveyKind.Contours or SurveyKind.Raster;
        if (_options.WestPositive == true) _raw.Mirror();
        CrsDecision decision = new(_file, _raw, _options, _context, helps ? _log : new ProblemLog(), _doubts);
        (CoordinateSystem? crs, Knowledge crsKnown) = decision.Decide();
        if (kind == SurveyKind.Nothing) _log.Error(_file, $"the file was read as {Finding.Of(_raw.Format)} and holds no soundings, contours, outlines or raster.");
        if (kind == SurveyKind.TrackOnly) _log.Error(_file, $"the file was read as {Finding.Of(_raw.Format)}: it has positions and no depths, so it does not help as a survey.");
        if (helps) _question = decision.Question;
        if (helps && crs is not null)
        {
            Whereabouts where = new(_file, _raw, crs, _options, _context, _log);
            _question ??= where.AskPlace();
            if (_question is null && NoSurvey.Why(_raw, crs) is FindingForm why) Say(why);
            if (kind is SurveyKind.Soundings or SurveyKind.Raster) MissingCodes.SetAside(_file, _raw, _log);
            if (kind == SurveyKind.Soundings) NoSurvey.SetStillAside(_file, _raw, _log);
            _question ??= where.KeepOneGroup();
            if (_raw.Waters.Count > 1) _question ??= new SeveralWaters(_file, _raw, crs, _options, _context, _log).KeepOrAsk();
        }

        ValueFacts values = ValueFacts.Of(_raw);
        (DepthMeaning meaning, Knowledge senseKnown, Knowledge unitKnown) = Meaning(values, crs, hasDepths);
        double? surfaceM = _options.SurfaceElevationM ?? _context.FullPoolElevationM;
        if (hasDepths && meaning.Sense == DepthSense.Elevation && surfaceM is null && !_refused) _question ??= SurfaceLevel.Ask(_file, _raw, values, meaning.Unit);
        DepthScale scale = new(meaning.Unit, meaning.Sense, surfaceM ?? double.NaN,
            (_options.BelowFullPoolM ?? _context.BelowFullPoolM ?? 0) + (_options.TransducerDepthM ?? 0));
        if (_raw.Raster is not null && crs is not null && _question is null && !_refused)
            _question = new RasterWaters(_file, _raw.Raster, crs, _options, _context, _log).KeepOrAsk(scale);
        bool usable = crs is not null && helps && _question is null && !_refused;
        SurveyBuilder builder = new(_file, _raw, crs, scale, _log);
        Survey? survey = usable ? builder.Build(cancellation) : null;
        SurveyUnderstanding understanding = new()
        {
            File = _file,
            Format = _raw.Format,
            Kind = kind,
            Unit = meaning.Unit,
            UnitKnown = unitKnown,
            Sense = meaning.Sense,
            SenseKnown = senseKnown,
            Crs = crs?.Name ?? "",
            CrsKnown = crsKnown,
            Count = CountOf(kind, values),
            Columns = _raw.Raster?.Columns ?? 0,
            Rows = _raw.Raster?.Rows ?? 0,
            Extent = builder.Extent,
            LowestFiled = values.Low,
            HighestFiled = values.High,
            MinDepthM = survey is null ? double.NaN : builder.MinDepthM,
            MaxDepthM = survey is null ? double.NaN : builder.MaxDepthM,
            RolesTaken = _raw.RolesTaken,
            Doubts = _doubts,
        };
        return (survey, understanding, _question);
    }

    private SurveyKind KindOf()
    {
        if (_raw.Raster is not null) return SurveyKind.Raster;
        if (_raw.Lines.Count > 0) return SurveyKind.Contours;
        if (_raw.Points.Any(p => p.Z.Any(z => !double.IsNaN(z)))) return SurveyKind.Soundings;
        if (_raw.Polygons.Count > 0) return SurveyKind.Shoreline;
        return _raw.Points.Any(p => p.Z.Length > 0) ? SurveyKind.TrackOnly : SurveyKind.Nothing;
    }

    private long CountOf(SurveyKind kind, ValueFacts values) => kind switch
    {
        SurveyKind.Contours => _raw.Lines.Count,
        SurveyKind.Shoreline => _raw.Polygons.Count,
        SurveyKind.TrackOnly => _raw.Points.Sum(p => (long)p.Z.Length),
        _ => values.Count,
    };

    private (DepthMeaning Meaning, Knowledge Sense, Knowledge Unit) Meaning(ValueFacts values, CoordinateSystem? crs, bool hasDepths)
    {
        if (values.Count == 0 || !hasDepths)
            return (new DepthMeaning(_options.Sense ?? DepthSense.Depth, _options.Unit ?? _raw.Unit ?? DepthUnit.Metres, 0), _options.Sense is null ? Knowledge.Assumed : Knowledge.Set,
                _options.Unit is null ? Knowledge.Assumed : Knowledge.Set);
        DepthMeanings meanings = new(_raw, values, _options, _context, Setting.Of(_raw, crs));
        List<DepthMeaning> all = meanings.Weigh();
        DepthMeaning best = all[0];
        Knowledge senseKnown = _options.Sense is not null ? Knowledge.Set : _raw.Sense == best.Sense ? _raw.SenseKnown : Knowledge.Found;
        Knowledge unitKnown = _options.Unit is not null ? Knowledge.Set : _raw.Unit == best.Unit ? _raw.UnitKnown : Knowledge.Assumed;
        if (_question is not null) return (best, senseKnown, unitKnown);
        List<DepthMeaning> rivals = [.. all.Skip(1).Where(m => m.Weight > best.Weight - Xyz.XyzColumns.Clear).Take(4)];
        // Centimetres under a name that says metres: asked, where another unit makes a lake of it.
        if (meanings.IsVeryDeep(best) || (_options.Unit is null && meanings.Plausible(best.Sense, best.Unit) <= -8))
            rivals = [.. all.Where(m => m != best && m.Sense == best.Sense && meanings.Plausible(m.Sense, m.Unit) > -3).Take(4)];
        Refuse(values, meanings, best, senseKnown, rivals.Count > 0);
        if (_refused) return (best, senseKnown, unitKnown);
        if (meanings.SignsTurn && _options.Sense is null && best.Sense == DepthSense.Depth)
            rivals = [.. all.Where(m => m.Sense != best.Sense && m.Unit == best.Unit)];
        // Metres are the custom of files that say nothing; any other unit is asked about, unless the lake's own depth tells it.
        bool unusual = unitKnown == Knowledge.Assumed && best.Unit != DepthUnit.Metres && _context.MaxDepthM is null;
        if (_raw.OddUnit && _options.Unit is null) rivals = [.. all.Where(m => m.Sense == best.Sense && m != best).Take(5)];
        if (unusual && rivals.Count == 0) rivals = [.. all.Skip(1).Where(m => m.Sense == best.Sense).Take(2)];
        // Once there is a question, what is a little less likely is among its choices too.
        if (rivals.Count > 0) _question = MeaningWords.Ask(_file, values, [.. all.Where(m => m == best || rivals.Contains(m) || m.Weight > best.Weight - MeaningWords.Shown).Take(7)]);
        else MeaningWords.Tell(_doubts, values, best, senseKnown, unitKnown);
        return (best, senseKnown, unitKnown);
    }

    // What is no bottom at all, in every reading that is left.
    private void Refuse(ValueFacts values, DepthMeanings meanings, DepthMeaning best, Knowledge senseKnown, bool asked)
    {
        double metres = DepthMeanings.MetresPer(best.Unit);
        if (_raw.Raster is { Columns: < 2 } or { Rows: < 2 })
            Say($"the raster has {_raw.Raster!.Columns} x {_raw.Raster.Rows} cells, too few for a lake.");
        else if (_raw.Raster is not null && values.Count > 50 && values.Distinct <= 2 && values.AllWhole)
            Say($"the raster holds only the values {values.Low:G6} and {values.High:G6}: it is a mask, not depths; take the raster of depths or heights it belongs to.");
        else if (_raw.Raster is not null && _options.Unit is null && _context.MaxDepthM is null && values is { AllWhole: true, Low: >= 0, High: >= 200 and <= 255, Distinct: >= 40 })
            Say($"the raster holds whole numbers from {values.Low:G6} to {values.High:G6}, as shades of a picture do: take the raster of depths or heights it was drawn from, or set survey.unit if they are depths.");
        else if (_raw.Points.Count > 0 && values.Count > 60 && senseKnown != Knowledge.Set && best.Sense == DepthSense.Elevation && Level(metres))
            Say($"nearly all heights stand within 30 cm of each other ({values.Low1:G6} to {values.High1:G6} but for the outer hundredths): they are the receiver's on the water, not the bottom's. Take the file with the depths.");
        else if (_options.Sense == DepthSense.Depth && values.Low1 > 30 && values.High1 - values.Low1 < values.Low1
            && _context.MaxDepthM is null && (values.Inward < -0.2 || _raw.Sense == DepthSense.Elevation || meanings.HintsHeight))
            Say($"as depths the values ({values.Low:G6} to {values.High:G6}) would make a lake that is deep up to its very shore, and its name or its form say heights: set survey.sense to elevation, or max_depth_m in lake.json if it is so deep.");
        else if (!asked && meanings.Plausible(best.Sense, best.Unit) <= -8)
            Say($"as {MeaningWords.Of(best)} the values ({values.Low:G6} to {values.High:G6}) would make a lake far deeper than it is wide; set survey.unit, survey.sense or survey.depth_column to what they are, or max_depth_m in lake.json if the lake is so.");
    }

    private bool Level(double metres)
    {
        double[] sorted = [.. _raw.Points.SelectMany(p => p.Z).Where(z => !double.IsNaN(z)).Order()];
        return (sorted[sorted.Length * 19 / 20] - sorted[sorted.Length / 20]) * metres < 0.3;
    }

    private void Say(FindingForm refusal)
    {
        _refused = true;
        _log.Error(_file, refusal);
    }
}

/// <summary>How filed values become depth below full pool in metres.</summary>
internal readonly record struct DepthScale(DepthUnit Unit, DepthSense Sense, double SurfaceM, double AddM)
{
    public double ToDepthM(double filed) => Sense switch
    {
        DepthSense.NegativeDepth => (-filed * DepthMeanings.MetresPer(Unit)) + AddM,
        DepthSense.Elevation => SurfaceM - (filed * DepthMeanings.MetresPer(Unit)) + AddM,
        _ => (filed * DepthMeanings.MetresPer(Unit)) + AddM,
    };
}
