using SecondShore.Engine.Basin.Terrain;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>Finds the forms of a lake's bottom. Method and figures: docs/science/bottom-forms.md.</summary>
public static class BottomForms
{
    /// <summary>Finds every form of a depth grid, at full pool or any other level.</summary>
    /// <param name="grid">Depths.</param>
    /// <param name="options">What counts; null takes <see cref="FormOptions.Default"/>.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static FormMap Find(DepthGrid grid, FormOptions? options = null, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        Require.NotNull(grid);
        Bed bed = new(grid, options ?? FormOptions.Default);
        FormCollector collector = new(bed);
        Step(0.1);
        (List<FoundChannel> channels, FlowD8? flow) = ChannelFinder.Find(bed);
        collector.Channels(channels);
        Step(0.35);
        collector.Rises(RiseFinder.Find(bed, false, Math.Max(0.2, bed.Options.HumpShare * bed.DeepM)),
            RiseFinder.Find(bed, true, Math.Max(0.2, bed.Options.HoleShare * bed.DeepM)));
        Step(0.5);
        collector.Points(CrestFinder.Find(bed), new ArmDrainage(bed, channels, flow));
        Step(0.7);
        collector.Bluffs(EdgeFinder.Bluffs(bed, collector.Corridor));
        collector.Ledges(EdgeFinder.Ledges(bed, collector.NoLedge()));
        Step(0.85);
        FormMap map = collector.Finish();
        progress?.Report(1);
        return map;

        void Step(double share)
        {
            cancel.ThrowIfCancellationRequested();
            progress?.Report(share);
        }
    }
}
