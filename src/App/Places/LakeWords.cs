using System.Globalization;
using SecondShore.App.Words;
using SecondShore.Desk.Views;
using SecondShore.Engine.Season;

namespace SecondShore.App.Places;

/// <summary>Sentences of the Lake place.</summary>
internal static class LakeWords
{
    /// <summary>The lake and the date, as they head a picture and a printed page.</summary>
    public static string Head(LakeView lake, DateTimeOffset at, Wording w) =>
        string.Create(CultureInfo.InvariantCulture, $"{lake.Name}, {w.WeekdayDate(at)} {w.AtLake(at).Year}{(lake.IsInvented ? " " + w["lake.invented.mark"] : "")}");

    /// <summary>The answer in one line.</summary>
    public static string Headline(OutlookView o, Wording w)
    {
        if (o.IsRoughGuess) return w["lake.is.rough"];
        if (o.State == LayerState.Mixed) return w["lake.is.mixed"];
        if (o.State == LayerState.Turning) return w["lake.is.turning"];
        return o.ThermoclineM is { } m && m.P90 - m.P10 > 3.66 ? w["lake.is.unsure"] : w["lake.is.layered"];
    }

    /// <summary>The reason for the depth: the last haze seen, else the weather alone.</summary>
    public static string Because(OutlookView o, Wording w)
    {
        if (o.IsRoughGuess) return w["lake.because.rough"];
        if (o.Haze is { } haze && o.State != LayerState.Mixed) return w["lake.because.haze", w.Depth(haze.DepthM), w.WeekdayDate(haze.At)];
        return w[o.State == LayerState.Mixed ? "lake.because.mixed" : "lake.because.weather", o.Members];
    }

    /// <summary>The same in as few words as a wet glance takes in.</summary>
    public static string Short(OutlookView o, Wording w)
    {
        if (o.IsRoughGuess) return w["lake.short.rough"];
        if (o.Haze is { } haze && o.State != LayerState.Mixed) return w["lake.short.haze", w.Depth(haze.DepthM), w.AtLake(o.At).Date == w.AtLake(haze.At).Date ? w.Time(haze.At) : w.WeekdayDate(haze.At)];
        return w[o.State == LayerState.Mixed ? "lake.short.mixed" : "lake.short.weather"];
    }

    /// <summary>What a guess without weather amounts to: a state that is likely, and a span of depths.</summary>
    public static string Rough(OutlookView o, Wording w) => o.State switch
    {
        LayerState.Mixed => w["lake.rough.mixed"],
        LayerState.Turning => w["lake.rough.turning"],
        _ => o.ThermoclineM is { } m ? w["lake.rough.layered", w.DepthRange(m.P10, m.P90)] : w["lake.rough.layered.open"],
    };

    /// <summary>What is left of the layer in a mixed lake.</summary>
    public static string Left(OutlookView o, Wording w)
    {
        int runs = (int)Math.Round(o.ChanceStratified * o.Members);
        return runs > 0 && o.ThermoclineM is { } m ? w["lake.left", runs, o.Members, w.DepthRange(m.P10, m.P90)] : w["lake.left.none", o.Members];
    }

    /// <summary>A day that lies some days from the outlook's instant.</summary>
    public static string Day(OutlookView o, double days, Wording w) =>
        w.Date(DateOnly.FromDateTime(w.AtLake(o.At).DateTime).AddDays((int)Math.Round(days)));

    /// <summary>State of an arm in words, with what sets it apart from the whole.</summary>
    public static string ArmState(ArmView arm, OutlookView o, Wording w)
    {
        string state = arm.State switch
        {
            LayerState.Stratified => w["arm.layered"],
            LayerState.Turning => w["arm.turning"],
            _ => w["arm.mixed"],
        };
        if (o.IsRoughGuess || arm.TurnoverInDays is not { } turns) return state;
        return arm.State == LayerState.Mixed ? state : $"{state}, {w["arm.turns", Day(o, turns.P50, w)]}";
    }
}
