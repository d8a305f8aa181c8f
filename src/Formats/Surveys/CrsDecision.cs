using System.Runtime.CompilerServices;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Surveys.Hypotheses;

namespace SecondShore.Formats.Surveys;

/// <summary>Decides the coordinate system of a raw survey: set, stated, or found from the numbers and the lake's position.</summary>
internal sealed class CrsDecision(string file, RawSurvey raw, SurveyOptions options, SurveyContext context, ProblemLog log, List<Finding> doubts)
{
    private static readonly double NearLakeKm = 60;
    private static readonly int MostCandidates = 250;
    private static readonly double BesideDeg = 6;

    public (CoordinateSystem? Crs, Knowledge Known) Decide()
    {
        if (options.Swapped == true) raw.Swap();
        if (options.Crs is string set)
        {
            CoordinateSystem? chosen = CoordinateSystems.Parse(set, out FindingForm fault);
            if (chosen is null) log.Error(file, fault);
            else if (options.Swapped is null) SwapIfOnlyThatFits(chosen);
            return (InItsArea(set, Checked(chosen)), Knowledge.Set);
        }

        // What is stated for degrees, or by the custom of its kind, and holds lengths: the statement is of another file.
        if (raw.Crs is { IsGeographic: true } && TryMiddle(out _, out _) && !LooksLikeDegrees())
        {
            doubts.Add("The file says that its numbers are degrees, and they are not: its coordinate system is taken for unknown.");
            raw.Crs = null;
            raw.MayBeSwapped = true;
        }

        if (raw.Crs is not null)
        {
            // Stated degrees that are no degrees: a header that names its columns wrongly.
            if (Checked(raw.Crs) is CoordinateSystem stated) return (stated, raw.CrsKnown);
            return (null, raw.CrsKnown);
        }

        if (!TryMiddle(out double x, out double y)) return (CoordinateSystem.Degrees, Knowledge.Assumed);
        if (LooksLikeDegrees())
        {
            doubts.Add("The file names no coordinate system; its numbers are taken as degrees of longitude and latitude (WGS 84).");
            return (CoordinateSystem.Degrees, Knowledge.Found);
        }

        if (FindNear(x, y) is CoordinateSystem found) return (found, Knowledge.Found);
        Ask(x, y);
        return (null, Knowledge.Assumed);
    }

    /// <summary>What must be asked; null when nothing must.</summary>
    public SurveyQuestion? Question { get; private set; }

    private void Ask(double x, double y)
    {
        Question = new SurveyQuestion(file, SurveyQuestionKind.Crs, $"The file does not say its coordinate system, and numbers such as {x:G9}, {y:G10} are no degrees. Where does the lake lie?",
            Places.IsThere ? Choices(x, y) : [], "crs");
    }

    // Names types of the atlas, which may be missing: not to be inlined where it is not known to be there.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private List<SurveyChoice> Choices(double x, double y) =>
        [.. CrsCandidates.For(x, y, raw.MayBeSwapped && options.Swapped is null, context.HintLonDeg).Take(MostCandidates).Select(c => new SurveyChoice(
            new SurveyOptions { Crs = FormattableString.Invariant($"EPSG:{c.Entry.Code}"), Swapped = raw.MayBeSwapped ? c.Swapped : null },
            Called(c), c.Place, c.Country))];

    private static Finding Called(CrsCandidate c) => c.Swapped ? Finding.Of($"{Where(c)}: {c.Entry.Name}, north before east") : Finding.Of($"{Where(c)}: {c.Entry.Name}");

    // A country's name is not translated: the place in numbers serves every reader, and the country stands beside it for those who know it.
    private static string Where(CrsCandidate c) => FormattableString.Invariant($"{c.Place.LatDeg:F3}, {c.Place.LonDeg:F3}{(c.Country.Length > 0 ? $" ({c.Country})" : "")}");

    private CoordinateSystem? Checked(CoordinateSystem? crs)
    {
        if (crs is null) return null;
        if (!crs.Doubt.IsEmpty) doubts.Add(crs.Doubt.ToFinding().Opening());
        if (!TryMiddle(out double x, out double y) || crs.TryToGeo(x, y, out _, out _)) return crs;
        log.Error(file, $"numbers such as {x:G9}, {y:G10} do not lie in {crs.Name}; set the right one as survey.crs in lake.json.");
        return null;
    }

    // A number copied from an example puts a lake into the ocean of another hemisphere: a system is used in its own area and a zone beside it.
    private CoordinateSystem? InItsArea(string set, CoordinateSystem? chosen)
    {
        string digits = set.Trim().StartsWith("EPSG:", StringComparison.OrdinalIgnoreCase) ? set.Trim()[5..] : set.Trim();
        if (chosen is null || !int.TryParse(digits, System.Globalization.CultureInfo.InvariantCulture, out int code) || !TryMiddle(out double x, out double y)
            || !chosen.TryToGeo(x, y, out double latDeg, out double lonDeg) || Places.Covers(code, latDeg, lonDeg, BesideDeg) != false) return chosen;
        log.Error(file, $"numbers such as {x:G9}, {y:G10} do not lie in {chosen.Name}: the lake would be at {latDeg:F2}, {lonDeg:F2}, far outside its area. Set the right one as survey.crs in lake.json.");
        return null;
    }

    private bool LooksLikeDegrees()
    {
        (double lowX, double highX, double lowY, double highY) = QuantileBox();
        return lowX >= -360 && highX <= 360 && lowY >= -90 && highY <= 90;
    }

    private CoordinateSystem? FindNear(double x, double y)
    {
        if (context.Position is not GeoPoint lake) return null;
        LocalProjection plane = new(lake.LatDeg is > -89 and < 89 ? lake : new GeoPoint(0, lake.LonDeg));
        foreach (int code in AllCandidates(lake, x, y))
        {
            if (CoordinateSystems.FromEpsg(code, out _) is not CoordinateSystem crs) continue;
            double km = Km(plane, crs, x, y);
            if (raw.MayBeSwapped && !(km <= NearLakeKm) && Km(plane, crs, y, x) is double swappedKm && swappedKm <= NearLakeKm)
            {
                km = swappedKm;
                SwapAloud();
            }

            if (!(km <= NearLakeKm)) continue;
            doubts.Add($"The file names no coordinate system; read as {crs.Name} it lies {km:F1} km from the lake's position, so that is taken. Set crs to be sure.");
            return crs;
        }

        return null;
    }

    private static double Km(LocalProjection plane, CoordinateSystem crs, double x, double y) =>
        crs.TryToGeo(x, y, out double latDeg, out double lonDeg) ? plane.ToPlane(latDeg, lonDeg).DistanceToM(new PlanePoint(0, 0)) / 1000 : double.NaN;

    // In a plane whose middle is known, east and north are told apart by which order lies nearer to it.
    private void SwapIfOnlyThatFits(CoordinateSystem chosen)
    {
        if (!raw.MayBeSwapped || chosen.IsGeographic || !TryMiddle(out double x, out double y)) return;
        if (context.Position is GeoPoint lake && lake.LatDeg is > -89 and < 89)
        {
            LocalProjection plane = new(lake);
            if (Km(plane, chosen, y, x) < Km(plane, chosen, x, y)) SwapAloud();
            return;
        }

        if (OffAxis(chosen, y, x) + 1 < OffAxis(chosen, x, y)) SwapAloud();
    }

    // A transverse Mercator is made for a few degrees about its axis: an order that lies far off it is the wrong one.
    private static double OffAxis(CoordinateSystem crs, double x, double y)
    {
        if (!crs.TryToGeo(x, y, out double latDeg, out double lonDeg)) return 1000;
        (double backX, double backY) = crs.FromGeo(new GeoPoint(latDeg, lonDeg));
        double misfitM = Math.Abs(backX - x) + Math.Abs(backY - y);
        return !(misfitM < 1) ? 500 : crs.AxisLonDeg is double axis ? Math.Abs(GeoPoint.WrapLongitudeDeg(lonDeg - axis)) : 0;
    }

    private void SwapAloud()
    {
        raw.Swap();
        doubts.Add("East and north stand in each other's column; they were put right.");
    }

    private static IEnumerable<int> Candidates(GeoPoint lake)
    {
        int utm = EpsgTable.UtmCode(lake.LatDeg, lake.LonDeg);
        yield return utm;
        if (utm % 100 > 1) yield return utm - 1;
        if (utm % 100 < 60) yield return utm + 1;
        yield return 3857;
        foreach (int code in EpsgTable.Regional) yield return code;
    }

    private IEnumerable<int> AllCandidates(GeoPoint lake, double x, double y)
    {
        foreach (int code in Candidates(lake)) yield return code;
        foreach (int code in Places.CodesNear(x, y, lake.LatDeg, lake.LonDeg)) yield return code;
        if (!raw.MayBeSwapped) yield break;
        foreach (int code in Places.CodesNear(y, x, lake.LatDeg, lake.LonDeg)) yield return code;
    }

    private bool TryMiddle(out double x, out double y) => Setting.TryMiddle(raw, out x, out y);

    // Stray fixes and marks for none must not decide: the outer tenth on each side is left out.
    private (double LowX, double HighX, double LowY, double HighY) QuantileBox()
    {
        (List<double> xs, List<double> ys) = Setting.Collect(raw);
        xs.Sort();
        ys.Sort();
        int cut = xs.Count / 10, last = xs.Count - 1 - cut;
        return (xs[cut], xs[last], ys[cut], ys[last]);
    }
}
