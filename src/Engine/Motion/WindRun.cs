using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;
using SecondShore.Engine.Motion.Layers;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Motion;

/// <summary>
/// A wind field in the making. <see cref="Compute"/> does it in one go, members side by side; a caller that must not block
/// for long takes <see cref="Step"/> until it returns false, then <see cref="Finish"/>. Not thread-safe.
/// </summary>
public sealed class WindRun
{
    // The longest decay reported is three days: where basins trade water through narrows, the gravest rocking takes as long or longer,
    // and each basin rocks within it at its own pace (science page, decision 0067).
    private static readonly double LongestFadeS = 3 * PhysicalConstants.DayS;
    private readonly WindFieldOptions _options;
    private readonly DepthGrid _grid;
    private readonly MotionGrid _motion;
    private readonly FetchField _fetch;
    private readonly WindHistory _wind;
    private readonly DateTimeOffset[] _hours;
    private readonly MemberRun[] _members;
    private readonly int _middle;

    /// <summary>Prepares a run: fetch, computing grid, members.</summary>
    /// <param name="grid">Depths at the water level of the day.</param>
    /// <param name="layers">The ensemble's layers; empty for a mixed lake, which then has waves and drift only.</param>
    /// <param name="weather">Weather that covers the hours, and better the days before.</param>
    /// <param name="from">First hour.</param>
    /// <param name="hours">Number of hours after it, 0 or more.</param>
    /// <param name="options">Settings; null takes the defaults.</param>
    /// <param name="cancel">Stops the preparation.</param>
    /// <exception cref="ArgumentException">The grid holds no water or the weather no hour.</exception>
    public WindRun(DepthGrid grid, IReadOnlyList<TwoLayers> layers, WeatherSeries weather, DateTimeOffset from, int hours,
        WindFieldOptions? options = null, CancellationToken cancel = default)
    {
        _grid = Require.NotNull(grid);
        _options = (options ?? new WindFieldOptions()).Checked();
        Require.InRange(hours, 0, 24 * 60);
        _wind = new WindHistory(weather);
        _fetch = _options.Fetch ?? FetchField.Of(grid, null, cancel);
        InterfaceOptions at = _options.Interface;
        CoarseDepths depths = CoarseDepths.Of(grid, CoarseDepths.FactorFor(grid, at.CellM, at.MaxCells));
        _motion = new MotionGrid(depths);
        _hours = new DateTimeOffset[hours + 1];
        for (int h = 0; h <= hours; h++) _hours[h] = from.AddHours(h);
        IReadOnlyList<LayerPair[]> courses = LayerMembers.Courses(layers, [.. _options.Ahead.Take(hours)], _options.Members);
        _middle = courses.Count / 2;
        (double dampingPerS, PeriodS) = Damping(depths, courses);
        PlacedWinds? placed = _options.Stations.Count > 0 ? new PlacedWinds(_options.Stations, _motion, _fetch, _wind, at.BankM) : null;
        ShelterByHour shelter = new(_motion, _fetch, _wind, at.BankM);
        DateTimeOffset start = Later(from.AddDays(-_options.SpinUpDays), weather.StartUtc);
        _members = new MemberRun[courses.Count];
        for (int m = 0; m < courses.Count; m++)
        {
            LivingLayers layersOf = new(depths, courses[m], grid.Projection.Origin.LatDeg, at with { DampingPerS = dampingPerS });
            IForcing forcing = placed is null ? new EvenForcing(_wind, shelter, _motion) : new PlacedForcing(placed);
            _members[m] = new MemberRun(layersOf, _motion, forcing, start, _hours, keepsCurrents: m == _middle);
        }
    }

    /// <summary>Period of the gravest rocking of the middle member, s; null without layers.</summary>
    public double? PeriodS { get; }

    /// <summary>Share done, 0 to 1.</summary>
    public double ShareDone
    {
        get
        {
            if (_members.Length == 0) return 1.0;
            double sum = 0;
            foreach (MemberRun member in _members) sum += member.ShareDone;
            return sum / _members.Length;
        }
    }

    /// <summary>Computes one hour of one member.</summary>
    /// <returns>Whether anything is left to compute.</returns>
    public bool Step()
    {
        foreach (MemberRun member in _members)
        {
            if (member.IsDone) continue;
            member.Step();
            return true;
        }

        return false;
    }

    /// <summary>Computes all that is left, members side by side, and gives the field.</summary>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public WindField Compute(IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        int workers = _options.Parallelism ?? (OperatingSystem.IsBrowser() ? 1 : Environment.ProcessorCount);
        if (workers == 1 || _members.Length < 2)
        {
            while (Step())
            {
                cancel.ThrowIfCancellationRequested();
                progress?.Report(ShareDone);
            }
        }
        else
        {
            ParallelOptions parallel = new() { MaxDegreeOfParallelism = workers, CancellationToken = cancel };
            Parallel.ForEach(_members, parallel, member =>
            {
                while (!member.IsDone)
                {
                    cancel.ThrowIfCancellationRequested();
                    member.Step();
                    progress?.Report(ShareDone);
                }
            });
        }

        progress?.Report(1.0);
        return Finish();
    }

    /// <summary>The field, once all is computed.</summary>
    /// <exception cref="InvalidOperationException">Something is left to compute.</exception>
    public WindField Finish()
    {
        MemberMotion[] motions = new MemberMotion[_members.Length];
        for (int m = 0; m < motions.Length; m++)
        {
            if (!_members[m].IsDone) throw new InvalidOperationException("The wind field is not computed to its last hour yet.");
            motions[m] = _members[m].Result;
        }

        return new WindField(_grid, _motion, _fetch, _wind, _hours, motions, _middle, PeriodS, _options);
    }

    private (double DampingPerS, double? PeriodS) Damping(CoarseDepths depths, IReadOnlyList<LayerPair[]> courses)
    {
        if (courses.Count == 0) return (_options.Interface.DampingPerS, null);
        double? periodS = GravestSeiche.Find(depths, courses[_middle][0], _options.Interface.MinLowerM)?.PeriodS;
        if (periodS is not { } found) return (_options.Interface.DampingPerS, null);
        return (2.0 / Math.Min(_options.PeriodsToFade * found, LongestFadeS), found);
    }

    private static DateTimeOffset Later(DateTimeOffset a, DateTimeOffset b) => a > b ? a : b;
}
