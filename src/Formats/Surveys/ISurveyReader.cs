namespace SecondShore.Formats.Surveys;

/// <summary>Reads one format of survey file. What it reads is still in the file's own numbers; <see cref="SurveyImporter"/> makes depths of it.</summary>
internal interface ISurveyReader
{
    /// <summary>The format in words.</summary>
    string Format { get; }

    /// <summary>How sure it is, 0 to 1, that the file is of its format, from its name and first bytes.</summary>
    double Sniff(SurveySource source);

    /// <summary>Reads the file; null, with an error in the log, when it cannot. Never throws for what the file holds.</summary>
    RawSurvey? Read(SurveySource source, SurveyOptions options, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation);
}
