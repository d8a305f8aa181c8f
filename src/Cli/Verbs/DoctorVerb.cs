using System.CommandLine;
using System.Globalization;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.Cli.Verbs;

/// <summary><c>doctor LAKE</c>: what is wrong with a lake's files or with what the program stands on, in words, worst first.</summary>
internal static class DoctorVerb
{
    private static readonly TimeSpan OldForecast = TimeSpan.FromDays(2);
    private static readonly int WantedYears = 10;

    public static Command Make(Surroundings surroundings)
    {
        Argument<string> lake = SharedOptions.Lake();
        Option<string?> host = new("--host") { Description = "Address of a host to look at as well, such as http://127.0.0.1:5080." };
        Command command = new("doctor", "Says in words what is wrong with a lake's files, this program or a host, and what to do.") { lake, host };
        command.SetAction(async (parsed, stop) =>
        {
            List<string> wrong = [];
            string path = parsed.GetRequiredValue(lake);
            wrong.AddRange(Lake(LakeFolderReader.ReadPath(path, null, stop), surroundings.Clock.GetUtcNow()));
            wrong.AddRange(Disk(path));
            if (parsed.GetValue(host) is { } address) wrong.AddRange(await HostAsync(address, stop).ConfigureAwait(false));
            foreach (string line in wrong) surroundings.Out.WriteLine(line);
            surroundings.Out.WriteLine(wrong.Count == 0 ? "Nothing is wrong." : string.Create(CultureInfo.InvariantCulture, $"{wrong.Count} to look at."));
            return wrong.Count == 0 ? ExitCodes.Done : ExitCodes.BadInput;
        });
        return command;
    }

    private static IEnumerable<string> Lake(LakeFolder folder, DateTimeOffset now)
    {
        foreach (Problem problem in folder.Problems.Where(p => p.Severity != ProblemSeverity.Note).OrderByDescending(p => p.Severity == ProblemSeverity.Error)) yield return problem.Say(UnitSystem.Metric);
        if (!folder.HasSite) yield return "No file gives a position for the lake: put latitude_deg and longitude_deg into lake.json.";
        if (folder.Weather is null) yield return "There is no weather.csv: the outlook stands on a guessed climate. 'secondshore weather' fetches it.";
        else if (folder.Weather.TimesUtc[^1] < now - OldForecast) yield return string.Create(CultureInfo.InvariantCulture, $"weather.csv ends on {folder.Weather.TimesUtc[^1]:yyyy-MM-dd}: what comes after it is guessed. 'secondshore weather' brings it up to date.");
        if (folder.Climate.Count < WantedYears) yield return string.Create(CultureInfo.InvariantCulture, $"There are {folder.Climate.Count} past years in climate/, where {WantedYears} or more make the spread trustworthy. 'secondshore weather' fetches them.");
        if (folder.Survey is null && folder.Hypsography is null) yield return "There is neither a survey nor hypsography.csv: the shape of the basin is guessed.";
    }

    private static IEnumerable<string> Disk(string path)
    {
        if (!Directory.Exists(path)) yield break;
        string? fault = null;
        string probe = Path.Combine(path, ".second-shore-probe");
        try
        {
            File.WriteAllBytes(probe, [0]);
            File.Delete(probe);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            fault = $"{path} cannot be written: {e.Message} Readings and weather could not be kept there.";
        }

        if (fault is not null) yield return fault;
    }

    private static async Task<IReadOnlyList<string>> HostAsync(string address, CancellationToken stop)
    {
        if (!Uri.TryCreate(address, UriKind.Absolute, out Uri? host)) throw new BadUsageException($"--host {address} is no address; write it like http://127.0.0.1:5080.");
        using HttpClient http = new() { BaseAddress = host, Timeout = TimeSpan.FromSeconds(10) };
        try
        {
            using HttpResponseMessage answer = await http.GetAsync("/health/ready", stop).ConfigureAwait(false);
            string says = await answer.Content.ReadAsStringAsync(stop).ConfigureAwait(false);
            return says == "Healthy" ? [] : [$"The host at {address} says '{FileNames.Leaf(says)}' of its store; run its own 'doctor' there."];
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException && !stop.IsCancellationRequested)
        {
            return [$"The host at {address} does not answer: {e.Message} Start it, or look at the address."];
        }
    }
}
