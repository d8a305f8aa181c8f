using System.Text;
using SecondShore.Desk.Views;
using SecondShore.Engine.Basin;

namespace SecondShore.Desk.Tests;

/// <summary>A tray that keeps what the desk puts on it.</summary>
internal sealed class KeptTray : ITray
{
    public Dictionary<string, byte[]> All { get; } = new(StringComparer.Ordinal);

    /// <summary>Files by name.</summary>
    public Dictionary<string, byte[]> Files => All.Where(f => f.Key.StartsWith(ITray.FilePrefix, StringComparison.Ordinal))
        .ToDictionary(f => f.Key[ITray.FilePrefix.Length..], f => f.Value, StringComparer.Ordinal);

    public DepthGrid? LastGrid { get; private set; }

    public List<Drawing> Drawn { get; } = [];

    /// <summary>Steps of work told so far.</summary>
    public int Told { get; private set; }

    public void Progress(double share, string what)
    {
        Assert.InRange(share, 0, 1.0001);
        Assert.Contains(what, Steps.All);
        Told++;
    }

    public void Put(string name, ReadOnlySpan<byte> bytes) => All[name] = bytes.ToArray();

    public void Grid(DepthGrid grid) => LastGrid = grid;

    public void Draw(Drawing drawing) => Drawn.Add(drawing);
}

/// <summary>A round lake of 20 m with a survey and a place, and nothing else.</summary>
internal static class Bowl
{
    public static readonly DateTimeOffset Noon = new(2026, 8, 21, 12, 0, 0, TimeSpan.Zero);

    public static Dictionary<string, byte[]> Files()
    {
        StringBuilder xyz = new("lat,lon,depth_m\n");
        for (int i = -20; i <= 20; i++)
        {
            for (int j = -20; j <= 20; j++)
            {
                double r = Math.Sqrt((i * i) + (j * j)) / 20;
                xyz.Append(FormattableString.Invariant($"{45 + (i * 0.0006):0.00000},{-90 + (j * 0.0008):0.00000},{Math.Max(0, 20 * (1 - (r * r))):0.00}\n"));
            }
        }

        return new(StringComparer.Ordinal)
        {
            ["survey.csv"] = Encoding.UTF8.GetBytes(xyz.ToString()),
            ["lake.json"] = Encoding.UTF8.GetBytes("""{"name":"Test Bowl","latitude_deg":45,"longitude_deg":-90,"time_zone":"UTC","secchi_m":3}"""),
        };
    }
}
