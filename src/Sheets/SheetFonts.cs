using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace SecondShore.Sheets;

/// <summary>The fonts of the printed sheet, carried in this assembly so that every machine prints the same page.</summary>
internal sealed class SheetFonts : IFontResolver
{
    private static readonly Lock Gate = new();
    private static readonly string Family = "DejaVu Sans Condensed";

    /// <summary>A font of a size, px of the page's own measure.</summary>
    public static XFont Of(double sizePx, bool bold = false)
    {
        Install();
        return new XFont(Family, sizePx, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular);
    }

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) =>
        familyName == Family ? new FontResolverInfo(bold ? "DejaVuSansCondensed-Bold" : "DejaVuSansCondensed") : null;

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName)
    {
        using Stream? stream = typeof(SheetFonts).Assembly.GetManifestResourceStream($"SecondShore.Sheets.{faceName}");
        if (stream is null) return null;
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    // The library knows one resolver for the whole process.
    private static void Install()
    {
        lock (Gate)
        {
            if (GlobalFontSettings.FontResolver is null) GlobalFontSettings.FontResolver = new SheetFonts();
        }
    }
}
