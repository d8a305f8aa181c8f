using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Rig;

/// <summary>A pocket card to print: the table of weights in the user's units, ready to set. Others draw it.</summary>
/// <param name="Title">What it is for.</param>
/// <param name="SpeedHeads">Heads of the columns.</param>
/// <param name="Rows">Rows, shallow first.</param>
/// <param name="Notes">Lines under the table.</param>
/// <param name="Cautions">Cautions.</param>
public sealed record RigCard(string Title, IReadOnlyList<string> SpeedHeads, IReadOnlyList<RigCard.Row> Rows, IReadOnlyList<string> Notes, IReadOnlyList<string> Cautions)
{
    /// <summary>One row.</summary>
    /// <param name="DepthHead">Its head.</param>
    /// <param name="Cells">Sizes, or <c>too fast</c>.</param>
    public sealed record Row(string DepthHead, IReadOnlyList<string> Cells);

    /// <summary>The card of an answer.</summary>
    public static RigCard Of(RigReply reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        UnitSystem units = reply.Request.Units;
        Jig jig = reply.Choice.Chosen.Jig;
        List<Row> rows = [];
        int columns = reply.TableSpeedsMps.Count;
        for (int row = 0; row < reply.TableDepthsM.Count; row++)
        {
            List<string> cells = [];
            for (int column = 0; column < columns; column++)
                cells.Add(reply.Table[(row * columns) + column].Size is { } size ? size.Label : "too fast");
            rows.Add(new Row(units.Depth(reply.TableDepthsM[row]), cells));
        }

        bool given = reply.Conditions.LineOutM is not null;
        return new RigCard(
            $"{jig.Material.Name} jig, {jig.Trailer.Name} trailer, on {reply.Line.Name}",
            [.. reply.TableSpeedsMps.Select(units.Pace)],
            rows,
            [
                given ? $"Line out {units.ShortDistance(reply.Conditions.LineOutAtM(reply.Conditions.DepthM))}." : "Line out twice the depth below the rod tip.",
                "Lightest that keeps the bottom " + (reply.Request.Rule.Confidence >= 0.895 ? "nine times in ten or better" : "as surely as asked") + ".",
                reply.Request.Current is null ? "Speeds are over the bottom in still water; against a current add its speed." : "Speeds are over the bottom, in the current given.",
                "Lighter falls slower and snags less. One size up in wind.",
            ],
            RigCautions.Of(reply));
    }
}
