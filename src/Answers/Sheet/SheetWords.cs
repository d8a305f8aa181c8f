using System.Globalization;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Words;

namespace SecondShore.Answers.Sheet;

/// <summary>What the sheet says around its numbers, in the reader's language; the same on a page and in a PDF.</summary>
public static class SheetWords
{
    /// <summary>A heading or a sentence without values.</summary>
    public static string Say(DaySheetModel model, string english) => Of(model).Plain(english);

    /// <summary>The day: <c>Wednesday 7 October</c>.</summary>
    public static string Date(DaySheetModel model) => Of(model).Say($"{model.Plan.Launch:dddd d MMMM}");

    /// <summary>The day, from where and when it begins and when it ends.</summary>
    public static string Launch(DaySheetModel model)
    {
        Speech speech = Of(model);
        return speech.Say($"{Date(model)}. Launch {model.RampName} {speech.Clock(model.Plan.Launch)}, home by {speech.Clock(model.Plan.Home)}.");
    }

    /// <summary>When the boat is on a stop: <c>7:10 to 8:25</c>.</summary>
    public static string Times(DaySheetModel model, SheetStop stop)
    {
        Speech speech = Of(model);
        ArgumentNullException.ThrowIfNull(stop);
        return speech.Language == "en"
            ? string.Create(CultureInfo.InvariantCulture, $"{stop.Arrive:h:mm} to {stop.Leave:h:mm}")
            : speech.Say($"{speech.Clock(stop.Arrive)} to {speech.Clock(stop.Leave)}");
    }

    /// <summary>The wind's heading with its unit.</summary>
    public static string WindHeading(DaySheetModel model) => $"{Say(model, "Wind")}, {(model.Units.IsMetric ? "m/s" : "mph")}";

    /// <summary>A line to write the haze on.</summary>
    public static string HazeBlank(DaySheetModel model) => Of(model).Say($"Haze seen at ______ {model.Units.DepthUnit}, time ______");

    /// <summary>A line to write the water's temperature on.</summary>
    public static string SurfaceBlank(DaySheetModel model) => Of(model).Say($"Surface ______ {model.Units.TemperatureUnit}");

    /// <summary>A reason as a sentence's end, with one full stop.</summary>
    public static string Ended(string why) => $"{Require.NotNull(why).TrimEnd('.')}.";

    private static Speech Of(DaySheetModel model) => Require.NotNull(model).Units.Speech;
}
