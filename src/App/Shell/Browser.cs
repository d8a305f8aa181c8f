using Microsoft.JSInterop;

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
    /// <param name="verb">The question.</param>
    /// <param name="json">What it is about.</param>
    /// <param name="lake">The lake's id; null when nothing of it is read or kept.</param>
    /// <param name="listener">Told of progress.</param>
    /// <param name="keep">Stamp under which the answer is kept for the next cold start; null keeps nothing.</param>
    public ValueTask<string?> Ask(string verb, string json, string? lake = null, object? listener = null, string? keep = null) =>
        Text("ask", verb, json, lake, listener, keep);

    /// <summary>The first line of what the browser's side threw: one of its words, such as <c>quota</c> or <c>stopped</c>, or a sentence after its mark.</summary>
    /// <param name="error">What was thrown; whatever else it says is for developers and must not be shown.</param>
#pragma warning disable RS0030 // The one door between the browser's side and the page: what crosses it are our own words.
    public static string Told(JSException error) => (error ?? throw new ArgumentNullException(nameof(error))).Message.Split('\n')[0].Trim();
#pragma warning restore RS0030

    private Task<IJSObjectReference> ModuleAsync() => _module ??= js.InvokeAsync<IJSObjectReference>("import", "./js/app.js").AsTask();
}
