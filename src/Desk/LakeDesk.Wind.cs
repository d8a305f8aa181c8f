using System.Runtime.InteropServices;
using SecondShore.Answers.Files;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Wind;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;

namespace SecondShore.Desk;

/// <summary>What the wind does to the water, worked out hour by hour with its progress told.</summary>
public sealed partial class LakeDesk
{
    internal WindView Wind(BlowWind question)
    {
        WindResult result = _graph.Wind(question.Ask.Hours);
        WindView view = WindViews.Of(_graph.Lake(), result, question.Ask, _units);
        PutFields(result);
        _tray.Draw(WindViews.Drawing(result, view.Places));
        _tray.Progress(1, Steps.Water);
        return view;
    }

    internal PointSeries Point(WindAsk wind, PointAsk place)
    {
        PreparedLake lake = _graph.Lake();
        WindResult blown = _graph.Wind(wind.Hours);
        return PointSeries.Of(lake, blown, [lake.RequireGrid().Projection.ToGeo(new PlanePoint(place.XM, place.YM))])[0];
    }

    // The files that the command line writes of the same hours.
    internal HandedOut PapersOf(WindPapers question)
    {
        WindResult blown = _graph.Wind(question.Wind.Hours);
        PreparedLake lake = _graph.Lake();
        return Hand(WindFiles.Of(blown, WindDocuments.Of(lake.Site.Name, blown, lake.RequireGrid().Projection, _units), lake.GridAt(blown.Question.At)));
    }

    internal HandedOut PapersOf(PointPapers question) => Hand(PointFiles.Of([Point(question.Wind, question.Place)]));

    // The chart's belt stands at rest as in the first hour: what the season moves since is laid over what the wind does.
    private static float[] OffRestOfFirstM(WindResult result, int hour)
    {
        float[] offsetM = result.Field.OffsetsM(hour);
        if (result.AtRestM is not { } first || result.AtRestAt(result.Field.Hours[hour]) is not { } now) return offsetM;
        float movedM = (float)(now.Quantile(0.5) - first.Quantile(0.5));
        for (int w = 0; w < offsetM.Length; w++) offsetM[w] += movedM;
        return offsetM;
    }

    // For every hour a value for each water cell, one after the other.
    private void PutFields(WindResult result)
    {
        WindField field = result.Field;
        int cells = field.Motion.Cells.Length, hours = field.Hours.Count;
        float[] offsets = new float[cells * hours], waves = new float[cells * hours], east = new float[cells * hours], north = new float[cells * hours];
        for (int hour = 0; hour < hours; hour++)
        {
            if (field.IsLayered) OffRestOfFirstM(result, hour).CopyTo(offsets, cells * hour);
            IReadOnlyList<float> heightsM = result.Hours[hour].WaveHeightsM;
            for (int w = 0; w < cells; w++) waves[(cells * hour) + w] = heightsM[w];
            if (field.IsLayered)
            {
                (float[] e, float[] n) = field.LowerRocking(hour);
                e.CopyTo(east, cells * hour);
                n.CopyTo(north, cells * hour);
            }

            _tray.Progress(0.85 + (0.15 * hour / hours), Steps.Water);
        }

        _tray.Put("wind.cells", MemoryMarshal.AsBytes(field.Motion.Cells.AsSpan()));
        _tray.Put("wind.offset", MemoryMarshal.AsBytes(offsets.AsSpan()));
        _tray.Put("wind.wave", MemoryMarshal.AsBytes(waves.AsSpan()));
        _tray.Put("wind.east", MemoryMarshal.AsBytes(east.AsSpan()));
        _tray.Put("wind.north", MemoryMarshal.AsBytes(north.AsSpan()));
    }
}
