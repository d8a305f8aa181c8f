using System.Net;

namespace SecondShore.Answers.Sheet;

/// <summary>Text of the sheet: escaping, style.</summary>
internal static class SheetHtml
{
    /// <summary>Text safe between tags and in attributes. Characters that XML forbids become a space.</summary>
    public static string Escape(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return WebUtility.HtmlEncode(new string([.. text.Select(c => char.IsControl(c) || c is '\uFFFE' or '\uFFFF' || char.IsSurrogate(c) ? ' ' : c)]));
    }

    /// <summary>The style sheet: one white page, A4 or Letter, readable in black and white.</summary>
    public static readonly string Style = """
        @page{size:auto;margin:9mm}
        *{box-sizing:border-box}
        body{margin:0;background:#fff;color:#10181F;font:400 12.5px/1.38 Archivo,"Helvetica Neue",Arial,sans-serif}
        .sheet{width:710px;margin:0 auto;padding:10px 0}
        @media print{.sheet{padding:0;zoom:var(--print,1)}}
        h1,h2,h3,p{margin:0}
        h1{font:600 27px/1.1 Besley,Rockwell,"Roboto Slab",Georgia,serif}
        h2{font:600 15px/1.2 Besley,Rockwell,"Roboto Slab",Georgia,serif;margin-top:12px}
        h3{font:600 13.5px/1.3 Besley,Rockwell,"Roboto Slab",Georgia,serif}
        .small,th{font-size:11px;color:#333E47}
        header{display:flex;justify-content:space-between;align-items:flex-end;border-bottom:2px solid #10181F;padding-bottom:8px}
        .nums{display:flex;gap:22px}
        .num{display:flex;align-items:center;font:600 32px/1 Besley,Rockwell,"Roboto Slab",Georgia,serif}
        .num i{font:500 14px/1 Archivo,Arial,sans-serif;align-self:flex-end;padding:0 0 4px 4px}
        .num .sp{display:flex;flex-direction:column;justify-content:space-between;height:32px;margin-left:9px;
            padding-left:6px;border-left:2px solid #333E47;font:600 13px/1 Archivo,Arial,sans-serif}
        .why{margin:8px 0}.why b,.be{font:italic 500 1em/1 Besley,Georgia,serif}
        .two{display:grid;gap:16px}
        .stops{margin-top:8px;font-size:11.5px;line-height:1.32}
        .stops td{padding:3px 8px 3px 0}.stops th{padding:2px 8px 2px 0}.stops h3{font-size:12.5px;line-height:1.25}
        svg{display:block;width:100%;height:auto}
        table{border-collapse:collapse;width:100%}
        td,th{text-align:left;vertical-align:top;padding:6px 8px 6px 0;border-bottom:1px solid #10181F33}
        .wind{max-width:224px}
        .tight{font-size:11.5px;line-height:1.32}.tight tr:last-child td{border-bottom:0}
        .tight td{padding:3px 8px 3px 0}.tight td:first-child{white-space:nowrap;font-weight:700}
        .let{display:inline-block;width:23px;height:23px;line-height:20px;
            text-align:center;border:1.5px solid #10181F;border-radius:50%;font:700 13px/20px Besley,Georgia,serif}
        .letter{font-family:Besley,Georgia,serif}
        .came{width:84px;border-left:1px solid #10181F33}
        footer{margin-top:8px;font-size:11.5px;line-height:1.32;border-top:2px solid #10181F;padding-top:7px}
        .blanks{display:flex;gap:20px;margin-top:7px}
        .blanks span{white-space:nowrap}.blanks .end{margin-left:auto;color:#333E47;white-space:normal}
        tr,footer,.two{break-inside:avoid}
        """;
}
