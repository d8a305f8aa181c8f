using SecondShore.Answers.Lake;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Shore;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Questions;

/// <summary>The second shore, the belt and the ranked spots of one outlook. Treated as immutable.</summary>
/// <param name="Lake">The lake.</param>
/// <param name="Outlook">The outlook.</param>
/// <param name="Grid">Depths at the level of the day.</param>
/// <param name="Forms">The bottom's forms.</param>
/// <param name="Line">The second shore at the median thermocline; null without one.</param>
/// <param name="Belt">The belt; null without a thermocline.</param>
/// <param name="Spots">Spots, best first.</param>
public sealed record ShoreResult(PreparedLake Lake, Outlook Outlook, DepthGrid Grid, FormMap Forms, SecondShoreLine? Line, Belt? Belt, IReadOnlyList<Spot> Spots);
