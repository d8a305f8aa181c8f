using System.CommandLine;
using System.CommandLine.Parsing;
using SecondShore.Cli.Verbs;

namespace SecondShore.Cli;

/// <summary>The command line: verbs, their shared failures and exit codes.</summary>
internal static class CommandLine
{
    /// <summary>Runs one command and returns its exit code; never throws for bad usage, bad input or a stop.</summary>
    public static async Task<int> RunAsync(string[] args, Surroundings surroundings, CancellationToken stop)
    {
        RootCommand root = Build(surroundings);
        Option<string[]> set = new("--set")
        {
            Description = "A key of lake.json said here, such as survey.depth_column=Depth or survey.crs=EPSG:32632; may be given again.",
            Recursive = true,
        };
        root.Options.Add(set);
        ParseResult parsed = root.Parse(args);
        if (parsed.Errors.Count > 0 || args.Length == 0)
        {
            if (args.Length == 0) root.Parse("--help").Invoke(new InvocationConfiguration { Output = surroundings.Err, Error = surroundings.Err });
            foreach (ParseError error in parsed.Errors) surroundings.Err.WriteLine(error.Message);
            if (args.Length > 0) surroundings.Err.WriteLine($"'secondshore {parsed.CommandResult.Command.Name} --help' shows how.");
            return ExitCodes.BadUsage;
        }

        surroundings.Settings.AddRange(parsed.GetValue(set) ?? []);
        InvocationConfiguration configuration = new()
        {
            Output = surroundings.Out,
            Error = surroundings.Err,
            EnableDefaultExceptionHandler = false,
        };
        try
        {
            return await parsed.InvokeAsync(configuration, stop).ConfigureAwait(false);
        }
        catch (BadUsageException e)
        {
            surroundings.Err.WriteLine(e.Message);
            return ExitCodes.BadUsage;
        }
        catch (BadInputException e)
        {
            surroundings.Err.WriteLine(e.Message);
            return ExitCodes.BadInput;
        }
        catch (Answers.CouldNotComputeException e)
        {
            surroundings.Err.WriteLine(e.Message);
            return ExitCodes.CouldNotCompute;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            surroundings.Err.WriteLine($"{e.Message} Check that the path exists and may be read or written.");
            return ExitCodes.BadInput;
        }
        catch (OperationCanceledException)
        {
            surroundings.Err.WriteLine("Stopped. Nothing was written half.");
            return ExitCodes.Stopped;
        }
    }

    private static RootCommand Build(Surroundings surroundings)
    {
        RootCommand root = new(
            "Second Shore finds where a lake's thermocline meets the bottom, how it will move, and turns it into a day's plan.\n"
            + "Start with:  secondshore demo ketterfold   then   secondshore day ketterfold\n"
            + "LAKE is a folder of plain files, a zipped trip file, or a single survey file.\n"
            + "Exit codes: 0 done, 2 bad usage, 3 bad input (which file, line, why), 4 could not compute (why).");
        foreach (Command verb in VerbList.All(surroundings)) root.Subcommands.Add(verb);
        return root;
    }
}
