using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace SecondShore.Engine.Core;

/// <summary>Checks at the public door. Each failure says what was seen and what is allowed.</summary>
public static class Require
{
    /// <summary>Returns <paramref name="value"/> when it is a finite number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static double Finite(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!double.IsFinite(value)) Throw(name, value, CoreFindings.NotFinite.Of(name, value));
        return value;
    }

    /// <summary>Returns <paramref name="value"/> when it is finite and greater than zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0) || double.IsInfinity(value)) Throw(name, value, CoreFindings.NotPositive.Of(name, value));
        return value;
    }

    /// <summary>Returns <paramref name="value"/> when it is finite and zero or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static double NotNegative(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= 0) || double.IsInfinity(value)) Throw(name, value, CoreFindings.Negative.Of(name, value));
        return value;
    }

    /// <summary>Returns <paramref name="value"/> when it lies in the closed range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside, or is NaN.</exception>
    public static double InRange(double value, double low, double high,
        [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= low && value <= high))
            Throw(name, value, CoreFindings.OutOfRange.Of(name, value, low, high));
        return value;
    }

    /// <summary>Returns <paramref name="value"/> when it lies in the closed range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside.</exception>
    public static int InRange(int value, int low, int high,
        [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (value < low || value > high)
            Throw(name, value, CoreFindings.NotWhole.Of(name, value, low, high));
        return value;
    }

    /// <summary>Returns <paramref name="value"/> when it is not null.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public static T NotNull<T>([NotNull] T? value, [CallerArgumentExpression(nameof(value))] string name = "")
        where T : class
    {
        ArgumentNullException.ThrowIfNull(value, name);
        return value;
    }

    /// <summary>Throws when two lengths that must agree do not.</summary>
    /// <exception cref="ArgumentException">The lengths differ.</exception>
    public static void SameLength(int seen, int expected, string name)
    {
        if (seen != expected)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{name} has {seen} values where {expected} are expected."), name);
        }
    }

    /// <summary>What a failed check found, for those who have to tell it to a person; null of an exception from elsewhere.</summary>
    public static Finding? Found(ArgumentException failed) => NotNull(failed).Data[FoundKey] as Finding;

    private static readonly string FoundKey = "finding";

    [DoesNotReturn]
    private static void Throw(string name, double value, Finding seen) =>
        throw new ArgumentOutOfRangeException(name, value, seen.ToString()) { Data = { [FoundKey] = seen } };
}
