namespace SecondShore.Desk.Entries;

/// <summary>A reading or log entry, never changed once kept: an edit is a new record that replaces, or removes, an old one.</summary>
/// <param name="Id">Worked out from the content, the same on every device.</param>
/// <param name="Lake">The lake's id.</param>
/// <param name="Kind">What it is; see <see cref="RecordKinds"/>.</param>
/// <param name="At">When it happened, ISO-8601.</param>
/// <param name="Replaces">Id of the record it replaces, or null.</param>
/// <param name="Removed">Whether it takes the replaced one back without putting another in its place.</param>
/// <param name="Json">The entry, see <see cref="Entry"/>.</param>
public sealed record RecordRow(string Id, string Lake, string Kind, string At, string? Replaces, bool Removed, string Json);

/// <summary>Kinds of record.</summary>
public static class RecordKinds
{
    /// <summary>Depth of the haze on the sounder, m.</summary>
    public static readonly string Haze = "haze";

    /// <summary>Surface temperature, degC.</summary>
    public static readonly string Surface = "surface";

    /// <summary>Temperature at a depth, degC.</summary>
    public static readonly string Temperature = "temperature";

    /// <summary>Secchi depth, m.</summary>
    public static readonly string Secchi = "secchi";

    /// <summary>Oxygen at a depth, mg/L.</summary>
    public static readonly string Oxygen = "oxygen";

    /// <summary>A bite.</summary>
    public static readonly string Bite = "bite";

    /// <summary>A fish.</summary>
    public static readonly string Fish = "fish";

    /// <summary>A snag.</summary>
    public static readonly string Snag = "snag";

    /// <summary>Nothing here.</summary>
    public static readonly string Nothing = "nothing";

    /// <summary>Time spent on a place; comes with a lake's files.</summary>
    public static readonly string Effort = "effort";

    /// <summary>Bait or fish seen on the sounder; comes with a lake's files.</summary>
    public static readonly string Sighting = "sighting";

    /// <summary>A version of a file of the lake; no entry.</summary>
    public static readonly string File = Records.LakeRecord.FileKind;

    /// <summary>Words only.</summary>
    public static readonly string Note = "note";

    /// <summary>Kinds that tell the outlook something.</summary>
    public static IReadOnlyList<string> Readings { get; } = [Haze, Surface, Temperature, Secchi, Oxygen];
}
