using SecondShore.Cli.Tests;

[assembly: AssemblyFixture(typeof(DemoLake))]

namespace SecondShore.Cli.Tests;

/// <summary>The demo lake, written once for all tests that read it.</summary>
public sealed class DemoLake : IDisposable
{
    private readonly TempFolder _folder = new();

    public DemoLake()
    {
        Lake = _folder.File("ketterfold");
        Terminal.Run made = Terminal.Do("demo", Lake);
        Assert.Equal(ExitCodes.Done, made.Code);
    }

    public string Lake { get; }

    public void Dispose() => _folder.Dispose();
}
