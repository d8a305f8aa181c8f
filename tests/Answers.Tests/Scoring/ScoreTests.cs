using System.Text.Json;
using SecondShore.Answers.Scoring;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;
using SecondShore.TestKit;

namespace SecondShore.Answers.Tests.Scoring;

public class ScoreTests
{
    [Fact]
    public void Ranked_probability_scores_are_the_check_values()
    {
        Assert.Equal(0.666667, Crps.Equal([1, 2, 4], 3), 1e-6);
        Assert.Equal(0.333333, Crps.Fair([1, 2, 4], 3), 1e-6);
        Assert.Equal(1.98885, Crps.Normal(10, 2, 13), 1e-4);
    }

    [Fact]
    public void Overturn_error_is_zero_inside_the_bracket_and_signed_outside()
    {
        DateOnly last = new(2020, 10, 10), first = new(2020, 10, 20);
        Assert.Equal(0, ErrorSums.OverturnError(last, first, new DateOnly(2020, 10, 15)));
        Assert.Equal(-4, ErrorSums.OverturnError(last, first, new DateOnly(2020, 10, 6)));
        Assert.Equal(3, ErrorSums.OverturnError(last, first, new DateOnly(2020, 10, 23)));
    }

    [Fact]
    public void Report_is_written_with_the_keys_scripts_rely_on()
    {
        LakeScore lake = new() { Lake = "x", Mode = "blind", TemperatureRmseC = 1.5, N = 3, Why = ["no reading is as shallow as 1.1 m"] };
        using JsonDocument json = JsonDocument.Parse(new ScoreReport([lake], [ScoreSummary.Of("blind", [lake])]).ToJson());
        JsonElement row = json.RootElement.GetProperty("lakes")[0];
        Assert.Equal(1.5, row.GetProperty("temperature_rmse_c").GetDouble());
        foreach (string key in new[] { "lake", "mode", "surface_rmse_c", "thermocline_mae_m", "overturn_mae_days", "coverage80", "crps_thermocline_m", "crps_overturn_days", "skill_vs_climatology", "n" })
            Assert.True(row.TryGetProperty(key, out _), key);
        Assert.Equal(1.5, json.RootElement.GetProperty("summary")[0].GetProperty("temperature_rmse_c").GetDouble());
    }

    [Fact]
    public void Blind_figures_on_a_small_measured_lake_stay_within_what_was_reached()
    {
        string? path = SharedData.Find("validation", "pleasant-lake");
        Assert.SkipWhen(path is null, SharedData.Missing);
        ScoreReport report = ScoreRunner.Run([LakeFolderReader.ReadPath(path!)], ScoreMode.Blind);
        Assert.InRange(report.Lakes[0].TemperatureRmseC!.Value, 0.3, 1.5);
        Assert.InRange(report.Lakes[0].SurfaceRmseC!.Value, 0.2, 1.3);
        Assert.True(report.Lakes[0].N > 10000);
    }

    [Fact]
    public void Blind_figures_on_one_measured_season_stay_within_what_was_reached()
    {
        LakeScore score = ScoreRunner.Run([LakeFolderReader.ReadPath(SharedData.Copy("lakes", "pleasant-lake-2019"))], ScoreMode.Blind).Lakes[0];
        Assert.InRange(score.TemperatureRmseC!.Value, 0.3, 2.6);
        Assert.InRange(score.SurfaceRmseC!.Value, 0.2, 0.8);
        Assert.InRange(score.ThermoclineMaeM!.Value, 0.3, 1.2);
        Assert.InRange(score.OverturnMaeDays!.Value, 0, 4);
        Assert.True(score.N > 300);
    }

    [Fact]
    public void A_fit_of_one_season_foretells_the_next_better_than_the_priors_do()
    {
        string? path = SharedData.Find("validation", "pleasant-lake");
        Assert.SkipWhen(path is null, SharedData.Missing);
        LakeFolder lake = LakeFolderReader.ReadPath(path!);
        LakeScore fitted = ScoreRunner.Run([lake], ScoreMode.Fit).Lakes[0], blind = ScoreRunner.Run([lake], ScoreMode.Blind).Lakes[0];
        Assert.InRange(fitted.TemperatureRmseC!.Value, 0.2, 1.0);
        Assert.InRange(fitted.ThermoclineMaeM!.Value, 0.1, 0.8);
        Assert.True(fitted.TemperatureRmseC < blind.TemperatureRmseC);
    }

    [Fact]
    public void The_main_step_is_read_off_a_cast_only_where_the_rules_allow()
    {
        double[] z = [0, 2, 4, 6, 8, 10, 12], t = [24, 24, 23.5, 16, 11, 9, 8.5];
        Assert.InRange(ObservedProfile.From(new WaterProfile(default, z, t, null, "x")).ThermoclineM, 4, 7);
        Assert.True(double.IsNaN(ObservedProfile.From(new WaterProfile(default, z[..5], t[..5], null, "x")).ThermoclineM));
        Assert.True(double.IsNaN(ObservedProfile.From(new WaterProfile(default, z, [12, 12, 11.9, 11.9, 11.8, 11.8, 11.8], null, "x")).ThermoclineM));
    }
}
