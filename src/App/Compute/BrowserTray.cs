using System.Runtime.InteropServices;
using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text.Json;
using SecondShore.Desk;
using SecondShore.Desk.Views;
using SecondShore.Engine.Basin;

namespace SecondShore.App.Compute;

/// <summary>The tray of the browser's worker.</summary>
[SupportedOSPlatform("browser")]
internal sealed partial class BrowserTray : ITray
{
    public void Progress(double share, string what) => TellProgress(share, what);

    public unsafe void Put(string name, ReadOnlySpan<byte> bytes)
    {
        // The view is only read, and only during the call.
        fixed (byte* first = bytes) PutArray(name, new Span<byte>(first, bytes.Length));
    }

    public void Grid(DepthGrid grid) => PutGrid(grid.Frame.WestM, grid.Frame.SouthM, grid.Frame.CellM, grid.Frame.Nx, grid.Frame.Ny,
        MemoryMarshal.AsBytes(grid.DepthM.AsSpan()));

    public void Draw(Drawing drawing) => PutDrawing(JsonSerializer.Serialize(drawing, DeskJson.Default.Drawing));

    [JSImport("progress", "engine")]
    private static partial void TellProgress(double share, string what);

    [JSImport("array", "engine")]
    private static partial void PutArray(string name, [JSMarshalAs<JSType.MemoryView>] Span<byte> bytes);

    [JSImport("draw", "engine")]
    private static partial void PutDrawing(string json);

    [JSImport("grid", "engine")]
    private static partial void PutGrid(double westM, double southM, double cellM, int nx, int ny, [JSMarshalAs<JSType.MemoryView>] Span<byte> depthM);
}
