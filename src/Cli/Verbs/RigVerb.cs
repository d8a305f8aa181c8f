using System.CommandLine;
using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Rig;
using SecondShore.Answers.Words;
using SecondShore.Cli.Console;
using SecondShore.Formats.Lake;

namespace SecondShore.Cli.Verbs;

/// <summary><c>rig [LAKE] --depth D --speed S</c>: weight to keep the bottom, line out, fall, line shape, table.</summary>
internal static class RigVerb
{
    public static Command Make(Surroundings surroundings)
    {
        RigOptions o = new();
        Command command = new("rig", "What do I tie on, how much line out, how fast may I drag and stay on the bottom, how long is the fall?");
        o.AddTo(command);
        command.SetAction((parsed, stop) =>
        {
            string? lake = parsed.GetValue(o.LakePath);
            LakeFolder? folder = lake is null ? null : LakeInput.Read(lake, surroundings, stop);
            UnitSystem units = UnitsOf(parsed.GetValue(o.Units), folder);
            List<string> assumed = [];
            RigRequest request = o.Request(parsed, units, TackleMapper.Map(folder?.Tackle, assumed));
            RigReply reply = Work(request);
            reply = reply with { Assumed = [.. assumed, .. reply.Assumed] };
            if (parsed.GetValue(o.Json)) surroundings.Out.WriteLine(JsonSerializer.Serialize(RigDocuments.Of(reply), AnswersJson.Default.RigDocument));
            else Print(reply, surroundings.Out);
            return Task.FromResult(ExitCodes.Done);
        });
        return command;
    }

    private static RigReply Work(RigRequest request)
    {
        try
        {
            return RigAnswer.Of(request);
        }
        catch (ArgumentOutOfRangeException e)
        {
            // The engine's sentence, without the parameter's name that the exception adds.
            throw new BadUsageException(e.Message.Split(" (Parameter", 2)[0]);
        }
    }

    private static UnitSystem UnitsOf(string? text, LakeFolder? folder) => text switch
    {
        null => folder is { DisplayUnits: not DisplayUnits.UsCustomary } ? UnitSystem.Metric : UnitSystem.Feet,
        "feet" or "ft" => UnitSystem.Feet,
        "metric" or "m" => UnitSystem.Metric,
        _ => throw new BadUsageException($"--units {text} is not known; use feet or metric."),
    };

    private static void Print(RigReply reply, TextWriter output)
    {
        foreach (string sentence in RigWords.Of(reply)) output.WriteLine(sentence);
        output.WriteLine();
        foreach (string line in LineChart.Draw(reply.Shape, reply.Conditions.DepthM, reply.Request.Units)) output.WriteLine(line);
        output.WriteLine();
        RigCard card = RigCard.Of(reply);
        output.WriteLine(card.Title);
        output.WriteLine($"{"",8}{string.Concat(card.SpeedHeads.Select(h => $"{h,10}"))}");
        foreach (RigCard.Row row in card.Rows) output.WriteLine($"{row.DepthHead,8}{string.Concat(row.Cells.Select(c => $"{c,10}"))}");
        foreach (string note in card.Notes) output.WriteLine(note);
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
