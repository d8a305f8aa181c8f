using System.Globalization;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Rig;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Rig;

/// <summary>The tables of docs/science/rig.md are printed by this code; a change of the physics shows here.</summary>
public class RuleOfThumbTests
{
    private static readonly double[] Feet = [15, 30, 45], Mph = [0.3, 0.5, 0.6, 0.7, 0.8, 1.0], Pounds = [12, 15, 17];

    [Fact]
    public void Table_of_the_trades_rule_in_the_docs_is_what_the_physics_says()
    {
        string docs = Docs();
        foreach (string row in RuleRows()) Assert.True(docs.Contains(row, StringComparison.Ordinal), $"docs/science/rig.md lacks the row\n{row}\nof\n{string.Join('\n', RuleRows())}");
    }

    [Fact]
    public void Table_of_falls_and_bows_in_the_docs_is_what_the_physics_says()
    {
        string docs = Docs();
        foreach (string row in FallRows().Concat(BowRows()))
            Assert.True(docs.Contains(row, StringComparison.Ordinal), $"docs/science/rig.md lacks the row\n{row}\nof\n{string.Join('\n', FallRows())}\n{string.Join('\n', BowRows())}");
    }

    private static string Docs() => File.ReadAllText(Path.Combine(SharedData.RepositoryRoot, "docs", "science", "rig.md"));

    private static RigConditions At(double feet, double mph) => new()
    {
        DepthM = feet * Length.MetresPerFoot,
        DepthSdM = 0.05 * feet * Length.MetresPerFoot,
        SpeedMps = mph * Speed.MpsPerMph,
        SpeedSdMps = 0.15 * mph * Speed.MpsPerMph,
        CurrentSdMps = 0.02,
    };

    private static List<string> RuleRows()
    {
        List<string> rows = [];
        foreach (double pounds in Pounds)
        {
            FishingLine line = FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, pounds);
            foreach (double feet in Feet)
            {
                List<string> cells = [];
                foreach (double mph in Mph)
                {
                    RigConditions at = At(feet, mph);
                    Jig jig = Jig.Usual(0.014);
                    double sure = WeightNeed.LeastKg(jig, line, at, HoldRule.Usual).Quantile(HoldRule.Usual.Confidence);
                    double felt = LeastMass.MassKg(jig, at.Tow(jig, line), 1, HoldRule.Usual.FeelShare);
                    cells.Add(RigTables.Lightest(StandardWeight.Ounces, Math.Max(sure, felt))?.Label.Replace(" oz", "", StringComparison.Ordinal) ?? "too fast");
                }

                string head = feet == Feet[0] ? string.Create(CultureInfo.InvariantCulture, $"{pounds} lb, {line.DiameterM * 1000:0.00} mm") : "";
                rows.Add($"| {(head.Length > 0 ? head + " " : "")}| {feet.ToString(CultureInfo.InvariantCulture)} ft | {string.Join(" | ", cells)} |");
            }
        }

        return rows;
    }

    // Slack fall to 30 ft: weight down, line across.
    private static List<string> FallRows()
    {
        FishingLine[] lines = [FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 12), FishingLine.OfPoundsWeight(LineMaterial.Fluorocarbon, 20), FishingLine.OfPoundsWeight(LineMaterial.Braid, 20)];
        List<string> rows = [];
        foreach (string label in (string[])["3/8 oz", "1/2 oz", "3/4 oz", "1 oz"])
        {
            Jig jig = Jig.Usual(StandardWeight.Ounces.First(s => s.Label == label).MassKg);
            IEnumerable<double> fallsS = lines.Select(l => FallSolver.Solve(FallCase.Of(jig, l, At(30, 0.6))).TimeS);
            rows.Add($"| {label} | {string.Join(" | ", fallsS.Select(s => s.ToString("0.00 s", CultureInfo.InvariantCulture)))} |");
        }

        return rows;
    }

    // 3/4 oz at 30 ft and 0.6 mph: bow, weight on the bottom.
    private static List<string> BowRows()
    {
        Jig jig = Jig.Usual(0.75 * Mass.KilogramsPerOunce);
        List<string> rows = [];
        foreach ((string name, FishingLine line) in new[]
        {
            ("fluorocarbon, 0.33 mm", new FishingLine("f", LineMaterial.Fluorocarbon, 0.00033, 60, true)),
            ("braid, 0.33 mm", new FishingLine("b", LineMaterial.Braid, 0.00033, 60, true)),
            ("fluorocarbon, 0.23 mm", new FishingLine("f", LineMaterial.Fluorocarbon, 0.00023, 60, true)),
            ("braid, 0.23 mm", new FishingLine("b", LineMaterial.Braid, 0.00023, 60, true)),
        })
        {
            TowShape shape = TowShape.Of(At(30, 0.6).Tow(jig, line));
            rows.Add(string.Create(CultureInfo.InvariantCulture, $"| {name} | {shape.BowM:0.0} m | {shape.Tow.WeightOnBottomShare * 100:0} % |"));
        }

        return rows;
    }
}
