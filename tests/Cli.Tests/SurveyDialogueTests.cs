using System.Globalization;
using System.Text;

namespace SecondShore.Cli.Tests;

/// <summary>What a survey leaves open is asked on a terminal by numbers, told to scripts as settings, and never guessed.</summary>
public sealed class SurveyDialogueTests : IDisposable
{
    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    // A bowl in a plane that is not named: the file says depth in metres and nothing of where it lies.
    private static string Plane()
    {
        StringBuilder text = new("easting,northing,depth_m\n");
        for (int i = -12; i <= 12; i++)
            for (int k = -9; k <= 9; k++)
                if ((i * i / 144.0) + (k * k / 81.0) is < 1 and var r) text.Append(CultureInfo.InvariantCulture, $"{451_900 + (i * 40)},{5_884_900 + (k * 40)},{14 * (1 - r):F2}\n");
        return text.ToString();
    }

    [Fact]
    public void A_script_is_told_the_settings_that_answer_and_one_of_them_does()
    {
        string file = _folder.Write("lake.csv", Plane());
        Terminal.Run open = Terminal.Do("check", file);
        Assert.Equal(3, open.Code);
        string choice = Assert.Single(open.Err.Split('\n'), l => l.Contains("Germany", StringComparison.Ordinal) && l.Contains("UTM zone 32N", StringComparison.Ordinal));
        string[] settings = [.. choice.Split("--set \"").Skip(1).Select(s => s[..s.IndexOf('"', StringComparison.Ordinal)])];
        Assert.NotEmpty(settings);
        Terminal.Run settled = Terminal.Do(["check", file, .. settings.SelectMany(s => new[] { "--set", s })]);
        Assert.Equal(0, settled.Code);
        Assert.Contains("53.11", settled.Out + settled.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_typed_answers_and_the_folder_keeps_it_with_why()
    {
        string lake = Path.GetDirectoryName(_folder.Write("lake/survey.csv", Plane()))!;
        Terminal.Run open = Terminal.Do("check", lake);
        string[] offered = [.. open.Err.Split('\n').Where(l => l.StartsWith("  ", StringComparison.Ordinal))];
        int number = Array.FindIndex(offered, l => l.Contains("UTM zone 32N", StringComparison.Ordinal)) + 1;
        Assert.True(number > 0, open.Err);
        Terminal.Run answered = Terminal.Answering(number.ToString(CultureInfo.InvariantCulture) + "\n", "check", lake);
        Assert.Equal(0, answered.Code);
        string kept = File.ReadAllText(Path.Combine(lake, "lake.json"));
        Assert.Contains("EPSG:", kept, StringComparison.Ordinal);
        Assert.Contains("Where does the lake lie?", kept, StringComparison.Ordinal);
        Assert.Equal(0, Terminal.Do("check", lake).Code);
    }

    [Fact]
    public void A_folder_named_like_a_file_of_the_lake_is_said()
    {
        string lake = Path.GetDirectoryName(_folder.Write("lake/survey.csv", Plane()))!;
        Directory.CreateDirectory(Path.Combine(lake, "log.csv"));
        Terminal.Run run = Terminal.Do("check", lake);
        Assert.Contains("this is a folder", run.Out + run.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void Files_that_are_replaced_are_named()
    {
        string into = _folder.File("out");
        Terminal.Run first = Terminal.Do("rig", "--depth", "9", "--speed", "0.4", "--out", into);
        Assert.True(first.Code == 0, first.Err);
        Assert.DoesNotContain("Replaced", first.Err, StringComparison.Ordinal);
        Terminal.Run again = Terminal.Do("rig", "--depth", "9", "--speed", "0.4", "--out", into);
        Assert.Contains($"Replaced in {into}: rig-card.html", again.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void A_setting_that_is_not_known_or_not_a_value_is_refused_with_the_right_ones()
    {
        string file = _folder.Write("lake.csv", Plane());
        Assert.Equal(3, Terminal.Do("check", file, "--set", "survey.colour=blue").Code);
        Terminal.Run unit = Terminal.Do("check", file, "--set", "survey.unit=ells");
        Assert.Equal(3, unit.Code);
        Assert.Contains("ells", unit.Err + unit.Out, StringComparison.Ordinal);
    }
}
