using SecondShore.Answers.Documents;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Motion;

namespace SecondShore.Answers.Wind;

/// <summary>Writes a wind result as its document.</summary>
public static class WindDocuments
{
    /// <summary>The document.</summary>
    /// <param name="lakeName">The lake's name.</param>
    /// <param name="result">The answer.</param>
    /// <param name="projection">The lake's plane.</param>
    /// <param name="units">Units of the words.</param>
    public static WindDocument Of(string lakeName, WindResult result, LocalProjection projection, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(projection);
        WindField field = result.Field;
        int[] chosen = Places(field, result.Question.MaxPlaces);
        PlanePoint[] places = Array.ConvertAll(chosen, w => field.Motion.Frame.Centre(field.Motion.Cells[w]));
        List<WindDocument.HourRow> hours = [];
        for (int hour = 0; hour < field.Hours.Count; hour++) hours.Add(Hour(result, hour, chosen, places));
        return new WindDocument
        {
            Lake = lakeName,
            At = result.Question.At,
            ThermoclineAtRestM = SpreadDocument.From(result.AtRestM),
            PeriodH = field.PeriodS is { } s ? Math.Round(s / 3600, 2) : null,
            CurrentDepthM = Math.Round(result.CurrentDepthM, 2),
            Places = [.. places.Select((p, i) => Place(projection.ToGeo(p), field.Motion.Depths.DepthM[field.Motion.Cells[chosen[i]]]))],
            Hours = hours,
            Words = WindWords.Say(result, units),
            Cautions = WindWords.Cautions(result, units),
            Assumed = result.Assumed.Say(units),
        };
    }

    /// <summary>The key of a comfort class in documents.</summary>
    public static string Key(Comfort comfort) => comfort switch
    {
        Comfort.Good => "good",
        Comfort.Caution => "caution",
        Comfort.Poor => "poor",
        _ => "do_not_go",
    };

    // Every n-th column and row, so that the places are spread evenly.
    private static int[] Places(WindField field, int most)
    {
        for (int every = 1; ; every++)
        {
            List<int> chosen = [];
            for (int w = 0; w < field.Motion.Cells.Length; w++)
            {
                int cell = field.Motion.Cells[w], nx = field.Motion.Frame.Nx;
                if (cell % nx % every == every / 2 && cell / nx % every == every / 2) chosen.Add(w);
            }

            if (chosen.Count <= Math.Max(1, most)) return [.. chosen];
        }
    }

    private static WindDocument.PlaceRow Place(GeoPoint at, double depthM) =>
        new(Math.Round(at.LatDeg, 6), Math.Round(at.LonDeg, 6), Math.Round(depthM, 2));

    private static WindDocument.HourRow Hour(WindResult result, int hour, int[] chosen, PlanePoint[] places)
    {
        WindField field = result.Field;
        HourSummary summary = result.Hours[hour];
        WaveState[] all = field.Waves(hour), waves = Array.ConvertAll(chosen, w => all[w]);
        Spread[]? depths = result.AtRestAt(summary.At) is { } rest
            ? Array.ConvertAll(places, p => field.ThermoclineM(rest, p, summary.At).Spread) : null;
        Current[] deep = new Current[places.Length], drift = new Current[places.Length];
        for (int i = 0; i < places.Length; i++)
        {
            if (field.ColumnAt(places[i], summary.At) is not { } column) continue;
            deep[i] = column.At(Math.Min(result.CurrentDepthM, Math.Max(0.0, column.DepthM - 0.3)));
            drift[i] = column.Surface;
        }

        return new WindDocument.HourRow
        {
            Time = summary.At,
            WindMps = Math.Round(summary.WindMps, 2),
            WindFromDeg = Math.Round(summary.WindFromDeg, 0),
            GustMps = Math.Round(summary.GustMps, 2),
            TiltM = Math.Round(summary.TiltM, 2),
            HighestWaveM = new SpreadDocument(Math.Round(summary.Waves.HeightLowM, 2), Math.Round(summary.Waves.HeightM, 2), Math.Round(summary.Waves.HeightHighM, 2)),
            WorstComfort = Key(summary.Comfort),
            GoodShare = Math.Round(summary.GoodShare, 3),
            ThermoclineP10M = Row(depths, d => d.P10, 2),
            ThermoclineP50M = Row(depths, d => d.P50, 2),
            ThermoclineP90M = Row(depths, d => d.P90, 2),
            WaveHeightM = Row(waves, w => w.HeightM, 3)!,
            WavePeriodS = Row(waves, w => w.PeriodS, 2)!,
            Comfort = Array.ConvertAll(waves, w => Key(result.Question.Boat.ComfortOf(w, result.SurfaceC))),
            CurrentMps = Row(deep, c => c.SpeedMps, 3)!,
            CurrentToDeg = Row(deep, c => c.ToDeg, 0)!,
            DriftMps = Row(drift, c => c.SpeedMps, 3)!,
            DriftToDeg = Row(drift, c => c.ToDeg, 0)!,
        };
    }

    private static double[]? Row<T>(T[]? values, Func<T, double> value, int decimals) =>
        values is null ? null : Array.ConvertAll(values, v => Math.Round(value(v), decimals));
}
