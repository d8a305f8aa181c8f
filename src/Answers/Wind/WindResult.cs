using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Wind;

/// <summary>A wind field and what was asked of it. Immutable.</summary>
public sealed class WindResult
{
    private readonly Lazy<IReadOnlyList<HourSummary>> _hours;

    /// <summary>Joins a computed field to its question.</summary>
    public WindResult(WindField field, Outlook outlook, WindQuestion question, IReadOnlyList<Finding> assumed)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(outlook);
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(assumed);
        Field = field;
        Outlook = outlook;
        Question = question;
        Assumed = [.. assumed, .. field.Wind.Assumed];
        _hours = new Lazy<IReadOnlyList<HourSummary>>(() => [.. Enumerable.Range(0, field.Hours.Count).Select(hour => HourSummary.Of(this, hour))]);
    }

    /// <summary>The field: thermocline, currents and waves by place and hour.</summary>
    public WindField Field { get; }

    /// <summary>The outlook it stands on.</summary>
    public Outlook Outlook { get; }

    /// <summary>The question.</summary>
    public WindQuestion Question { get; }

    /// <summary>What had to be assumed.</summary>
    public IReadOnlyList<Finding> Assumed { get; }

    /// <summary>Each hour in numbers; worked out when first asked for, since a plan needs none of it.</summary>
    public IReadOnlyList<HourSummary> Hours => _hours.Value;

    /// <summary>Thermocline depth at rest, m; null without one.</summary>
    public SampleDistribution? AtRestM => Field.IsLayered ? Outlook.Lake.ThermoclineM : null;

    /// <summary>The same at an hour to come: it follows the outlook's members; as at first where they were not followed so far.</summary>
    public SampleDistribution? AtRestAt(DateTimeOffset at)
    {
        if (AtRestM is not { } first || Outlook.Lake.Ahead is not { Count: > 0 } ahead) return AtRestM;
        return ahead[Math.Clamp((int)Math.Round((at - Outlook.At).TotalHours), 0, ahead.Count - 1)].ThermoclineM ?? first;
    }

    /// <summary>Depth whose current is told, m.</summary>
    public double CurrentDepthM => Question.CurrentDepthM ?? AtRestM?.Quantile(0.5) ?? 6.0;

    /// <summary>Surface temperature, degC; null when not known.</summary>
    public double? SurfaceC => Outlook.Lake.Profile.Count > 0 ? Outlook.Lake.Profile[0].TempC.P50 : null;
}
