namespace SecondShore.Answers.Questions;

/// <summary>One progress out of stages that follow each other, each with its share of the whole.</summary>
internal sealed class StagedProgress(IProgress<double>? whole, params double[] shares)
{
    private int _stage;

    /// <summary>The progress of the next stage.</summary>
    public IProgress<double> Next()
    {
        double from = shares.Take(_stage).Sum(), share = shares[_stage++];
        return new Stage(whole, from, share);
    }

    private sealed class Stage(IProgress<double>? whole, double from, double share) : IProgress<double>
    {
        public void Report(double value) => whole?.Report(from + (share * Math.Clamp(value, 0, 1)));
    }
}
