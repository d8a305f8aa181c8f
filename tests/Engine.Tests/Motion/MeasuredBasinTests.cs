using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;
using SecondShore.Formats.Surveys;
using SecondShore.TestKit;
using Xunit;

namespace SecondShore.Engine.Tests.Motion;

/// <summary>Five days of hourly wind on measured lakes at 50 m, where the shared surveys are present.</summary>
public class MeasuredBasinTests
{
    [Fact]
    [LongCheck]
    public void Five_days_of_hourly_wind_run_without_trouble_on_a_winding_reservoir() => Run("prettyboy-reservoir-soundings/PrettyBoy.csv", 12);

    [Fact]
    [LongCheck]
    public void Five_days_of_hourly_wind_run_without_trouble_on_a_large_lake() => Run("mendota-contours/mendota-contours-all.shp", 10);

    private static void Run(string file, double upperM)
    {
        SurveyCase survey = SurveyCatalogue.All.First(s => s.File == file && s.Refusal is null);
        SurveyImport? read = survey.Read();
        Assert.SkipWhen(read is null, SharedData.Missing);
        GriddedLake lake = SurveyGridder.Grid(read!.Survey!, new GridOptions { CellM = 50 }, null, TestContext.Current.CancellationToken);
        Assert.True(lake.IsGridded, lake.Refusal?.ToString());
        WindField field = WindField.Compute(lake.Grid!, [new TwoLayers(upperM, 998.4, 999.6, 1)], TestWeather.FiveDays(), TestWeather.Start.AddHours(6), 120,
            new WindFieldOptions { Members = 1, SpinUpDays = 0.25 }, null, TestContext.Current.CancellationToken);
        Assert.InRange(field.Motion.Frame.CellM, 45, 55);
        Assert.NotNull(field.PeriodS);
        double largest = 0;
        for (int hour = 0; hour <= 120; hour += 6)
        {
            foreach (float offset in field.OffsetsM(hour))
            {
                Assert.InRange(offset, (float)-upperM, 40f);
                largest = Math.Max(largest, Math.Abs(offset));
            }

            foreach (WaveState wave in field.Waves(hour)) Assert.InRange(wave.HeightM, 0, 1.5);
        }

        Assert.InRange(largest, 0.1, 15);
        PlanePoint middle = field.Motion.Frame.Centre(field.Motion.Cells[field.Motion.Cells.Length / 2]);
        Assert.InRange(field.CurrentAt(middle, 3, field.Hours[70]).SpeedMps, 1e-4, 1);
    }
}
