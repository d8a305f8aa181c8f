namespace SecondShore.Open.Asking;

/// <summary>One question to an open service. Immutable.</summary>
/// <param name="Address">Whom to ask, with the whole query.</param>
/// <param name="Sent">What is sent, in words, such as <c>the name 'Ketterfold'</c>: it is told before it goes out.</param>
public sealed record Ask(Uri Address, Finding Sent)
{
    /// <summary>Text of a form to post; null to get.</summary>
    public string? Form { get; init; }

    /// <summary>Longest answer that is read, bytes.</summary>
    public int MostBytes { get; init; } = 2 << 20;

    /// <summary>How long a kept answer counts.</summary>
    public TimeSpan KeepFor { get; init; } = TimeSpan.FromDays(7);

    /// <summary>How to go on where nothing comes: the last sentence of every failure.</summary>
    public Finding Otherwise { get; init; } = Finding.Of("Try again later.");

    /// <summary>What a kept answer is found by.</summary>
    public string Key => Form is null ? Address.AbsoluteUri : $"{Address.AbsoluteUri}\n{Form}";
}

/// <summary>An answer.</summary>
/// <param name="Body">Its bytes.</param>
/// <param name="Type">Its media type in lower case, without parameters; empty where it was kept or not told.</param>
/// <param name="From">The address it came from in the end.</param>
public sealed record Answer(byte[] Body, string Type, Uri From);
