namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>Asks how high the water stood where a file holds elevations, with the levels that the file itself suggests.</summary>
internal static class SurfaceLevel
{
    // A level is suggested where so large a share of a raster's cells stands at it, to five centimetres.
    private const double FlatShare = 0.02;
    private const double ClassM = 0.05;
    private const double LeastBelow = 0.05;
    private const double ApartM = 0.5;

    public static SurveyQuestion Ask(string file, RawSurvey raw, ValueFacts values, DepthUnit unit)
    {
        double metres = DepthMeanings.MetresPer(unit);
        List<SurveyChoice> choices = [];
        if (raw.Raster is RawRaster raster)
            foreach ((double level, int cells) in Flats(raster.Values, metres))
                choices.Add(Choice(level, $"{level:0.##} m, where {cells} cells lie level"));
        else
            choices.Add(Choice(values.High * metres, $"{values.High * metres:0.##} m, the highest value of the file"));
        return new SurveyQuestion(file, SurveyQuestionKind.Level,
            $"The file holds elevations ({values.Low:G6} to {values.High:G6} {(unit == DepthUnit.Feet ? "ft" : "m")}), and the level of full pool is not known. How high does the water stand?",
            choices, "surface_elevation_m");
    }

    private static SurveyChoice Choice(double level, FindingForm label) => new(new SurveyOptions { Sense = DepthSense.Elevation, SurfaceElevationM = Math.Round(level, 3) }, label);

    private static IEnumerable<(double LevelM, int Cells)> Flats(float[] values, double metres)
    {
        Dictionary<long, int> classes = [];
        int all = 0;
        for (int i = 0; i < values.Length; i++)
        {
            if (float.IsNaN(values[i])) continue;
            all++;
            long key = (long)Math.Round(values[i] * metres / ClassM);
            classes[key] = classes.GetValueOrDefault(key) + 1;
        }

        // A flat with hardly anything below it is the bed's own; neighbouring steps are one level.
        List<(double LevelM, int Cells)> found = [];
        foreach ((long key, int cells) in classes.Where(c => c.Value > FlatShare * all).OrderByDescending(c => c.Value))
        {
            int below = classes.Where(c => c.Key < key).Sum(c => c.Value);
            if (below >= LeastBelow * all && !found.Exists(f => Math.Abs(f.LevelM - (key * ClassM)) < ApartM)) found.Add((key * ClassM, cells));
        }

        return found.Take(3);
    }
}
