using SecondShore.Engine.Core;

namespace SecondShore.Engine.Season;

/// <summary>Makes a season's outlook: weather past and to come, draws of what is not known, held against every reading.</summary>
public static class OutlookModel
{
    /// <summary>Computes the outlook.</summary>
    /// <param name="request">What is known. Missing things are replaced and said in <see cref="Outlook.Assumed"/>.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work between members.</param>
    /// <returns>Distributions now and by day for the lake and each arm; the same request and seed give the same answer.</returns>
    /// <exception cref="ArgumentException">There is no arm, the members are out of range, or the weather steps otherwise than by the hour.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static Outlook Compute(OutlookRequest request, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        (SeasonModel model, Particles particles, MemberTrace[] traces) = Run(request, progress, cancel);
        return OutlookAssembly.Assemble(request, model, particles.Weight, traces);
    }

    /// <summary>Computes the members themselves: what <see cref="Compute"/> sums up.</summary>
    /// <inheritdoc cref="Compute"/>
    public static SeasonMembers ComputeMembers(OutlookRequest request, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        (SeasonModel model, Particles particles, MemberTrace[] traces) = Run(request, progress, cancel);
        return new SeasonMembers(model, particles.Weight, traces);
    }

    /// <summary>Where the season of an instant begins: readings of before it belong to an earlier one.</summary>
    /// <param name="at">The instant.</param>
    /// <param name="latDeg">Latitude, degrees.</param>
    public static DateTimeOffset SeasonStart(DateTimeOffset at, double latDeg) => SeasonTimeline.SeasonStart(at, latDeg);

    private static (SeasonModel Model, Particles Particles, MemberTrace[] Traces) Run(OutlookRequest request, IProgress<double>? progress, CancellationToken cancel)
    {
        Require.NotNull(request);
        if (request.Arms.Count == 0) throw new ArgumentException("An outlook needs at least one arm with its areas by depth.", nameof(request));
        int members = Require.InRange(request.Members, 5, 5000, nameof(request.Members));
        SeasonModel model = SeasonModel.Build(request);
        double filterShare = model.Observations.All.Count > 0 ? 0.6 : 0.0;
        Particles particles = ReadingsFilter.Run(model, members, request.Seed, progress, filterShare, cancel);
        MemberTrace[] traces = new MemberTrace[members];
        MemberLoop.Run(members, i => traces[i] = model.Run(particles.Z[i], particles.StartK[i], model.ScenarioOf(i), model.Timeline.Hours, keep: true),
            progress, filterShare, 1.0, cancel);
        progress?.Report(1.0);
        return (model, particles, traces);
    }
}
