using SecondShore.Desk.Entries;
using SecondShore.Desk.Views;

namespace SecondShore.Desk.Questions;

/// <summary>Files that were handed out beside an answer.</summary>
/// <param name="Files">Their names.</param>
public sealed record HandedOut(IReadOnlyList<string> Files);

/// <summary>A trip file that was unpacked.</summary>
/// <param name="Name">The lake's name; empty where its files say none.</param>
public sealed record Unpacked(string Name);

/// <summary>Looks at files that were dropped.</summary>
/// <param name="Facts">What the user answered so far; null for nothing.</param>
public sealed record InspectFiles(NewLakeFacts? Facts = null) : Question<InspectView>("inspect", DeskJson.Default.InspectView)
{
    internal override InspectView AnsweredBy(LakeDesk desk) => desk.Inspect(this);
}

/// <summary>Makes a lake of files that were dropped and hands its files out.</summary>
/// <param name="Facts">What the user answered.</param>
public sealed record AdoptFiles(NewLakeFacts Facts) : Question<InspectView>("adopt", DeskJson.Default.InspectView)
{
    internal override InspectView AnsweredBy(LakeDesk desk) => desk.Adopt(this);
}

/// <summary>Unpacks a trip file of the app's own.</summary>
public sealed record UnpackTrip() : Question<Unpacked>("unpack", DeskJson.Default.Unpacked)
{
    internal override Unpacked AnsweredBy(LakeDesk desk) => desk.Unpack(this);
}

/// <summary>The lake as a trip file, with this device's records in it.</summary>
/// <param name="Records">The records.</param>
public sealed record ExportTrip(IReadOnlyList<RecordRow> Records) : Question<HandedOut>("export", DeskJson.Default.HandedOut)
{
    internal override HandedOut AnsweredBy(LakeDesk desk) => desk.Export(this);
}

/// <summary>Puts a jig into the tackle box, or changes one.</summary>
/// <param name="Was">The name it had; empty for a new one.</param>
/// <param name="Name">Its name from now on.</param>
/// <param name="WeightG">Its weight, g; null keeps it.</param>
/// <param name="Colour">Colour family; empty keeps it.</param>
public sealed record ChangeJig(string Was, string Name, double? WeightG, string Colour)
    : Question<TackleView>("jig", DeskJson.Default.TackleView)
{
    internal override TackleView AnsweredBy(LakeDesk desk) => desk.ChangeTackle(this);
}

/// <summary>Puts a trailer into the tackle box, or changes one.</summary>
/// <param name="Was">The name it had; empty for a new one.</param>
/// <param name="Name">Its name from now on.</param>
/// <param name="Colour">Colour family; empty keeps it.</param>
public sealed record ChangeTrailer(string Was, string Name, string Colour) : Question<TackleView>("trailer", DeskJson.Default.TackleView)
{
    internal override TackleView AnsweredBy(LakeDesk desk) => desk.ChangeTackle(this);
}

/// <summary>A drop of a jig timed on slack line.</summary>
/// <param name="Jig">The jig's name.</param>
/// <param name="DepthM">How deep it fell, m.</param>
/// <param name="Seconds">How long that took, s.</param>
/// <param name="At">When, with its offset.</param>
public sealed record TimeDrop(string Jig, double DepthM, double Seconds, string At)
    : Question<TackleView>("drop", DeskJson.Default.TackleView)
{
    internal override TackleView AnsweredBy(LakeDesk desk) => desk.ChangeTackle(this);
}

/// <summary>Puts weather that a host packed among the lake's files.</summary>
public sealed record TakeWeather() : Question<WeatherView>("takeWeather", DeskJson.Default.WeatherView)
{
    internal override WeatherView AnsweredBy(LakeDesk desk) => desk.TakeWeather(this);
}

/// <summary>Asks the open service for weather; it takes its time, see <see cref="LakeDesk.FetchWeatherAsync"/>.</summary>
/// <param name="Ask">What is asked.</param>
public sealed record FetchWeather(WeatherAsk Ask) : Question<WeatherView>("fetchWeather", DeskJson.Default.WeatherView)
{
    internal override WeatherView AnsweredBy(LakeDesk desk) =>
        throw new NotSupportedException("Weather is fetched with a client: see FetchWeatherAsync.");
}
