using CsCheck;

namespace SecondShore.TestKit;

/// <summary>Random cases from fixed seeds: a run says the same of the same code, whenever and wherever it is made.</summary>
/// <remarks>
/// Where the variable SECONDSHORE_FRESH holds a text (<c>bash eng/check.sh --long</c> makes one and prints it), ten times as many
/// cases follow whose seeds come of that text. A case that fails says its own seed: it is kept as a named test by <see cref="At"/>.
/// </remarks>
public static class RandomCases
{
    private const int FreshTimes = 10;
    private const string Letters = "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";

    /// <summary>Holds a claim to a number of cases.</summary>
    public static void Hold<T>(this Gen<T> cases, Action<T> claim, int number = 100)
    {
        foreach (string seed in Seeds(number)) cases.At(seed, claim);
    }

    /// <summary>Holds a claim to a number of cases from the fixed seeds alone: minutes of work each, or known not to hold at every fresh one.</summary>
    public static void HoldAtFixed<T>(this Gen<T> cases, Action<T> claim, int number)
    {
        foreach (string seed in Seeds(number).Take(number)) cases.At(seed, claim);
    }

    /// <summary>Holds a claim to a number of cases.</summary>
    public static void Hold<T>(this Gen<T> cases, Func<T, bool> claim, int number = 100)
    {
        foreach (string seed in Seeds(number)) cases.Sample(claim, seed: seed, iter: 1, threads: 1);
    }

    /// <summary>Holds a claim to a number of cases.</summary>
    public static void Hold<T1, T2>(this Gen<(T1, T2)> cases, Action<T1, T2> claim, int number = 100) =>
        cases.Hold(c => claim(c.Item1, c.Item2), number);

    /// <summary>Holds a claim to a number of cases.</summary>
    public static void Hold<T1, T2>(this Gen<(T1, T2)> cases, Func<T1, T2, bool> claim, int number = 100) =>
        cases.Hold(c => claim(c.Item1, c.Item2), number);

    /// <summary>Holds a claim to a number of cases.</summary>
    public static void Hold<T1, T2, T3>(this Gen<(T1, T2, T3)> cases, Action<T1, T2, T3> claim, int number = 100) =>
        cases.Hold(c => claim(c.Item1, c.Item2, c.Item3), number);

    /// <summary>Holds a claim to a number of cases.</summary>
    public static void Hold<T1, T2, T3>(this Gen<(T1, T2, T3)> cases, Func<T1, T2, T3, bool> claim, int number = 100) =>
        cases.Hold(c => claim(c.Item1, c.Item2, c.Item3), number);

    /// <summary>Holds a claim to a number of cases.</summary>
    public static void Hold<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> cases, Action<T1, T2, T3, T4> claim, int number = 100) =>
        cases.Hold(c => claim(c.Item1, c.Item2, c.Item3, c.Item4), number);

    /// <summary>Holds a claim to a number of cases.</summary>
    public static void Hold<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> cases, Func<T1, T2, T3, T4, bool> claim, int number = 100) =>
        cases.Hold(c => claim(c.Item1, c.Item2, c.Item3, c.Item4), number);

    /// <summary>Holds a claim to a number of cases.</summary>
    public static void Hold<T1, T2, T3, T4, T5>(this Gen<(T1, T2, T3, T4, T5)> cases, Action<T1, T2, T3, T4, T5> claim, int number = 100) =>
        cases.Hold(c => claim(c.Item1, c.Item2, c.Item3, c.Item4, c.Item5), number);

    /// <summary>Holds a claim to a number of cases.</summary>
    public static void Hold<T1, T2, T3, T4, T5>(this Gen<(T1, T2, T3, T4, T5)> cases, Func<T1, T2, T3, T4, T5, bool> claim, int number = 100) =>
        cases.Hold(c => claim(c.Item1, c.Item2, c.Item3, c.Item4, c.Item5), number);

    /// <summary>Holds a claim to a number of cases, one after the other.</summary>
    public static async Task HoldAsync<T>(this Gen<T> cases, Func<T, Task> claim, int number = 100)
    {
        foreach (string seed in Seeds(number)) await cases.SampleAsync(claim, seed: seed, iter: 1, threads: 1);
    }

    /// <summary>Holds a claim to the one case of a seed, as one that failed is kept.</summary>
    public static void At<T>(this Gen<T> cases, string seed, Action<T> claim) => cases.Sample(claim, seed: seed, iter: 1, threads: 1);

    /// <summary>Seeds of as many cases, always the same; more of them where fresh ones are asked for.</summary>
    public static IEnumerable<string> Seeds(int number) => Numbers(number).Select(Seed);

    /// <summary>As many numbers from 1 on; more of them, far off, where fresh ones are asked for.</summary>
    public static IEnumerable<ulong> Numbers(int number)
    {
        for (int i = 1; i <= number; i++) yield return (ulong)i;
        if (Environment.GetEnvironmentVariable("SECONDSHORE_FRESH") is not { Length: > 0 } fresh) yield break;
        // FNV-1a makes a number of the text.
        ulong first = 14695981039346656037;
        foreach (char letter in fresh) first = (first ^ letter) * 1099511628211;
        for (int i = 0; i < FreshTimes * number; i++) yield return first + (ulong)i;
    }

    // Twelve letters that CsCheck reads as the state of its generator; the first and last hold few bits.
    private static string Seed(ulong number)
    {
        Span<char> seed = stackalloc char[12];
        seed.Fill('0');
        ulong state = number;
        for (int k = 1; k < 11; k++)
        {
            // SplitMix64: neighbouring numbers give unrelated letters.
            state += 0x9E3779B97F4A7C15;
            ulong mixed = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
            seed[k] = Letters[(int)((mixed ^ (mixed >> 31)) % (ulong)Letters.Length)];
        }

        return new string(seed);
    }
}
