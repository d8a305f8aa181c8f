using SecondShore.Answers.Lake;
using SecondShore.Answers.Wind;
using SecondShore.Desk.Views;
using SecondShore.Engine.Basin.Arms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Water;

namespace SecondShore.Desk;

/// <summary>The wind's work as the page shows it.</summary>
internal static class WindViews
{
    private static readonly double[] BeltShares = [0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9];

    public static WindView Of(PreparedLake lake, WindResult result, WindAsk ask, UnitSystem units)
    {
        WindField field = result.Field;
        List<(string Name, PlanePoint Place)> parts = Parts(lake, field, result.AtRestM?.Quantile(0.5) ?? 0, units);
        HourSummary tipped = result.Hours.MaxBy(h => h.TiltM)!;
        return new WindView
        {
            Asked = ask,
            Hours = [.. result.Hours.Select(h => Hour(lake, result, h, units))],
            AtRestM = result.AtRestM?.Spread,
            PeriodH = field.PeriodS / 3600,
            Tipped = IndexOf(result, tipped),
            Places = [.. parts.Select(p => Part(result, p.Name, p.Place))],
            Words = WindWords.Say(result, units),
            Cautions = WindWords.Cautions(result, units),
            Assumed = result.Assumed.Say(units),
        };
    }

    /// <summary>What the chart draws of it.</summary>
    public static WindDrawing Drawing(WindResult result, IReadOnlyList<WindPlaceView> places)
    {
        GridFrame f = result.Field.Motion.Frame;
        return new WindDrawing(new ChartFrame(f.WestM, f.SouthM, f.CellM, f.Nx, f.Ny), result.Field.Hours.Count,
            result.AtRestM is { } law ? Array.ConvertAll(BeltShares, s => Math.Max(0.1, law.Quantile(s))) : null,
            [.. places.Select(p => new SpotMark("", p.Name, p.XM, p.YM, 0))], [.. result.Hours.Select(h => h.WindFromDeg)], [.. result.Hours.Select(h => h.WindMps)]);
    }

    private static int IndexOf(WindResult result, HourSummary hour)
    {
        for (int i = 0; i < result.Hours.Count; i++)
            if (ReferenceEquals(result.Hours[i], hour)) return i;
        return 0;
    }

    private static WindHourView Hour(PreparedLake lake, WindResult result, HourSummary hour, UnitSystem units)
    {
        DateTimeOffset middle = hour.At.AddMinutes(30);
        DayLight light = DayLight.On(DateOnly.FromDateTime(hour.At.DateTime), lake.Site.Position, DayLight.CivilTwilightZenithDeg);
        return new WindHourView(hour.At, hour.WindMps, hour.GustMps, hour.WindFromDeg, middle < light.Rise || middle > light.Set, hour.TiltM,
            new Spread(hour.Waves.HeightLowM, hour.Waves.HeightM, hour.Waves.HeightHighM), WindDocuments.Key(hour.Comfort), hour.GoodShare,
            result.Field.IsLayered ? WindWords.Tip(result, hour, units) : "");
    }

    private static WindPlaceView Part(WindResult result, string name, PlanePoint place)
    {
        WindField field = result.Field;
        int hours = field.Hours.Count;
        double[] offsetM = new double[hours], mps = new double[hours], toDeg = new double[hours], waveM = new double[hours];
        for (int h = 0; h < hours; h++)
        {
            DateTimeOffset at = field.Hours[h];
            offsetM[h] = Math.Round(field.ThermoclineOffsetM(place, at), 3);
            waveM[h] = Math.Round(field.WavesAt(place, at).HeightM, 3);
            if (field.ColumnAt(place, at) is not { } column) continue;
            Current current = column.At(Math.Min(result.CurrentDepthM + offsetM[h], Math.Max(0, column.DepthM - 0.3)));
            (mps[h], toDeg[h]) = (Math.Round(current.SpeedMps, 4), Math.Round(current.ToDeg));
        }

        return new WindPlaceView(name, offsetM, mps, toDeg, waveM, place.XM, place.YM);
    }

    // One place a part of the lake: the deepest of its cells nearest its middle, where the thermocline stands clear of the bottom.
    private static List<(string Name, PlanePoint Place)> Parts(PreparedLake lake, WindField field, double restM, UnitSystem units)
    {
        List<(string, PlanePoint)> parts = [];
        if (lake.Arms is { Arms.Count: > 1 } set)
        {
            foreach (Arm arm in set.Arms)
                if (Middle(field, p => set.ArmAt(lake.FullPool!.Projection.ToGeo(p))?.Name == arm.Name, restM) is { } place) parts.Add((ArmText.Of(arm.Name, units.Speech), place));
        }

        if (parts.Count == 0 && Middle(field, _ => true, 0) is { } whole) parts.Add((lake.Site.Name, whole));
        return parts;
    }

    private static PlanePoint? Middle(WindField field, Func<PlanePoint, bool> within, double leastM)
    {
        List<(PlanePoint Place, double DepthM)> cells = [];
        foreach (int cell in field.Motion.Cells)
        {
            PlanePoint place = field.Motion.Frame.Centre(cell);
            if (field.Motion.Depths.DepthM[cell] > leastM && within(place)) cells.Add((place, field.Motion.Depths.DepthM[cell]));
        }

        if (cells.Count == 0) return null;
        PlanePoint middle = new(cells.Average(c => c.Place.XM), cells.Average(c => c.Place.YM));
        return cells.MinBy(c => c.Place.DistanceToM(middle) - (5 * c.DepthM)).Place;
    }
}
