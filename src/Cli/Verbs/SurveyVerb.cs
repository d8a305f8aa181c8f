using System.CommandLine;
using System.Globalization;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;
using SecondShore.Open.Asking;
using SecondShore.Open.Outlines;
using SecondShore.Open.Surveys;

namespace SecondShore.Cli.Verbs;

/// <summary><c>survey DIR LINK</c>: depths by an open standard, in the lake's box alone, into its folder with source and licence.</summary>
internal static class SurveyVerb
{
    public static Command Make(Surroundings surroundings)
    {
        Argument<string?> lake =
            new("DIR") { Description = "The lake's folder; left out, the catalogue is listed.", Arity = ArgumentArity.ZeroOrOne };
        Argument<string?> link =
            new("LINK")
            {
                Description = "A link, or the short name of a service in the catalogue; left out, the catalogue is listed.",
                Arity = ArgumentArity.ZeroOrOne
            };
        Option<int?> layer = new("--layer") { Description = "Which of several layers, by its number in the list." };
        Option<string?> catalogue = new("--catalogue") { Description = "Another list of services in the form of docs/catalogue.json." };
        Command command =
            new("survey", "Fetches depths for a lake from a service that speaks an open standard, or from a link to a file.") { lake, link,
            layer, catalogue };
        command.SetAction(async (parsed, stop) =>
        {
            IReadOnlyList<CatalogueEntry> entries = Entries(parsed.GetValue(catalogue));
            if (parsed.GetValue(link) is not { } asked)
            {
                foreach (CatalogueEntry e in entries) surroundings.Out.WriteLine(
                    $"{e.Id,-24} {e.Agency}, {e.Region}: {e.Address} ({e.Licence}; not tried from here)");
                return ExitCodes.Done;
            }

            string path = parsed.GetValue(lake)!;
            if (!Directory.Exists(path)) throw new BadInputException($"{path} is no lake folder; 'secondshore lake' makes one.");
            Uri address = entries.FirstOrDefault(e => string.Equals(e.Id, asked, StringComparison.OrdinalIgnoreCase))?.Address
                ?? OpenHttp.Address(asked, "LINK")!;
            LakeFolder folder = LakeFolderReader.ReadPath(path, surroundings.Settings, null, stop);
            if (!folder.HasSite) throw new BadInputException(
                $"{path}: no file gives a position for the lake; put latitude_deg and longitude_deg into lake.json.");
            (ILakeFiles files, SurveyImport import) = await FetchAsync(folder, address, parsed.GetValue(layer), surroundings, stop)
                .ConfigureAwait(false);
            FilesWriter.WriteFolder(
                new MemoryFiles("survey", ((ChangedFiles)files).ChangedNames.Select(n => KeyValuePair.Create(n, files.Read(n)))), path,
                cancellation: stop);
            Say(path, import, surroundings);
            return ExitCodes.Done;
        });
        return command;
    }

    private static IReadOnlyList<CatalogueEntry> Entries(string? path)
    {
        if (path is null) return ServiceCatalogue.Own();
        return File.Exists(path) ? ServiceCatalogue.Read(File.ReadAllBytes(path), path)
            : throw new BadInputException($"{path}: there is no such file; write one like docs/catalogue.json.");
    }

    private static async Task<(ILakeFiles Files, SurveyImport Import)> FetchAsync(LakeFolder folder, Uri address, int? number,
        Surroundings surroundings, CancellationToken stop)
    {
        using HttpClient http = OpenHttp.Client();
        using PoliteClient client =
            new(http, new FolderAnswerCache(OpenHttp.CacheFolder("open")), surroundings.Clock,
            told => surroundings.Err.WriteLine(told.Say(UnitSystem.Metric)));
        SurveySearch search = new(client, surroundings.Clock);
        IReadOnlyList<SurveyLayer> layers = await search.LayersAsync(address, stop).ConfigureAwait(false);
        SurveyLayer layer = layers.Count == 1 && number is null or 1 ? layers[0]
            : layers[NumberedChoice.Of("The service has several layers", [.. layers.Select(l => l.Title)], number, "--layer",
                surroundings)];
        GeoBox box = SurveyFolder.BoxOf(folder);
        FetchedSurvey survey = await search.FetchAsync(layer, box, stop).ConfigureAwait(false);
        foreach (string note in survey.Notes.Say(UnitSystem.Metric)) surroundings.Err.WriteLine(note);
        surroundings.Err.WriteLine(layer.Licence.Length > 0 ? $"{layer.Title}: {layer.Licence}"
            : $"{layer.Title}: the service tells no licence; look it up before you pass the survey on.");
        return SurveyFolder.With(folder, survey, surroundings.Clock.GetUtcNow());
    }

    private static void Say(string path, SurveyImport import, Surroundings surroundings)
    {
        foreach (Problem problem in import.Problems.Where(p => p.Severity == ProblemSeverity.Warning)
            .Take(8)) surroundings.Err.WriteLine(problem.Say(UnitSystem.Metric));
        if (import.Understanding is { } found)
        {
            string kind = found.Kind.ToString().ToLowerInvariant(), deep = UnitSystem.Metric.DepthRange(found.MinDepthM, found.MaxDepthM);
            surroundings.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{found.File}: {kind}, {found.Count} of them, {deep} deep"));
        }

        surroundings.Out.WriteLine(import.Question is null ? $"Kept in {path}. Next: secondshore check {path}"
            : $"Kept in {path}, with a question open: secondshore check {path}");
    }
}
