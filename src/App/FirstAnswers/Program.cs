using System.Text.Json;
using SecondShore.Desk;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.FirstAnswers;

if (args.Length != 2)
{
    Console.Error.WriteLine("Usage: SecondShore.FirstAnswers TRIPFILE OUT.json");
    return 2;
}

KeptTray tray = new();
LakeDesk desk = new(tray);
desk.Ask(new UnpackTrip(), new Dictionary<string, byte[]> { [Path.GetFileName(args[0])] = File.ReadAllBytes(args[0]) });
desk.Lay("demo", tray.Files);
FirstAnswer[] answers = [Answer("open", new OpenLake([])), Answer("outlook", new FindOutlook()), Answer("shore", new RankPlaces())];
File.WriteAllBytes(args[1], JsonSerializer.SerializeToUtf8Bytes(answers, DeskJson.Default.IReadOnlyListFirstAnswer));
return 0;

FirstAnswer Answer<T>(string name, Question<T> question)
    where T : class
{
    tray.Drawing = null;
    return new FirstAnswer(name, question.WriteAnswer(desk.Ask(question)), tray.Drawing);
}
