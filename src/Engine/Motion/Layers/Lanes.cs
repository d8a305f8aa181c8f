using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.Wasm;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>
/// Pairs of doubles by pointer. In a browser the packed instructions are named one by one: its interpreter runs those as one
/// operation each, and whatever is not named as many. Same numbers everywhere.
/// </summary>
internal static unsafe class Lanes
{
    /// <summary>Doubles in a pair.</summary>
    public const int Count = 2;

    /// <summary>The pair at a place.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<double> Load(double* from) => PackedSimd.IsSupported ? PackedSimd.LoadVector128(from) : Vector128.Load(from);

    /// <summary>Puts a pair at a place.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(double* to, Vector128<double> pair)
    {
        if (PackedSimd.IsSupported) PackedSimd.Store(to, pair);
        else pair.Store(to);
    }

    /// <summary>Quotients.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<double> Divide(Vector128<double> a, Vector128<double> b) => PackedSimd.IsSupported ? PackedSimd.Divide(a, b) : a / b;

    /// <summary>The lesser of each; neither holds NaN.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<double> Min(Vector128<double> a, Vector128<double> b) => PackedSimd.IsSupported ? PackedSimd.Min(a, b) : Vector128.Min(a, b);

    /// <summary>The greater of each; neither holds NaN.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<double> Max(Vector128<double> a, Vector128<double> b) => PackedSimd.IsSupported ? PackedSimd.Max(a, b) : Vector128.Max(a, b);

    /// <summary>Square roots.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<double> Sqrt(Vector128<double> a) => PackedSimd.IsSupported ? PackedSimd.Sqrt(a) : Vector128.Sqrt(a);

    /// <summary>Sizes without sign.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<double> Abs(Vector128<double> a) => PackedSimd.IsSupported ? PackedSimd.Abs(a) : Vector128.Abs(a);

    /// <summary>Whether either is negative.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyNegative(Vector128<double> a) =>
        PackedSimd.IsSupported ? PackedSimd.Bitmask(a.AsInt64()) != 0 : a.ExtractMostSignificantBits() != 0;
}
