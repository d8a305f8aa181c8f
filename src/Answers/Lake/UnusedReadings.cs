using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Lake;

/// <summary>Why a reading plays no part in an outlook.</summary>
public enum UnusedBecause
{
    /// <summary>It is of an earlier season.</summary>
    EarlierSeason,

    /// <summary>It is dated after the instant that the outlook stands for.</summary>
    AfterTheInstant,
}

/// <summary>A reading that plays no part in an outlook, and why.</summary>
/// <param name="At">When it was made, by its own date.</param>
/// <param name="Kind">What was read; null for a cast.</param>
/// <param name="Value">The value, in the unit of its kind; null for a cast.</param>
/// <param name="Source">File and line, or the entry's id.</param>
/// <param name="Why">Why it is not used.</param>
public sealed record UnusedReading(DateTimeOffset At, ReadingKind? Kind, double? Value, string Source, UnusedBecause Why);

/// <summary>The readings that an outlook leaves aside by their date, so that none of them is left aside in silence.</summary>
public static class UnusedReadings
{
    private static readonly int MostNamed = 3;

    /// <summary>Readings and casts that an outlook for an instant leaves aside, in order of time.</summary>
    /// <param name="folder">The lake.</param>
    /// <param name="at">The outlook's instant.</param>
    public static IReadOnlyList<UnusedReading> Of(LakeFolder folder, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(folder);
        // Casts and Secchi depths of earlier seasons still tell how the lake is; a single haze or temperature of then does not.
        DateTimeOffset start = folder.SiteOrNull is { } site ? OutlookModel.SeasonStart(at, site.Position.LatDeg) : DateTimeOffset.MinValue;
        return
        [
            .. folder.Readings.Where(r => r.At > at || (r.At < start && r.Kind != ReadingKind.Secchi)).Concat(folder.Secchi.Where(r => r.At > at))
                .Select(r => new UnusedReading(r.At, r.Kind, r.Value, r.Source, r.At > at ? UnusedBecause.AfterTheInstant : UnusedBecause.EarlierSeason))
                .Concat(folder.Profiles.Where(p => p.At > at).Select(p => new UnusedReading(p.At, null, null, p.Source, UnusedBecause.AfterTheInstant)))
                .OrderBy(u => u.At).ThenBy(u => u.Source, StringComparer.Ordinal),
        ];
    }

    /// <summary>The readings left aside: one finding for each reason, with the first of them named.</summary>
    /// <param name="unused">What is left aside.</param>
    /// <param name="at">The outlook's instant; its offset is the clock that times are told by.</param>
    public static IEnumerable<Finding> Said(IReadOnlyList<UnusedReading> unused, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(unused);
        foreach (IGrouping<UnusedBecause, UnusedReading> group in unused.GroupBy(u => u.Why).OrderBy(g => g.Key))
        {
            UnusedReading[] all = [.. group];
            Told named = Told.List(all.Take(MostNamed).Select(u => (Told)AnswerFindings.ReadingOf.Of(Told.Source(u.Source), u.At.ToOffset(at.Offset))));
            Told which = all.Length > MostNamed ? AnswerFindings.AndMore.Of(named, all.Length - MostNamed) : named;
            yield return (group.Key, all.Length) switch
            {
                (UnusedBecause.AfterTheInstant, 1) => AnswerFindings.ReadingAfter.Of(which, at),
                (UnusedBecause.AfterTheInstant, _) => AnswerFindings.ReadingsAfter.Of(all.Length, which, at),
                (_, 1) => AnswerFindings.ReadingEarlier.Of(which),
                _ => AnswerFindings.ReadingsEarlier.Of(all.Length, which),
            };
        }
    }
}
