using SecondShore.Store;

namespace SecondShore.Host.Verbs;

/// <summary>What the host does when started: serves, or one piece of upkeep beside a host that runs.</summary>
internal static class HostVerbs
{
    private static readonly string Usage =
        """
        second-shore-host [serve] [--urls ADDRESS] [--data FOLDER] ...   serves the app and syncs records
        second-shore-host pair [--all | --lake ID [--read-only]]         shows a one-time code for a device
        second-shore-host devices                                        lists devices and what happened with them
        second-shore-host revoke DEVICE                                  ends a device's token at once
        second-shore-host lakes                                          lists lakes with their room
        second-shore-host remove-lake ID                                 removes a lake, its records and files, for good
        second-shore-host backup FILE                                    copies the database while it is used
        second-shore-host restore FILE                                   puts a backup in its place (stop the host first)
        second-shore-host healthy                                        says whether the host that runs is ready
        second-shore-host doctor                                         says in words what is wrong
        Options and settings: docs/how-to/host.md.
        """;

    /// <summary>Runs a verb; 0 done, 2 bad usage, 3 the store or a setting stands in the way.</summary>
    public static async Task<int> RunAsync(string[] args)
    {
        bool named = args.Length > 0 && !args[0].StartsWith('-');
        string verb = named ? args[0] : "serve";
        string[] rest = named ? args[1..] : args;
        try
        {
            switch (verb)
            {
                case "serve": return await ServeVerb.RunAsync(rest).ConfigureAwait(false);
                case "pair": return await DeviceVerbs.PairAsync(rest).ConfigureAwait(false);
                case "devices": return await DeviceVerbs.ListAsync(rest).ConfigureAwait(false);
                case "revoke" when HasName(rest): return await DeviceVerbs.RevokeAsync(rest[0], rest[1..]).ConfigureAwait(false);
                case "lakes": return await LakeVerbs.ListAsync(rest).ConfigureAwait(false);
                case "remove-lake" when HasName(rest): return await LakeVerbs.RemoveAsync(rest[0], rest[1..]).ConfigureAwait(false);
                case "backup" when HasName(rest): return BackupVerbs.BackUp(rest[0], Settings(rest[1..]));
                case "restore" when HasName(rest): return BackupVerbs.Restore(rest[0], Settings(rest[1..]));
                case "healthy": return await HealthVerb.RunAsync(Settings(rest)).ConfigureAwait(false);
                case "doctor": return await DoctorVerb.RunAsync(Settings(rest), Console.Out).ConfigureAwait(false);
                case "help" or "version" when rest.Length == 0:
                    Console.WriteLine(verb == "help" ? Usage : ProgramVersion.Text);
                    return 0;
                default:
                    if (named) await Console.Error.WriteLineAsync($"'{verb}' with what follows it is not understood.").ConfigureAwait(false);
                    await Console.Error.WriteLineAsync(Usage).ConfigureAwait(false);
                    return 2;
            }
        }
        catch (SettingsException e)
        {
            await Console.Error.WriteLineAsync(e.Message).ConfigureAwait(false);
            return 2;
        }
        catch (Exception e) when (e is StorageException or IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync(e.Message).ConfigureAwait(false);
            return 3;
        }
    }

    /// <summary>Settings from arguments and environment.</summary>
    public static HostSettings Settings(string[] args) =>
        HostSettings.From(new ConfigurationBuilder().AddEnvironmentVariables("ASPNETCORE_").AddInMemoryCollection(HostOptions.Variables(Environment.GetEnvironmentVariables()))
            .AddInMemoryCollection(HostOptions.Parse(args)).Build());

    private static bool HasName(string[] rest) => rest.Length > 0 && !rest[0].StartsWith('-');
}
