using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Rig;
using SecondShore.Answers.Sheet;
using SecondShore.Cli.Console;
using SecondShore.Engine.Day;
using SecondShore.Engine.Rig;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.Cli.Verbs;

/// <summary><c>rig [LAKE] --depth D --speed S</c>, or <c>rig LAKE --stop N</c>: weight to keep the bottom, line out, fall, line shape, tables.</summary>
internal static class RigVerb
{
    /// <summary>A stop of the plan, and what it asks.</summary>
    private sealed record Planned(string Place, RigRequest Request);

    public static Command Make(Surroundings surroundings)
    {
        RigOptions o = new();
        Command command = new("rig", "What do I tie on, how much line out, how fast may I drag and stay on the bottom, how long is the fall?\n"
            + "By hand: rig --depth 27ft --speed 0.6mph. From the plan: rig LAKE --stop 2. What was seen of a jig stands in tackle.json and corrects its drag.");
        o.AddTo(command);
        command.SetAction((parsed, stop) =>
        {
            string? lake = parsed.GetValue(o.LakePath);
            Planned? planned = null;
            LakeFolder? folder;
            UnitSystem units;
            if (parsed.GetValue(o.Stop) is int number)
            {
                PreparedLake prepared = LakeInput.Prepare(lake ?? throw new BadUsageException("--stop needs LAKE: the plan is made from it."), surroundings, stop);
                folder = prepared.Folder;
                units = SharedOptions.UnitsOf(parsed.GetValue(o.Units), prepared);
                planned = OfStop(number, prepared, units, o, parsed, surroundings, stop);
            }
            else
            {
                folder = lake is null ? null : LakeInput.Read(lake, surroundings, stop);
                units = UnitsOf(parsed.GetValue(o.Units), folder);
            }

            List<Finding> assumed = [];
            RigRequest request = o.Request(parsed, units, TackleMapper.Map(folder?.Tackle, assumed), planned?.Request);
            RigReply reply = Work(request);
            reply = reply with { Assumed = [.. assumed.Say(units), .. reply.Assumed] };
            if (parsed.GetValue(o.Out) is { } path)
                OutFolder.Write(new MemoryFiles("rig", [new("rig-card.html", Encoding.UTF8.GetBytes(RigCardHtml.Page(reply, planned?.Place ?? "")))]), path, surroundings, stop);
            if (parsed.GetValue(o.Json)) surroundings.Out.WriteLine(JsonSerializer.Serialize(RigDocuments.Of(reply), AnswersJson.Default.RigDocument));
            else Print(planned?.Place, reply, surroundings.Out);
            return Task.FromResult(ExitCodes.Done);
        });
        return command;
    }

    private static Planned OfStop(int number, PreparedLake lake, UnitSystem units, RigOptions o, ParseResult parsed, Surroundings surroundings, CancellationToken stop)
    {
        if (number < 1) throw new BadUsageException($"--stop {number} is no stop; the first is 1.");
        DayWish wish = new()
        {
            Date = SharedOptions.Day(parsed.GetValue(o.Date), lake.Folder, surroundings.Clock),
            StandsAt = AnswerTime.Default(lake.Folder, surroundings.Clock),
            Ensemble = SharedOptions.Ensemble(parsed, o.Members, o.Seed),
        };
        DayResult day;
        using (ProgressLine progress = new(surroundings, "Planning the day")) day = DayAnswer.Compute(lake, wish, units, progress, cancel: stop);
        if (number > day.Plan.Stops.Count)
            throw new BadUsageException($"--stop {number} is more than the plan of {wish.Date:yyyy-MM-dd} has; its stops are 1 to {day.Plan.Stops.Count}.");
        PlannedStop at = day.Plan.Stops[number - 1];
        string place = string.Create(CultureInfo.InvariantCulture,
            $"{lake.Site.Name}, stop {number}: {at.Candidate.Letter} {at.Candidate.Name}, {at.Arrive:ddd d MMM, HH:mm} to {at.Leave:HH:mm}");
        return new Planned(place, day.Rigs[at.Candidate.Id].Request with { TableDepthsM = null, TableSpeedsMps = null, Samples = 200 });
    }

    private static RigReply Work(RigRequest request)
    {
        try
        {
            return RigAnswer.Of(request);
        }
        catch (RefusedException e)
        {
            throw new BadUsageException(e.Finding.Say(request.Units));
        }
    }

    private static UnitSystem UnitsOf(string? text, LakeFolder? folder) => text switch
    {
        null => folder is { DisplayUnits: not DisplayUnits.UsCustomary } ? UnitSystem.Metric : UnitSystem.Feet,
        "feet" or "ft" => UnitSystem.Feet,
        "metric" or "m" => UnitSystem.Metric,
        _ => throw new BadUsageException($"--units {text} is not known; use feet or metric."),
    };

    private static void Print(string? place, RigReply reply, TextWriter output)
    {
        UnitSystem units = reply.Request.Units;
        if (place is not null) output.WriteLine(place);
        foreach (string sentence in RigWords.Of(reply)) output.WriteLine(sentence);
        output.WriteLine();
        foreach (string line in LineChart.Draw(reply.Shape, reply.Conditions.DepthM, units)) output.WriteLine(line);
        output.WriteLine();
        RigCard card = RigCard.Of(reply);
        output.WriteLine(card.Title);
        output.WriteLine($"{"",8}{string.Concat(card.SpeedHeads.Select(h => $"{h,10}"))}");
        foreach (RigCard.Row row in card.Rows) output.WriteLine($"{row.DepthHead,8}{string.Concat(row.Cells.Select(c => $"{c,10}"))}");
        foreach (string note in card.Notes) output.WriteLine(note);
        output.WriteLine();
        output.WriteLine($"Each weight at {units.Depth(reply.Conditions.DepthM)} and {units.Pace(reply.Conditions.SpeedMps)}");
        output.WriteLine($"{"",10}{"stays down",12}{"on bottom",12}{"fall",8}{"holds to",12}");
        foreach (SizeRow row in reply.Sizes)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{row.Size.Label,10}{row.HoldsChance * 100,10:0} %{row.Tow.WeightOnBottomShare * 100,10:0} %{(row.FallS < 3599 ? $"{row.FallS:0} s" : "hangs"),8}{(row.FastestMps >= 2.99 ? "any speed" : units.Pace(row.FastestMps)),12}"));
        }

        Section("Cautions", card.Cautions);
        Section("Assumed", reply.Assumed);

        void Section(string title, IReadOnlyList<string> lines)
        {
            if (lines.Count == 0) return;
            output.WriteLine();
            output.WriteLine(title);
            foreach (string line in lines) output.WriteLine($"  {line}");
        }
    }
}
