namespace SecondShore.Engine.Core.Findings;

/// <summary>What a value of a finding measures: it decides how the reader's units write it.</summary>
public enum Measure
{
    /// <summary>A name or the user's own word, shown as it stands.</summary>
    Text,

    /// <summary>A line of a file, such as <c>readings.csv line 3</c>.</summary>
    Source,

    /// <summary>A number without a unit; the sentence gives its digits.</summary>
    Number,

    /// <summary>A whole count.</summary>
    Count,

    /// <summary>A depth, m.</summary>
    Depth,

    /// <summary>A small difference of depth, m, told to a tenth.</summary>
    Difference,

    /// <summary>A way on the water, m.</summary>
    Way,

    /// <summary>A short length, m.</summary>
    Length,

    /// <summary>An area of water, m2.</summary>
    Area,

    /// <summary>A temperature, degC.</summary>
    Temperature,

    /// <summary>A boat's or drag speed, m s-1.</summary>
    Speed,

    /// <summary>A wind, m s-1.</summary>
    Wind,

    /// <summary>A jig's weight, kg.</summary>
    Mass,

    /// <summary>An instant; the sentence says whether it is a date or a time of day.</summary>
    Time,

    /// <summary>Another finding, said in the same language.</summary>
    Finding,

    /// <summary>Names or findings in a row, joined with 'and'.</summary>
    Row,

    /// <summary>Names or findings one after another, with commas alone.</summary>
    List,
}

/// <summary>One value of a finding: a number in SI with what it measures, a name, an instant, or another finding.</summary>
/// <remarks>The default value is an empty text.</remarks>
public readonly record struct Told
{
    private Told(Measure measure, double value, object? other = null) => (Measure, Value, Other) = (measure, value, other);

    /// <summary>What it measures.</summary>
    public Measure Measure { get; }

    /// <summary>The number in SI; 0 where it is none.</summary>
    public double Value { get; }

    /// <summary>What is no number: a text, an instant, a finding, a row of values.</summary>
    public object? Other { get; }

    /// <summary>A depth, m.</summary>
    public static Told Depth(double depthM) => new(Measure.Depth, depthM);

    /// <summary>A small difference of depth, m.</summary>
    public static Told Difference(double differenceM) => new(Measure.Difference, differenceM);

    /// <summary>A way on the water, m.</summary>
    public static Told Way(double wayM) => new(Measure.Way, wayM);

    /// <summary>A short length, m.</summary>
    public static Told Length(double lengthM) => new(Measure.Length, lengthM);

    /// <summary>An area of water, m2.</summary>
    public static Told Area(double areaM2) => new(Measure.Area, areaM2);

    /// <summary>A temperature, degC.</summary>
    public static Told Temperature(double tempC) => new(Measure.Temperature, tempC);

    /// <summary>A boat's or drag speed, m s-1.</summary>
    public static Told Speed(double speedMps) => new(Measure.Speed, speedMps);

    /// <summary>A wind, m s-1.</summary>
    public static Told Wind(double windMps) => new(Measure.Wind, windMps);

    /// <summary>A jig's weight, kg.</summary>
    public static Told Mass(double massKg) => new(Measure.Mass, massKg);

    /// <summary>A line of a file, such as <c>readings.csv line 3</c>, or an entry's id.</summary>
    public static Told Source(string source) => new(Measure.Source, 0, Require.NotNull(source));

    /// <summary>Names or findings in a row.</summary>
    public static Told Row(IEnumerable<Told> values) => new(Measure.Row, 0, Require.NotNull(values).ToArray());

    /// <summary>Names or findings one after another.</summary>
    public static Told List(IEnumerable<Told> values) => new(Measure.List, 0, Require.NotNull(values).ToArray());

    /// <summary>Names in a row.</summary>
    public static Told Row(IEnumerable<string> names) => Row(Require.NotNull(names).Select(n => (Told)n));

    /// <summary>A name or the user's own word.</summary>
    public static implicit operator Told(string text) => new(Measure.Text, 0, Require.NotNull(text));

    /// <summary>A number without a unit.</summary>
    public static implicit operator Told(double value) => new(Measure.Number, value);

    /// <summary>A whole count.</summary>
    public static implicit operator Told(int count) => new(Measure.Count, count);

    /// <summary>An instant, in the offset it carries.</summary>
    public static implicit operator Told(DateTimeOffset time) => new(Measure.Time, 0, time);

    /// <summary>Another finding.</summary>
    public static implicit operator Told(Finding finding) => new(Measure.Finding, 0, Require.NotNull(finding));

    /// <summary>Whether two values say the same.</summary>
    public bool Equals(Told other) => Measure == other.Measure && Value.Equals(other.Value)
        && (Other is Told[] own && other.Other is Told[] theirs ? own.AsSpan().SequenceEqual(theirs) : Equals(Other, other.Other));

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Measure, Value, Other is Told[] row ? row.Length : Other?.GetHashCode() ?? 0);

    internal object ForFormat() => Measure switch
    {
        Measure.Number => Value,
        Measure.Count => (long)Value,
        Measure.Time => Other!,
        _ => ToString(),
    };

    /// <summary>For developers: the bare value.</summary>
    public override string ToString() => Other switch
    {
        null => Value.ToString("G6", System.Globalization.CultureInfo.InvariantCulture),
        Told[] row => string.Join(", ", row),
        IFormattable formattable => formattable.ToString(null, System.Globalization.CultureInfo.InvariantCulture),
        object other => other.ToString() ?? "",
    };
}
