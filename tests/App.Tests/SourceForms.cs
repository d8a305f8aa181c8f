using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace SecondShore.App.Tests;

/// <summary>Finds the sentences that source code hands over by their English form: text, and {0} where a value stands.</summary>
internal static partial class SourceForms
{
    /// <summary>Forms in the arguments of calls that take a sentence, in one file.</summary>
    public static IEnumerable<string> In(string source)
    {
        foreach (Match call in Call().Matches(source))
        {
            int at = call.Index + call.Length, depth = 1;
            bool until = call.Value[^1] != '(';
            while (at < source.Length && depth > 0)
            {
                char c = source[at];
                if (c == '"')
                {
                    yield return Literal(source, ref at);
                    continue;
                }

                if (c == '\'') at += source[at + 1] == '\\' ? 3 : 2;
                else if (c == '(') depth++;
                else if (c == ')' || (until && c == ';' && depth == 1)) depth--;
                at++;
            }
        }
    }

    /// <summary>Whether a form is a sentence or words for people, not a name, a key or a file.</summary>
    public static bool IsWords(string form) => form.Contains(' ', StringComparison.Ordinal) && TwoWords().IsMatch(form);

    // A sentence may be written in several pieces, joined by a sign over two lines.
    private static string Literal(string source, ref int at)
    {
        StringBuilder form = new();
        int holes = 0;
        Piece(source, ref at, form, ref holes);
        while (Joined().Match(source, at) is { Success: true } joined && joined.Index == at)
        {
            at += joined.Length - 1;
            Piece(source, ref at, form, ref holes);
        }

        return form.ToString();
    }

    private static void Piece(string source, ref int at, StringBuilder form, ref int holes)
    {
        bool interpolated = at > 0 && source[at - 1] == '$';
        for (at++; source[at] != '"'; at++)
        {
            char c = source[at];
            if (c == '\\') form.Append(source[++at] switch { 'n' => '\n', 't' => '\t', char other => other });
            else if (interpolated && c == '{' && source[at + 1] != '{') form.Append('{').Append((holes++).ToString(CultureInfo.InvariantCulture)).Append(Hole(source, ref at)).Append('}');
            else if (interpolated && c is '{' or '}') form.Append(c).Append(source[++at]);
            else if (c is '{' or '}') form.Append(c, 2);
            else form.Append(c);
        }

        at++;
    }

    // The format of a hole with its colon, or nothing; leaves the place at the closing brace.
    private static string Hole(string source, ref int at)
    {
        int nested = 0, format = -1;
        for (at++; source[at] != '}' || nested > 0; at++)
        {
            char c = source[at];
            if (format >= 0) continue;
            if (c is '(' or '[' or '{') nested++;
            else if (c is ')' or ']' or '}') nested--;
            else if (c == '"') for (at++; source[at] != '"'; at++) { if (source[at] == '\\') at++; }
            else if (c == ':' && nested == 0) format = at;
        }

        return format < 0 ? "" : source[format..at];
    }

    [GeneratedRegex(@"(\b(log|Log|_log|problems|[dD]oubts|[nN]otes|said|[aA]ssumed)\.(Error|Warn|Note|Row|Add)|\bFinding\.Of|\bFail|\bOdd|\bBad"
        + @"|\bWarn|\bChoice|new (ArrayFault|WeatherException|OpenException|TripRefusedException|CouldNotComputeException|GeographicSystem"
        + @"|SurveyQuestion|SurveyChoice)|\bOffer|\bSay)\(|\bfault =\s|\bFindingForm \w+ =\s")]
    private static partial Regex Call();

    [GeneratedRegex(@"\G\s*\+\s*\$?""")]
    private static partial Regex Joined();

    [GeneratedRegex("[a-z]{2,}[^a-z]+[a-z]{2,}")]
    private static partial Regex TwoWords();
}
