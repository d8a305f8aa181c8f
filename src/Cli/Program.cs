using SecondShore.Cli;
using SecondShore.Cli.Console;

using CancellationTokenSource stop = new();
Console.CancelKeyPress += (_, e) =>
{
    e.Cancel = true;
    stop.Cancel();
};
Console.OutputEncoding = System.Text.Encoding.UTF8;
return await CommandLine.RunAsync(args, new Surroundings(new PlainWriter(Console.Out), new PlainWriter(Console.Error), TimeProvider.System, !Console.IsErrorRedirected)
{
    Answers = Console.IsInputRedirected || Console.IsErrorRedirected ? null : Console.In,
}, stop.Token);
