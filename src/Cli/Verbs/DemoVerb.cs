using System.CommandLine;
using SecondShore.Cli.Console;
using SecondShore.Demo.Ketterfold;
using SecondShore.Formats.Files;

namespace SecondShore.Cli.Verbs;

/// <summary><c>demo DIR</c>: writes the demo lake folder, and with <c>--plan</c> plans a day on it.</summary>
internal static class DemoVerb
{
    public static Command Make(Surroundings surroundings)
    {
        Argument<string> folder = new("DIR") { Description = "Folder to write; it is made, and must not hold a lake already." };
        Option<bool> plan = new("--plan") { Description = "Then plan a day there: the whole main job in one command. A demo lake that is there already is used." };
        Option<ulong> seed = new("--seed") { Description = "Seed of what chance decides.", DefaultValueFactory = _ => KetterfoldDemo.UsualSeed };
        Command command = new("demo", "Writes the demo lake, Ketterfold Reservoir, invented from its bottom to its weather.") { folder, plan, seed };
        command.SetAction((parsed, stop) =>
        {
            string path = parsed.GetRequiredValue(folder);
            bool there = File.Exists(Path.Combine(path, "lake.json"));
            if (there && !parsed.GetValue(plan))
                throw new BadUsageException($"{path} holds a lake already; name an empty folder or remove it first.");
            if (!there) Write(path, parsed.GetValue(seed), surroundings, stop);
            if (parsed.GetValue(plan)) DayVerb.PlanUsual(path, surroundings, stop);
            else surroundings.Out.WriteLine($"Wrote the invented lake to {path}. Next: secondshore day {path}");
            return Task.FromResult(ExitCodes.Done);
        });
        return command;
    }

    private static void Write(string path, ulong seed, Surroundings surroundings, CancellationToken stop)
    {
        using ProgressLine progress = new(surroundings, "Making the demo lake");
        FilesWriter.WriteFolder(new MemoryFiles("ketterfold", KetterfoldDemo.Build(seed, progress, stop).Files), path, cancellation: stop);
    }
}
