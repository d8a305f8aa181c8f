using SecondShore.Answers.Files;
using SecondShore.Answers.Questions;
using SecondShore.Formats.Files;

namespace SecondShore.Sheets;

/// <summary>A planned day as every file it is handed out as: those of <see cref="DayFiles"/> and the printed page.</summary>
public static class DayBundle
{
    /// <summary>The files of <see cref="DayFiles"/> and <c>day.pdf</c>.</summary>
    /// <param name="result">The day.</param>
    /// <param name="units">Units of the words.</param>
    /// <param name="madeAt">When the files are made.</param>
    public static ILakeFiles Of(DayResult result, UnitSystem units, DateTimeOffset madeAt)
    {
        ILakeFiles files = DayFiles.Of(result, units, madeAt);
        return new MemoryFiles(files.Name,
        [
            .. files.Entries.Select(e => new KeyValuePair<string, byte[]>(e.Name, files.Read(e.Name))),
            new("day.pdf", DayPdf.Write(DayFiles.Model(result, units), madeAt)),
        ]);
    }
}
