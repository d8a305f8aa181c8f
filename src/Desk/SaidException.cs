namespace SecondShore.Desk;

/// <summary>A question has no answer, and this is what to tell the user. Whatever else is thrown is for developers only.</summary>
/// <param name="sentence">The sentence, in the user's language and units.</param>
/// <param name="inner">The finding it says.</param>
public sealed class SaidException(string sentence, Exception? inner = null) : Exception(Mark + sentence, inner)
{
    /// <summary>What stands before a sentence on its way from the worker to the page: without it, a failure is not shown in its own words.</summary>
    public static readonly string Mark = "said:";

    /// <summary>The sentence.</summary>
    public string Sentence => sentence;
}
