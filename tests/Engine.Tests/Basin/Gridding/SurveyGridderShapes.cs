using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Gridding;

namespace SecondShore.Engine.Tests.Basin.Gridding;

/// <summary>Surveys of surfaces known on paper.</summary>
internal static class SurveyGridderShapes
{
    /// <summary>A round lake with a wavy bed.</summary>
    internal sealed class Wavy
    {
        public static double DepthM(double x, double y) => 20 + (6 * Math.Sin(x / 60) * Math.Cos(y / 75));

        public Survey Survey { get; } = new()
        {
            Soundings = [LakeShapes.Soundings(Enumerable.Range(0, 900).Select(i =>
            {
                double r = 400 * Math.Sqrt((i + 0.5) / 900), a = i * 2.399963;
                return (r * Math.Cos(a), r * Math.Sin(a), DepthM(r * Math.Cos(a), r * Math.Sin(a)));
            }))],
        };

        public double Rmse(GriddingMethod method)
        {
            GriddedLake lake = SurveyGridder.Grid(Survey, new GridOptions { Projection = LakeShapes.Plane, CellM = 10, Method = method });
            double sum = 0;
            int count = 0;
            for (int i = 0; i < lake.Grid!.DepthM.Length; i++)
            {
                var p = lake.Grid.Frame.Centre(i);
                if (Math.Sqrt((p.XM * p.XM) + (p.YM * p.YM)) > 360) continue;
                double off = lake.Grid.DepthM[i] - DepthM(p.XM, p.YM);
                sum += off * off;
                count++;
            }

            return Math.Sqrt(sum / count);
        }
    }
}
