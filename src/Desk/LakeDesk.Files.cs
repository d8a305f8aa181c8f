using SecondShore.Answers;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.Formats;
using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;

namespace SecondShore.Desk;

/// <summary>Lake folders made, looked at, taken in and handed out.</summary>
public sealed partial class LakeDesk
{
    private const string TripName = "trip.zip";

    // The app's own trip file is sound: it is unpacked without being read twice.
    internal Unpacked Unpack(UnpackTrip _)
    {
        ProblemLog log = new();
        (string name, byte[] bytes) = OneBeside();
        MemoryFiles set = TripFile.Read(name, bytes, log) ?? throw Refused(log);
        Hand(set);
        return new Unpacked(LakeKey(set, "name") ?? "");
    }

    // What was dropped: a trip file, a whole folder, or a survey alone.
    internal InspectView Inspect(InspectFiles question)
    {
        ProblemLog log = new();
        ILakeFiles? set = FilesOf(_beside, question.Facts, log);
        if (set is null) return new InspectView { Problems = [.. log.ToList().Select(p => p.Say(_units))] };
        LakeFolder folder = LakeFolderReader.Read(set);
        return View(folder, log, _units) with
        {
            Questions = [.. folder.SurveyQuestions.Select(q => SurveyPictures.Of(set, folder, q, _units))],
            Tables = SurveyPictures.TablesOf(set, folder),
        };
    }

    internal InspectView Adopt(AdoptFiles question)
    {
        ProblemLog log = new();
        ILakeFiles set = NewLake.WithFacts(FilesOf(_beside, question.Facts, log) ?? throw Refused(log), question.Facts);
        LakeFolder folder = LakeFolderReader.Read(set);
        InspectView view = View(folder, log, _units);
        if (!folder.HasSite || folder.SurveyQuestions.Count > 0) return view;
        Hand(set);
        return view with { Taken = true };
    }

    internal TackleView ChangeTackle(ChangeJig jig) => Changed(files => TackleEdits.WithJig(files, jig.Was, jig.Name, jig.WeightG, jig.Colour));

    internal TackleView ChangeTackle(ChangeTrailer trailer) => Changed(files => TackleEdits.WithTrailer(files, trailer.Was, trailer.Name, trailer.Colour));

    internal TackleView ChangeTackle(TimeDrop drop) => Changed(files => TackleEdits.WithDrop(files, drop.Jig, drop.DepthM, drop.Seconds, "", drop.At));

    // The box is a file of the lake: it goes where the lake goes, and the command line reads it.
    private TackleView Changed(Func<ILakeFiles, ILakeFiles> change)
    {
        ILakeFiles files = change(_graph.Filed().Files);
        _graph.Lay(files);
        Hand(files, [files.Find("tackle.json")!]);
        return TackleView.Of(_graph.Filed().Tackle);
    }

    internal HandedOut Export(ExportTrip question)
    {
        _tray.Put(ITray.FilePrefix + TripName, TripFile.ToBytes(OwnRecords.IntoFiles(_graph.Filed().Files, question.Records)));
        return new HandedOut([TripName]);
    }

    private (string Name, byte[] Bytes) OneBeside() =>
        _beside.Count > 0 ? (_beside.First().Key, _beside.First().Value) : throw new CouldNotComputeException(DeskFindings.NoFile.Of());


    private static CouldNotComputeException Refused(ProblemLog log) =>
        new(log.ToList()[0] is { } first ? DeskFindings.FileRefused.Of(first.File, first.What) : DeskFindings.NoFile.Of());

    private static ILakeFiles? FilesOf(IReadOnlyDictionary<string, byte[]> files, NewLakeFacts? facts, ProblemLog log)
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
        return facts is null ? set : NewLake.WithFacts(set, facts);
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
