using System.Text.RegularExpressions;
using SecondShore.Answers.Rig;
using SecondShore.App.Words;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Core.Words;
using SecondShore.Engine.Rig;
using SecondShore.TestKit;

namespace SecondShore.App.Tests;

/// <summary>The engine's own sentences in German: all there, with the same blanks, and none of them left in English.</summary>
public partial class SaidTests
{
    private readonly List<string> _missing = [];

    private UnitSystem Metric => UnitSystem.Metric.In(Speech.Of("de", Sentences.SaidIn("de"), ",", _missing.Add));

    [Fact]
    public void Every_sentence_has_the_blanks_of_the_english_one()
    {
        foreach ((string english, string german) in Sentences.SaidIn("de"))
            Assert.Equal(Blank().Matches(english).Select(m => m.Value).Distinct().Order(), Blank().Matches(german).Select(m => m.Value).Distinct().Order());
    }

    [Theory]
    [InlineData("Formats")]
    [InlineData("Weather")]
    [InlineData("Open")]
    public void Every_sentence_about_files_and_weather_is_there_in_german(string project)
    {
        IReadOnlyDictionary<string, string> german = Sentences.SaidIn("de");
        List<string> missing = [];
        int seen = 0;
        foreach (string file in Directory.EnumerateFiles(Path.Combine(SharedData.RepositoryRoot, "src", project), "*.cs", SearchOption.AllDirectories))
        {
            if (file.Contains($"{Path.DirectorySeparatorChar}Writers{Path.DirectorySeparatorChar}", StringComparison.Ordinal)) continue;
            foreach (string form in SourceForms.In(File.ReadAllText(file)).Where(SourceForms.IsWords))
            {
                seen++;
                if (!german.ContainsKey(form) && !form.StartsWith("geographic degrees", StringComparison.Ordinal)) missing.Add($"{Path.GetFileName(file)}: {form}");
            }
        }

        Assert.True(seen > 20);
        Assert.True(missing.Count == 0, string.Join("\n", missing.Distinct()));
    }

    [Fact]
    public void Source_forms_are_found_as_the_compiler_takes_them()
    {
        Assert.Equal(["{0} of {1} m, and {2}", "twice"], SourceForms.In("""
            log.Error(file, $"{a} of {b} m, "
                + $"and {c}"); fault =
                "twice";
            """));
        Assert.Equal(["{0} of {1:0.0} m", "no {{ here"], SourceForms.In("""log.Error(file, $"{a["x"]} of {Math.Max(b, c):0.0} m"); fault = "no { here";"""));
    }

    [Theory]
    [InlineData(3, 0.1)]
    [InlineData(8, 0.27)]
    [InlineData(20, 0.4)]
    [InlineData(60, 1.5)]
    public void A_rig_is_said_in_german_throughout(double depthM, double speedMps)
    {
        CurrentProfile sheared = CurrentProfile.Of([0.1, 2], [0.05, -0.06], [0, 0.05]);
        foreach (CurrentProfile? current in (CurrentProfile?[])[null, sheared])
        {
            foreach (bool timber in (bool[])[false, true])
            {
                RigReply reply = RigAnswer.Of(new RigRequest
                {
                    DepthM = depthM,
                    SpeedMps = speedMps,
                    Current = current,
                    NearTimber = timber,
                    AskedKg = 0.01,
                    Units = Metric,
                    Samples = 20,
                    TableDepthsM = [],
                    TableSpeedsMps = [],
                });
                Assert.Contains(reply.Choice.Holds ? "anbinden" : "Grund", RigWords.Of(reply)[0], StringComparison.Ordinal);
                Assert.NotEmpty(RigCautions.Of(reply));
                Assert.Contains(" an ", RigWords.Short(reply), StringComparison.Ordinal);
            }
        }

        Assert.Empty(_missing);
    }

    [Fact]
    public void Reasons_of_every_kind_form_and_cover_are_said_in_german()
    {
        Speech speech = Metric.Speech;
        foreach (ReasonKind kind in Enum.GetValues<ReasonKind>())
            foreach (double distanceM in (double[])[2, 40])
                _ = ReasonText.Of(new Reason(kind, FormClass.Hump, distanceM, 4, 9.5, 12, 0.6, CoverKind.Brush, "Nordarm"), feet: false, speech);
        foreach (FormClass form in Enum.GetValues<FormClass>()) _ = ReasonText.Of(new Reason(ReasonKind.OnForm, form, ShallowM: 4, DeepM: 9), feet: true, speech);
        foreach (CoverKind cover in Enum.GetValues<CoverKind>()) _ = ReasonText.Of(new Reason(ReasonKind.CoverNear, DistanceM: 30, Cover: cover), feet: true, speech);
        Assert.Equal("die Kante mit 12 Grad abbricht", ReasonText.Of(new Reason(ReasonKind.SharpEdge, SlopeDeg: 12.3), feet: false, speech));
        Assert.Empty(_missing);
    }

    [Fact]
    public void English_says_the_same_as_the_form_filled_in()
    {
        Assert.Equal("depth goes 4 to 9.5 m within 40 m", ReasonText.Of(new Reason(ReasonKind.DepthChange, DistanceM: 40, ShallowM: 4, DeepM: 9.5), feet: false));
        Assert.Equal("die Tiefe binnen 40 m von 4 bis 9,5 m geht", ReasonText.Of(new Reason(ReasonKind.DepthChange, DistanceM: 40, ShallowM: 4, DeepM: 9.5), feet: false, Metric.Speech));
    }

    // A date may be written in another order: the place counts, its format is the language's own.
    [GeneratedRegex(@"(?<!\{)\{\d(?=[:}])")]
    private static partial Regex Blank();
}
