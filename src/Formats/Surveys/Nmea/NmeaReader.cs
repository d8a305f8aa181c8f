using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Nmea;

/// <summary>Reads NMEA 0183 logs: fixes from GGA, RMC and GLL, depths from DBS, DPT or DBT, of any talker.</summary>
internal sealed class NmeaReader : ISurveyReader
{
    public string Format => "NMEA 0183 log";

    public double Sniff(SurveySource source)
    {
        ReadOnlySpan<byte> head = source.Bytes.AsSpan(0, Math.Min(source.Bytes.Length, 8000));
        int sentences = 0;
        for (int i = 0; i + 7 < head.Length; i++)
            if (head[i] == '$' && char.IsAsciiLetterUpper((char)head[i + 1]) && char.IsAsciiLetterUpper((char)head[i + 5]) && head[i + 6] == ',') sentences++;
        return sentences >= 3 ? 0.95 : sentences > 0 ? 0.62 : source.Ending is "nmea" ? 0.4 : 0;
    }

    public RawSurvey? Read(SurveySource source, SurveyOptions options, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation)
    {
        NmeaTrack track = new();
        string text = TextDecoding.Decode(source.Bytes, out _);
        int at = text.IndexOf('$'), read = 0;
        while (at >= 0)
        {
            if (++read % 20_000 == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Report((double)at / text.Length);
            }

            int end = text.AsSpan(at + 1).IndexOfAny("$\r\n\0");
            end = end < 0 ? text.Length : at + 1 + end;
            track.Take(NmeaSentence.Parse(text.AsSpan(at + 1, Math.Min(end - at - 1, 400))));
            at = text.IndexOf('$', end);
        }

        if (track.Sentences == 0)
        {
            log.Error(source.Name, "the file holds no NMEA 0183 sentence, such as $SDDPT,8.2,0.0*7D.");
            return null;
        }

        RawSurvey raw = new(Format) { Crs = CoordinateSystem.Degrees, CrsKnown = Knowledge.Stated, Unit = DepthUnit.Metres, UnitKnown = Knowledge.Stated, Sense = DepthSense.Depth, SenseKnown = Knowledge.Stated };
        track.Tell(raw, source.Name, log, options);
        raw.Points.Add(track.ToPoints());
        track.TellUnplaced(source.Name, log);
        return raw;
    }
}
