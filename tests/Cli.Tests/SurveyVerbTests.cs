using SecondShore.TestKit;

namespace SecondShore.Cli.Tests;

/// <summary>Depths by a link, into a lake's folder whole or not at all.</summary>
public sealed class SurveyVerbTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly ServiceStandIn _service = DepthServiceStandIn.Start();

    public void Dispose()
    {
        _service.Dispose();
        _folder.Dispose();
    }

    private string Lake()
    {
        _folder.Write("lake.json",
            FormattableString.Invariant(
            $"{{\"name\":\"Ferncombe Water\",\"latitude_deg\":{OpenMapStandIn.LatDeg},\"longitude_deg\":{OpenMapStandIn.LonDeg},\"note_of_mine\":1}}"));
        return _folder.Path;
    }

    [Fact]
    public void Soundings_come_into_the_folder_and_the_lake_is_read_with_them()
    {
        Terminal.Run run = Terminal.Do("survey", Lake(), _service.At("wfs").AbsoluteUri);
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        Assert.Contains("goes: the lake's box 44.70, -84.33 to 44.77, -84.26 (two decimals), for 'Lake depths'.", run.Err,
            StringComparison.Ordinal);
        Assert.Contains("Open Licence 3", run.Err, StringComparison.Ordinal);
        Assert.Contains("soundings, 60 of them, ", run.Out, StringComparison.Ordinal);
        Assert.Equal(["lake.json", "sources.md", "survey/depths-lake-depths.geojson"],
            Directory.GetFiles(_folder.Path, "*", SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(_folder.Path, f).Replace('\\', '/')).Order(StringComparer.Ordinal));
        Assert.Contains("note_of_mine", File.ReadAllText(_folder.File("lake.json")), StringComparison.Ordinal);
        Assert.Equal(ExitCodes.Done, Terminal.Do("check", _folder.Path).Code);
    }

    [Fact]
    public void Several_layers_are_chosen_by_number()
    {
        string link = _service.At("ogc").AbsoluteUri;
        Terminal.Run open = Terminal.Do("survey", Lake(), link);
        Assert.Equal(ExitCodes.BadUsage, open.Code);
        Assert.Contains("  1  Lake depths", open.Err, StringComparison.Ordinal);
        Assert.Equal(ExitCodes.Done, Terminal.Do("survey", _folder.Path, link, "--layer", "1").Code);
    }

    [Fact]
    public void What_does_not_come_whole_leaves_the_folder_as_it_was()
    {
        string before = File.ReadAllText(Path.Combine(Lake(), "lake.json"));
        _service.Faults.Enqueue(DepthServiceStandIn.Answer(new ServiceQuestion("/rest/services/Depths/FeatureServer/0", "", "")));
        _service.Faults.Enqueue(
            DepthServiceStandIn.Answer(new ServiceQuestion("/rest/services/Depths/FeatureServer/0/query", "?resultOffset=0", "")));
        _service.Faults.Enqueue(ServiceReply.Of("{", status: 400));
        Terminal.Run run = Terminal.Do("survey", _folder.Path, _service.At("rest/services/Depths/FeatureServer/0").AbsoluteUri);
        Assert.Equal(ExitCodes.CouldNotCompute, run.Code);
        Assert.Contains("put the file into the lake's folder.", run.Err, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(_folder.File("lake.json")));
        Assert.Single(Directory.GetFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void The_catalogue_is_listed_and_one_of_ones_own_is_taken()
    {
        Terminal.Run list = Terminal.Do("survey");
        Assert.Equal(ExitCodes.Done, list.Code);
        Assert.Contains("not tried from here", list.Out, StringComparison.Ordinal);
        string mine = _folder.Write("mine.json", $$"""{"services":[{"id":"shire","address":"{{_service.At("files/depths.csv")}}"}]}""");
        Terminal.Run run = Terminal.Do("survey", Lake(), "shire", "--catalogue", mine);
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        Assert.Equal(ExitCodes.BadUsage, Terminal.Do("survey", _folder.Path, "nowhere").Code);
    }
}
