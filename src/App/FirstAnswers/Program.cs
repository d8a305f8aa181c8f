using System.Text.Json;
using SecondShore.App.Compute;
using SecondShore.App.Compute.Views;
using SecondShore.App.FirstAnswers;

if (args.Length != 2)
{
    Console.Error.WriteLine("Usage: SecondShore.FirstAnswers TRIPFILE OUT.json");
    return 2;
}

KeptTray tray = new();
LakeDesk desk = new(tray);
desk.Answer("unpack", "{}", new Dictionary<string, byte[]> { [Path.GetFileName(args[0])] = File.ReadAllBytes(args[0]) });
string about = JsonSerializer.Serialize(new AskAbout(), ViewsJson.Default.AskAbout);
Dictionary<string, byte[]> files = tray.Files;
using FileStream stream = File.Create(args[1]);
using Utf8JsonWriter writer = new(stream);
writer.WriteStartObject();
foreach (string verb in (string[])["open", "outlook", "shore"])
{
    writer.WritePropertyName(verb);
    writer.WriteRawValue(desk.Answer(verb, about, files));
}

writer.WriteEndObject();
return 0;
