using System.Diagnostics;
using System.Runtime.InteropServices;

namespace SecondShore.Bench;

/// <summary>The C loops of <c>bench/native</c>, compiled on the spot where gcc is present.</summary>
internal sealed unsafe class MotionNative : IDisposable
{
    private readonly nint _library;
    private readonly string _folder;

    private MotionNative(nint library, string folder) => (_library, _folder) = (library, folder);

    public delegate* unmanaged<double*, double*, double*, double*, double*, double*, double*, double*, double*,
        nint, nint, nint, double, double, double, int, void> Steps =>
        (delegate* unmanaged<double*, double*, double*, double*, double*, double*, double*, double*, double*, nint, nint, nint, double, double, double, int, void>)
        NativeLibrary.GetExport(_library, "layers_steps");

    public delegate* unmanaged<double*, double*, double*, double, nint, void> Triad =>
        (delegate* unmanaged<double*, double*, double*, double, nint, void>)NativeLibrary.GetExport(_library, "triad");

    /// <summary>Compiles and loads the library; null where gcc or the source is missing, with the reason on standard error.</summary>
    public static MotionNative? TryLoad()
    {
        string? source = FindSource();
        if (source is null)
        {
            Console.Error.WriteLine("# bench/native/layers.c was not found: no comparison with C");
            return null;
        }

        string folder = Directory.CreateTempSubdirectory("second-shore-bench-").FullName, library = Path.Combine(folder, "layers.so");
        try
        {
            using Process? gcc = Process.Start(new ProcessStartInfo("gcc", ["-O3", "-march=native", "-shared", "-fPIC", "-o", library, source]));
            gcc?.WaitForExit();
            if (gcc is { ExitCode: 0 }) return new MotionNative(NativeLibrary.Load(library), folder);
        }
        catch (System.ComponentModel.Win32Exception e)
        {
            Console.Error.WriteLine($"# gcc cannot be run ({e.Message}): no comparison with C");
        }

        Directory.Delete(folder, recursive: true);
        return null;
    }

    public void Dispose()
    {
        NativeLibrary.Free(_library);
        Directory.Delete(_folder, recursive: true);
    }

    private static string? FindSource()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            string path = Path.Combine(at.FullName, "bench", "native", "layers.c");
            if (File.Exists(path)) return path;
        }

        return null;
    }
}
