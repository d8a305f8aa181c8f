namespace SecondShore.Answers.Questions;

/// <summary>How much work an outlook may do.</summary>
/// <param name="Members">Members of the ensemble, 20 to 5000: more is smoother and slower.</param>
/// <param name="Seed">Seed of all chance: the same seed gives the same answer.</param>
public sealed record EnsembleOptions(int Members = EnsembleOptions.UsualMembers, ulong Seed = 1)
{
    /// <summary>Enough for steady percentiles, few enough for a phone: one number everywhere, so that one lake has one answer.</summary>
    public const int UsualMembers = 30;
}
