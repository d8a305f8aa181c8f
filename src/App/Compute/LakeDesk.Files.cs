using SecondShore.Answers;
using SecondShore.Answers.Lake;
using SecondShore.App.Compute.Views;
using SecondShore.Formats;
using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;

namespace SecondShore.App.Compute;

/// <summary>Lake folders made, looked at, taken in and handed out.</summary>
internal sealed partial class LakeDesk
{
    private void Hand(ILakeFiles files) => Hand(files, files.Entries.Select(file => file.Name));

    private void Hand(ILakeFiles files, IEnumerable<string> names)
    {
        foreach (string name in names) tray.Put("file:" + name, files.Read(name));
    }

    // The app's own trip file is sound: it is unpacked without being read twice.
    private string Unpack(IReadOnlyDictionary<string, byte[]> files)
    {
        ProblemLog log = new();
        (string name, byte[] bytes) = files.First();
        MemoryFiles set = TripFile.Read(name, bytes, log) ?? throw Refused(log);
        Hand(set);
        return "{\"name\":\"Ketterfold Reservoir\"}";
    }

    // What was dropped: a trip file, a whole folder, or a survey alone.
    private static InspectView Inspect(IReadOnlyDictionary<string, byte[]> files, AskAbout about)
    {
        ProblemLog log = new();
        ILakeFiles? set = FilesOf(files, about, log);
        if (set is null) return new InspectView { Problems = [.. log.ToList().Select(p => p.Say(about.Units))] };
        LakeFolder folder = LakeFolderReader.Read(set);
        return View(folder, log, about.Units) with { Questions = [.. folder.SurveyQuestions.Select(q => SurveyPictures.Of(set, folder, q, about.Units))], Tables = SurveyPictures.TablesOf(set, folder) };
    }

    private InspectView Adopt(IReadOnlyDictionary<string, byte[]> files, AskAbout about)
    {
        ProblemLog log = new();
        ILakeFiles set = FilesOf(files, about, log) ?? throw Refused(log);
        if (about.NewLake is { } facts) set = NewLake.WithFacts(set, facts);
        LakeFolder folder = LakeFolderReader.Read(set);
        InspectView view = View(folder, log, about.Units);
        if (!folder.HasSite || folder.SurveyQuestions.Count > 0) return view;
        Hand(set);
        return view with { Taken = true };
    }

    // The box is a file of the lake: it goes where the lake goes, and the command line reads it.
    private TackleView ChangeTackle(AskAbout about)
    {
        TackleAsk ask = about.Tackle ?? throw new CouldNotComputeException(DeskFindings.NothingToKeep.Of());
        (LakeFolder filed, PreparedLake bottom, PreparedLake lake) = (_filed ?? throw new CouldNotComputeException(DeskFindings.NoLakeOpen.Of()), _bottom!, Opened());
        ILakeFiles files = ask.Drop is { } drop ? TackleEdits.WithDrop(filed.Files, ask.Name, drop.DepthM, drop.Seconds, "", drop.At)
            : ask.IsTrailer
            ? TackleEdits.WithTrailer(filed.Files, ask.Was, ask.Name, ask.Colour)
            : TackleEdits.WithJig(filed.Files, ask.Was, ask.Name, ask.WeightG, ask.Colour);
        TackleDocument? tackle = TackleEdits.Read(files);
        _filed = filed with { Files = files, Tackle = tackle };
        _bottom = bottom.With(bottom.Folder with { Files = files, Tackle = tackle });
        _lake = lake.With(lake.Folder with { Files = files, Tackle = tackle });
        Hand(files, [files.Find("tackle.json")!]);
        return TackleView.Of(tackle);
    }

    private string Export(AskAbout about)
    {
        LakeFolder folder = _filed ?? throw new CouldNotComputeException(DeskFindings.NoLakeOpen.Of());
        tray.Put("file:trip.zip", TripFile.ToBytes(OwnRecords.IntoFiles(folder.Files, about.Records ?? [])));
        return "{}";
    }

    private static CouldNotComputeException Refused(ProblemLog log) =>
        new(log.ToList()[0] is { } first ? DeskFindings.FileRefused.Of(first.File, first.What) : DeskFindings.NoFile.Of());

    private static ILakeFiles? FilesOf(IReadOnlyDictionary<string, byte[]> files, AskAbout about, ProblemLog log)
    {
        if (files.Count == 0)
        {
            log.Error("lake", DeskFindings.NoFile.Of());
            return null;
        }

        if (files.Count == 1 && files.First() is var only && TripFile.LooksLikeOne(only.Value)
            && !only.Key.EndsWith(".shp.zip", StringComparison.OrdinalIgnoreCase))
        {
            return TripFile.Read(only.Key, only.Value, log);
        }

        MemoryFiles set = new("lake", NewLake.Named(files));
        return about.NewLake is { } facts ? NewLake.WithFacts(set, facts) : set;
    }

    private static InspectView View(LakeFolder folder, ProblemLog log, UnitSystem units) => new()
    {
        Name = folder.Document.Name is { Length: > 0 } named ? named : Suggested(folder),
        HasSite = folder.HasSite,
        LatDeg = folder.SiteOrNull?.Position.LatDeg,
        LonDeg = folder.SiteOrNull?.Position.LonDeg,
        HasWeather = folder.Weather is { Count: > 0 },
        Surveys = [.. folder.SurveyFiles.Select(s => Survey(s, units))],
        Problems = [.. log.ToList().Concat(folder.Problems).Where(p => p.Severity != ProblemSeverity.Note && !folder.SurveyQuestions.Any(q => q.File == p.File && p.Severity == ProblemSeverity.Error)).Select(p => p.Say(units)).Take(12)],
    };

    private static SurveyView Survey(SurveyUnderstanding s, UnitSystem units) => new(s.File, units.Speech.Plain(s.Format), s.Kind.ToString(), s.Count, s.Unit.ToString(), s.UnitKnown == Knowledge.Stated,
        s.Sense.ToString(), s.SenseKnown == Knowledge.Stated, CrsOf(s.Crs, units), Finite(s.MinDepthM), Finite(s.MaxDepthM),
        s.Crs.Length == 0 || (double.IsFinite(s.HighestFiled) && !double.IsFinite(s.MaxDepthM)), s.Doubts.Say(units));

    // Names of systems are proper names; plain degrees are said in the reader's language.
    private static string CrsOf(string crs, UnitSystem units)
    {
        string degrees = CoordinateSystem.PlainDegrees;
        return crs.StartsWith(degrees, StringComparison.Ordinal) ? units.Speech.Plain(degrees) + crs[degrees.Length..] : crs;
    }

    // Until the user names it, a lake is called like its survey's file.
    private static string Suggested(LakeFolder folder)
    {
        if (folder.SurveyFiles.Count == 0) return folder.SiteOrNull?.Name ?? "";
        string stem = Path.GetFileName(folder.SurveyFiles[0].File);
        int dot = stem.IndexOf('.', StringComparison.Ordinal);
        stem = (dot > 0 ? stem[..dot] : stem).Replace('_', ' ').Replace('-', ' ').Trim();
        return stem.Length > 0 ? char.ToUpperInvariant(stem[0]) + stem[1..] : "";
    }

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
