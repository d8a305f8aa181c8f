using System.Globalization;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Core.Words;

namespace SecondShore.Answers.Sheet.Drawing;

/// <summary>The wind by hour: bars are wind, stems gusts, arrows fly with it, dark hours are hatched, stops lie on the axis.</summary>
public sealed class WindDrawing
{
    /// <summary>Width, px.</summary>
    public static readonly double WidthPx = 226;

    /// <summary>Height, px.</summary>
    public static readonly double HeightPx = 148;

    private const double Left = 30, Right = 222, Top = 34, Floor = 126, HatchFromPx = 10, HatchStepPx = 7;
    private readonly ISheetCanvas _canvas;
    private readonly DaySheetModel _model;
    private readonly DateTimeOffset _start;
    private readonly double _hours, _perUnit, _most;

    private WindDrawing(ISheetCanvas canvas, DaySheetModel model)
    {
        (_canvas, _model, _start) = (canvas, model, model.Wind[0].At);
        _hours = (model.Wind[^1].At.AddHours(1) - _start).TotalHours;
        _perUnit = model.Units.IsMetric ? 1.0 : 1.0 / Speed.MpsPerMph;
        _most = Math.Max(model.Units.IsMetric ? 10 : 20, model.Wind.Max(w => w.GustMps) * _perUnit);
    }

    /// <summary>Draws the hours with the corner at 0, 0; nothing where there is no wind.</summary>
    public static void Draw(ISheetCanvas canvas, DaySheetModel model)
    {
        Require.NotNull(canvas);
        if (Require.NotNull(model).Wind.Count == 0) return;
        WindDrawing drawing = new(canvas, model);
        if (model.LightAt is DateTimeOffset light) drawing.Dark(Left, drawing.X(light));
        if (model.DarkAt is DateTimeOffset dark) drawing.Dark(drawing.X(dark), Right);
        drawing.Levels();
        int every = Math.Max(1, (int)Math.Ceiling(drawing._hours / 6));
        for (int i = 0; i < model.Wind.Count; i++)
        {
            drawing.Hour(model.Wind[i]);
            if (i % every == 0) drawing.NameOf(model.Wind[i].At);
        }

        canvas.Line([new(Left, Floor), new(Right, Floor)], false, SheetMarks.Curve);
        foreach (SheetStop stop in model.Stops) canvas.Line([new(drawing.X(stop.Arrive), Floor + 1), new(drawing.X(stop.Leave), Floor + 1)], false, SheetMarks.OnStop);
    }

    /// <summary>The same in words.</summary>
    public static string Instead(DaySheetModel model)
    {
        SheetWind first = Require.NotNull(model).Wind[0], worst = model.Wind.MaxBy(w => w.GustMps);
        Speech speech = model.Units.Speech;
        return speech.Say($"Wind by hour from {model.Units.Wind(first.WindMps)}; the strongest gust is {model.Units.Wind(worst.GustMps)} at {speech.Clock(worst.At)}.");
    }

    private void Levels()
    {
        double step = _model.Units.IsMetric ? 5 : 10;
        for (double level = step; level <= _most; level += step)
        {
            double y = Y(level / _perUnit);
            _canvas.Line([new(Left, y), new(Right, y)], false, SheetMarks.Grid);
            _canvas.Text(level.ToString("0", CultureInfo.InvariantCulture), new(Left - 5, y + 4), SheetMarks.Axis, SheetAnchor.End);
        }
    }

    private void Hour(SheetWind hour)
    {
        double x = X(hour.At.AddMinutes(30)), half = (Right - Left) / _hours * 0.275, wind = Y(hour.WindMps), gust = Y(hour.GustMps);
        _canvas.Line([new(x, wind), new(x, gust)], false, SheetMarks.Curve);
        _canvas.Line([new(x - 4, gust), new(x + 4, gust)], false, SheetMarks.Curve);
        _canvas.Area([[new(x - half, wind), new(x + half, wind), new(x + half, Floor), new(x - half, Floor)]], SheetMarks.Full);
        if (!double.IsFinite(hour.FromDeg)) return;
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(hour.FromDeg + 180));
        _canvas.Line([At(0, -7), At(0, 7)], false, SheetMarks.Curve);
        _canvas.Line([At(-3.2, 3), At(0, 7), At(3.2, 3)], false, SheetMarks.Curve);

        SheetPoint At(double across, double along) => new(x + (along * sin) + (across * cos), 20 - (along * cos) + (across * sin));
    }

    // An hour's name stands where the hour begins: where a stop at that time begins, too.
    private void NameOf(DateTimeOffset at)
    {
        if (X(at) >= Right - 8) return;
        Speech speech = _model.Units.Speech;
        string name = speech.Language == "en" ? at.ToString("h tt", CultureInfo.InvariantCulture).ToLowerInvariant() : speech.Say($"{at.Hour} h");
        _canvas.Text(name, new(X(at), 143), SheetMarks.Axis, SheetAnchor.Middle);
    }

    // Lines that rise to the right, cut at the box.
    private void Dark(double from, double to)
    {
        double high = Floor - HatchFromPx;
        for (double foot = from - high + HatchStepPx; foot < to; foot += HatchStepPx)
        {
            double begin = Math.Max(from, foot), end = Math.Min(to, foot + high);
            if (begin < end) _canvas.Line([new(begin, Floor - (begin - foot)), new(end, Floor - (end - foot))], false, SheetMarks.Hatch);
        }
    }

    private double X(DateTimeOffset at) => Left + ((Right - Left) * Math.Clamp((at - _start).TotalHours / _hours, 0, 1));

    private double Y(double mps) => Floor - ((Floor - Top) * mps * _perUnit / _most);
}
