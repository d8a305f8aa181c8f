using System.Globalization;
using System.Text;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Words;
using SecondShore.Engine.Day;

namespace SecondShore.Answers.Sheet;

/// <summary>The plan as a calendar file (RFC 5545): launch, each stop, home. Times in UTC, so that every calendar agrees.</summary>
public static class DayCalendar
{
    /// <summary>Writes the calendar.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="lakeName">The lake's name.</param>
    /// <param name="projection">The lake's plane, for the places.</param>
    /// <param name="madeAt">When the plan was made.</param>
    /// <param name="cautions">Cautions, for the launch's notes.</param>
    /// <param name="speech">The plan's language; null is English.</param>
    public static string Write(DayPlan plan, string lakeName, LocalProjection projection, DateTimeOffset madeAt, IReadOnlyList<string> cautions, Speech? speech = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(lakeName);
        ArgumentNullException.ThrowIfNull(projection);
        ArgumentNullException.ThrowIfNull(cautions);
        speech ??= Speech.English;
        StringBuilder text = new();
        Line(text, "BEGIN:VCALENDAR");
        Line(text, "VERSION:2.0");
        Line(text, "PRODID:-//Second Shore//Day plan//EN");
        Line(text, "CALSCALE:GREGORIAN");
        if (plan.Stops.Count > 0)
        {
            PlannedLeg first = plan.Legs[0], last = plan.Legs[^1];
            Event(text, "launch", plan.Launch, first.Arrive, speech.Say($"Launch, {first.From}"), speech.Say($"{plan.Title} because {plan.Why}. {string.Join(" ", cautions)}"), lakeName, Point(first.Line, 0), madeAt);
            foreach (PlannedStop stop in plan.Stops)
            {
                string how = string.Join(", ", new[] { stop.Candidate.RigSlot ?? "", stop.Candidate.How }.Where(s => s.Length > 0));
                Event(text, $"stop-{stop.Candidate.Id}", stop.Arrive, stop.Leave, $"{stop.Candidate.Letter} {stop.Candidate.Name}", $"{how}{(how.Length > 0 ? ". " : "")}{speech.Say($"because {stop.Why}.")}", lakeName, stop.Candidate.Place, madeAt);
            }

            Event(text, "home", last.Leave, plan.Home, speech.Say($"Home, {last.To}"), speech.Say($"because {plan.HomeByWhy}. This plans, it does not navigate."), lakeName, Point(last.Line, last.Line.Count - 1), madeAt);
        }

        Line(text, "END:VCALENDAR");
        return text.ToString();

        static PlanePoint? Point(IReadOnlyList<PlanePoint> line, int index) => line.Count > 0 ? line[index] : null;

        void Event(StringBuilder to, string id, DateTimeOffset from, DateTimeOffset until, string title, string notes, string lake, PlanePoint? place, DateTimeOffset stamp)
        {
            Line(to, "BEGIN:VEVENT");
            Line(to, $"UID:{Escape($"{Utc(from)}-{id}")}@second-shore");
            Line(to, $"DTSTAMP:{Utc(stamp)}");
            Line(to, $"DTSTART:{Utc(from)}");
            Line(to, $"DTEND:{Utc(until)}");
            Line(to, $"SUMMARY:{Escape(title)}");
            Line(to, $"LOCATION:{Escape(lake)}");
            Line(to, $"DESCRIPTION:{Escape(notes.Trim())}");
            if (place is PlanePoint at)
            {
                GeoPoint geo = projection.ToGeo(at);
                Line(to, string.Create(CultureInfo.InvariantCulture, $"GEO:{geo.LatDeg:0.000000};{geo.LonDeg:0.000000}"));
            }

            Line(to, "END:VEVENT");
        }
    }

    private static string Utc(DateTimeOffset at) => at.ToUniversalTime().ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);

    private static string Escape(string text)
    {
        StringBuilder escaped = new();
        foreach (char c in text)
        {
            if (c is '\\' or ';' or ',') escaped.Append('\\').Append(c);
            else if (c == '\n') escaped.Append("\\n");
            else if (!char.IsControl(c)) escaped.Append(c);
        }

        return escaped.ToString();
    }

    // Lines are folded at 75 octets without cutting a character.
    private static void Line(StringBuilder text, string line)
    {
        int octets = 0;
        foreach (Rune rune in line.EnumerateRunes())
        {
            if (octets + rune.Utf8SequenceLength > 74)
            {
                text.Append("\r\n ");
                octets = 1;
            }

            text.Append(rune.ToString());
            octets += rune.Utf8SequenceLength;
        }

        text.Append("\r\n");
    }
}
