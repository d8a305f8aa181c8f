using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>Looks at where a survey would lie: on land or beside it, near the lake that the folder names, and in one piece.</summary>
internal sealed class Whereabouts(string file, RawSurvey raw, CoordinateSystem crs, SurveyOptions options, SurveyContext context, ProblemLog log)
{
    private const double FarKm = 100;
    private const double MostLost = 0.1;
    private const int MostGroups = 5;

    /// <summary>What must be asked about the place; null when it can be a lake's.</summary>
    public SurveyQuestion? AskPlace()
    {
        if (options.Swapped is not null || options.WestPositive is not null || !Setting.TryMiddle(raw, out double x, out double y)
            || !crs.TryToGeo(x, y, out double lat, out double lon)) return null;
        string? country = Places.Country(lat, lon);
        double awayKm = context.Position is GeoPoint lake ? KmBetween(lake, lat, lon) : 0;
        // Where the folder says that the lake lies there, even the open sea is meant.
        bool strange = (country is "" or "Antarctica" || Math.Abs(lat) > 84) && (context.Position is null || awayKm >= FarKm);
        bool foreign = context.Position is null && country is { Length: > 0 } there && IsForeign(there, x, y);
        if (!strange && !foreign && awayKm < FarKm) return null;
        List<SurveyChoice> choices = [];
        if (crs.IsGeographic && foreign)
        {
            Offer(choices, new SurveyOptions { WestPositive = true }, "longitudes to the west", y, -x);
            Offer(choices, new SurveyOptions { Swapped = true }, "the two numbers exchanged", x, y);
        }
        else if (crs.IsGeographic)
        {
            Offer(choices, new SurveyOptions { Swapped = true }, "the two numbers exchanged", x, y);
            Offer(choices, new SurveyOptions { WestPositive = true }, "longitudes to the west", y, -x);
        }
        else if (crs.TryToGeo(y, x, out double swappedLat, out double swappedLon))
        {
            Offer(choices, new SurveyOptions { Swapped = true, Crs = options.Crs }, "the two numbers exchanged", swappedLat, swappedLon);
        }

        choices.Add(new SurveyChoice(new SurveyOptions { Swapped = false }, $"as it stands: {Said(lat, lon)}", new GeoPoint(lat, GeoPoint.WrapLongitudeDeg(lon)), country ?? ""));
        choices.Add(new SurveyChoice(new SurveyOptions { Use = false }, "leave the file"));
        return strange || foreign
            ? new SurveyQuestion(file, SurveyQuestionKind.Whereabouts, $"The survey would lie at {Said(lat, lon)}. Is that right?", choices, "swapped")
            : new SurveyQuestion(file, SurveyQuestionKind.Whereabouts, $"The survey would lie {awayKm:0} km from the lake's position, at {Said(lat, lon)}. Is that right?", choices, "swapped");
    }

    // Words of another land, or feet where nobody measures in them: asked where exchanging or mirroring leads home.
    private bool IsForeign(string there, double x, double y)
    {
        if (!crs.IsGeographic) return false;
        // A minus of west lost, or two columns named the wrong way round, lead from where surveys are made to where they hardly are.
        if (raw.CrsKnown != Knowledge.Stated && UsualCountries.IsRare(there) && !Tongue.IsAtHome(raw.Words, there)
            && (Home(x, y, UsualCountries.IsUsual) || Home(y, -x, UsualCountries.IsUsual))) return true;
        if (Tongue.IsForeign(raw.Words, there)) return Home(x, y, c => !Tongue.IsForeign(raw.Words, c)) || Home(y, -x, c => !Tongue.IsForeign(raw.Words, c));
        return raw.Unit == DepthUnit.Feet && raw.UnitKnown == Knowledge.Stated && !Tongue.UsesFeet(there) && (Home(y, -x, Tongue.UsesFeet) || Home(x, y, Tongue.UsesFeet));

        static bool Home(double lat, double lon, Func<string, bool> fits) =>
            Math.Abs(lat) <= 90 && Math.Abs(lon) <= 180 && Places.Country(lat, lon) is { Length: > 0 } country && country != "Antarctica" && fits(country);
    }

    /// <summary>Leaves one group of points standing where others lie far off; asks where those are many.</summary>
    public SurveyQuestion? KeepOneGroup()
    {
        KeepArea();
        int total = raw.Rows.Of, lost = raw.Rows.Lost;
        SurveyQuestion? question = null;
        for (int i = 0; i < raw.Points.Count && question is null; i++)
        {
            RawPoints points = raw.Points[i];
            // Across the date line one lake has longitudes of both signs.
            bool turns = crs.IsGeographic && points.X.Length > 0 && points.X.Max() - points.X.Min() > 180;
            List<RowGroup> groups = RowGroup.Of(turns ? points with { X = [.. points.X.Select(x => x < 0 ? x + 360 : x)] } : points, crs.IsGeographic ? 1 / 111.0 : 1000 / crs.UnitM);
            total = Math.Max(total, points.X.Length);
            int away = points.X.Length - groups[0].Indices.Count;
            lost += away;
            if (away == 0) continue;
            if (options.Area is null && options.UseRest is null && away > MostLost * points.X.Length) question = AskGroups(points, groups);
            else if (options.Area is null || options.UseRest == true) SetAside(i, groups);
        }

        if (question is null && options.UseRest is null && options.Area is null && total > 0 && lost > MostLost * total)
        {
            question = new SurveyQuestion(file, SurveyQuestionKind.Rows,
                $"{lost} of {total} rows cannot be used (no numbers, no fix, or far away). Go on with the rest?",
                [new SurveyChoice(new SurveyOptions { UseRest = true }, $"go on with {total - lost} rows"),
                    new SurveyChoice(new SurveyOptions { Use = false }, "leave the file")], "use_rest");
        }

        return question;
    }

    private SurveyQuestion AskGroups(RawPoints points, List<RowGroup> groups)
    {
        List<SurveyChoice> choices = [];
        foreach (RowGroup group in groups.Take(MostGroups))
        {
            if (!crs.TryToGeo(group.X, group.Y, out double lat, out double lon)) continue;
            SurveyOptions set = group == groups[0] ? new SurveyOptions { UseRest = true } : new SurveyOptions { Area = BoxOf(points, group) };
            choices.Add(new SurveyChoice(set, $"only the {group.Indices.Count} rows at {Said(lat, lon)}",
                new GeoPoint(lat, GeoPoint.WrapLongitudeDeg(lon)), Places.Country(lat, lon) ?? ""));
        }

        choices.Add(new SurveyChoice(new SurveyOptions { UseRest = false, Area = [-90, -180, 90, 180] }, "all of them"));
        return new SurveyQuestion(file, SurveyQuestionKind.Rows,
            $"{points.X.Length - groups[0].Indices.Count} of {points.X.Length} rows lie far from the others. Which belong to the lake?", choices, "use_rest");
    }

    private double[] BoxOf(RawPoints points, RowGroup group)
    {
        ExtentBox box = new();
        foreach (int i in group.Indices) if (crs.TryToGeo(points.X[i], points.Y[i], out double lat, out double lon)) box.Add(lat, lon);
        GeoExtent e = box.Extent ?? new GeoExtent(-90, -180, 90, 180);
        return [Math.Round(e.SouthDeg - 0.002, 4), Math.Round(e.WestDeg - 0.002, 4), Math.Round(e.NorthDeg + 0.002, 4), Math.Round(e.EastDeg + 0.002, 4)];
    }

    private void KeepArea()
    {
        if (options.Area is not { Count: 4 } area) return;
        for (int k = 0; k < raw.Points.Count; k++)
        {
            RawPoints points = raw.Points[k];
            int[] inside = [.. Enumerable.Range(0, points.X.Length).Where(i => crs.TryToGeo(points.X[i], points.Y[i], out double lat, out double lon)
                && lat >= area[0] && lat <= area[2] && lon >= area[1] && lon <= area[3])];
            if (inside.Length < points.X.Length)
                log.Note(file, $"{points.X.Length - inside.Length} points lie outside the area set and are not used.");
            raw.Points[k] = RowGroup.Keep(points, inside);
        }
    }

    // A sounder switched on before launch, or one wild fix, would stretch the lake over kilometres of land.
    private void SetAside(int set, List<RowGroup> groups)
    {
        RawPoints points = raw.Points[set];
        double farthestKm = 0;
        foreach (RowGroup group in groups.Skip(1))
            if (crs.TryToGeo(group.X, group.Y, out double lat, out double lon) && crs.TryToGeo(groups[0].X, groups[0].Y, out double midLat, out double midLon))
                farthestKm = Math.Max(farthestKm, KmBetween(new GeoPoint(midLat, GeoPoint.WrapLongitudeDeg(midLon)), lat, lon));
        int away = points.X.Length - groups[0].Indices.Count;
        raw.Points[set] = RowGroup.Keep(points, groups[0].Indices);
        log.Warn(file, $"{away} points lie far from all others (up to {farthestKm:G3} km) and are not used; check them, or cut the file if they belong to the lake.");
    }

    private static void Offer(List<SurveyChoice> choices, SurveyOptions set, FindingForm how, double lat, double lon)
    {
        if (Math.Abs(lat) > 90 || Math.Abs(lon) > 180 || Places.Country(lat, lon) is null or "" or "Antarctica") return;
        choices.Add(new SurveyChoice(set, $"{how}: {Said(lat, lon)}", new GeoPoint(lat, GeoPoint.WrapLongitudeDeg(lon)), Places.Country(lat, lon)!));
    }

    private static double KmBetween(GeoPoint from, double lat, double lon) => Math.Abs(from.LatDeg) > 89 ? 0
        : new LocalProjection(from).ToPlane(lat, lon).DistanceToM(default) / 1000;

    private static FindingForm Said(double lat, double lon)
    {
        string ns = lat < 0 ? "S" : "N", ew = lon < 0 ? "W" : "E";
        return Places.Country(lat, lon) switch
        {
            null => $"{Math.Abs(lat):0.###} {ns} {Math.Abs(lon):0.###} {ew}",
            "" => $"{Math.Abs(lat):0.###} {ns} {Math.Abs(lon):0.###} {ew}, in the open sea",
            string name => $"{Math.Abs(lat):0.###} {ns} {Math.Abs(lon):0.###} {ew}, {name}",
        };
    }
}
