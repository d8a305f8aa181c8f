using Microsoft.JSInterop;
using SecondShore.Desk.Questions;

namespace SecondShore.App.Shell;

/// <summary>The browser's side of the app: one module, called with strings and numbers only.</summary>
public sealed class Browser(IJSRuntime js)
{
    private Task<IJSObjectReference>? _module;

    /// <summary>Calls a function without a result.</summary>
    public async ValueTask Do(string function, params object?[] arguments) =>
        await (await ModuleAsync()).InvokeVoidAsync(function, arguments);

    /// <summary>Prints what stands on the page.</summary>
    public async Task PrintAsync() => await Do("printPage");

    /// <summary>Calls a function that gives a text.</summary>
    public async ValueTask<string?> Text(string function, params object?[] arguments) =>
        await (await ModuleAsync()).InvokeAsync<string?>(function, arguments);

    /// <summary>Calls a function that gives a number.</summary>
    public async ValueTask<double> Number(string function, params object?[] arguments) =>
        await (await ModuleAsync()).InvokeAsync<double>(function, arguments);

    /// <summary>Calls a function that says yes or no.</summary>
    public async ValueTask<bool> Flag(string function, params object?[] arguments) =>
        await (await ModuleAsync()).InvokeAsync<bool>(function, arguments);

    /// <summary>Asks the engine's worker.</summary>
    /// <param name="question">The question.</param>
    /// <param name="lake">The lake's id; null when nothing of it is read or kept.</param>
    /// <param name="opener">The question that opens the lake in a worker that starts anew; null where it was asked there.</param>
    /// <param name="listener">Told of progress.</param>
    /// <param name="keep">How the answer is kept for the next cold start; null keeps nothing.</param>
    public async ValueTask<TAnswer> Ask<TAnswer>(Question<TAnswer> question, string? lake, OpenLake? opener, object? listener, Keep? keep)
        where TAnswer : class
    {
        ArgumentNullException.ThrowIfNull(question);
        string? answer = await Text("ask", question.Kind, question.ToJson(), lake, opener?.ToJson(), listener, keep?.Name, keep?.Stamp);
        // Taking an answer in, reading it and showing it are three tasks of the page's thread: between them it may answer a finger.
        await BreatheAsync();
        TAnswer read = question.ReadAnswer(answer ?? "null");
        await BreatheAsync();
        return read;
    }

    /// <summary>Asks through a function of the browser's side that does something with the files of the answer.</summary>
    /// <param name="function">The function; it takes the question after what goes before it.</param>
    /// <param name="before">What goes before the question.</param>
    /// <param name="question">The question.</param>
    /// <param name="after">What goes after it.</param>
    public async ValueTask<TAnswer> AskThrough<TAnswer>(string function, IReadOnlyList<object?> before, Question<TAnswer> question,
        params IReadOnlyList<object?> after)
        where TAnswer : class
    {
        ArgumentNullException.ThrowIfNull(question);
        return question.ReadAnswer(await Text(function, [.. before ?? [], question.Kind, question.ToJson(), .. after ?? []]) ?? "null");
    }

    /// <summary>Lets the page's thread answer a finger.</summary>
    internal static Task BreatheAsync() => Task.Delay(1);

    /// <summary>The first line of what the browser's side threw: one of its words, such as <c>quota</c> or <c>stopped</c>, or a sentence after its mark.</summary>
    /// <param name="error">What was thrown; whatever else it says is for developers and must not be shown.</param>
#pragma warning disable RS0030 // The one door between the browser's side and the page: what crosses it are our own words.
    public static string Told(JSException error) => (error ?? throw new ArgumentNullException(nameof(error))).Message.Split('\n')[0].Trim();
#pragma warning restore RS0030

    private Task<IJSObjectReference> ModuleAsync() => _module ??= js.InvokeAsync<IJSObjectReference>("import", "./js/app.js").AsTask();
}

/// <summary>How an answer is kept on the device.</summary>
/// <param name="Name">Under which name; the last of a name stays.</param>
/// <param name="Stamp">What must be the same for it to be shown again.</param>
public sealed record Keep(string Name, string Stamp)
{
    /// <summary>Names of what is kept of a lake.</summary>
    public static readonly string Open = "open", Outlook = "outlook", Shore = "shore", Day = "day", Papers = "papers";
}
