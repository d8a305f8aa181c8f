using SecondShore.Answers.Lake;
using SecondShore.Answers.Scoring;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Questions;

/// <summary>Fits a lake's numbers to the casts of its past seasons.</summary>
public static class LakeFitAnswer
{
    /// <summary>Fits, and gives the numbers as lake.json keeps them.</summary>
    /// <param name="folder">A lake with weather and profiles of one season or more.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work between seasons.</param>
    /// <exception cref="CouldNotComputeException">Weather or casts are missing; the message says what to add.</exception>
    public static FittedLake Compute(LakeFolder folder, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ScoredLake lake = ScoredLakeReader.From(folder);
        List<SeasonCase> cases = SeasonCase.Of(lake);
        if (cases.Count == 0)
        {
            throw new CouldNotComputeException($"{lake.Name} has no season to fit to: profiles.csv needs a cast of three depths or more between March and July, later casts of the same year, and weather.csv must cover them.");
        }

        return FittedNumbers.From(SeasonFit.Of(lake, cases, progress, cancel));
    }
}
