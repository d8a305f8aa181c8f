using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

public class KilledTabTests(BrowserFixture fixture)
{
    private static readonly int Kills = 50;

    [Fact]
    public async Task A_tab_killed_while_it_writes_loses_nothing_that_was_acknowledged()
    {
        IBrowserContext device = await fixture.DeviceAsync(390, 844);
        // Only the store is under test: the engine's worker stays out.
        await device.RouteAsync("**/js/worker.js", route => route.AbortAsync());
        HashSet<string> acknowledged = [];
        await device.ExposeBindingAsync("acknowledged", (BindingSource _, string id) =>
        {
            lock (acknowledged) acknowledged.Add(id);
        });
        Random chance = new(1907);
        for (int kill = 0; kill < Kills; kill++)
        {
            IPage page = await device.NewPageAsync();
            await page.GotoAsync(fixture.Address + "/health");
            int run = kill, before;
            lock (acknowledged) before = acknowledged.Count;
            _ = page.EvaluateAsync("""
                async (run) => {
                  const store = await import('/js/app.js');
                  for (let i = 0; ; i++) {
                    const id = `${String(run).padStart(3, '0')}-${String(i).padStart(6, '0')}`;
                    await store.addRecordsJson(JSON.stringify([{ id, lake: 'x', kind: 'note', at: '2026-10-06T12:00:00Z',
                      replaces: null, removed: false, json: '{}' }]));
                    await acknowledged(id);
                  }
                }
                """, run).ContinueWith(ended => ended.Exception, TaskScheduler.Default);
            for (int wait = 0; wait < 600; wait++)
            {
                lock (acknowledged) if (acknowledged.Count > before + 1) break;
                await Task.Delay(25, TestContext.Current.CancellationToken);
            }

            await Task.Delay(chance.Next(0, 40), TestContext.Current.CancellationToken);
            ICDPSession session = await device.NewCDPSessionAsync(page);
            _ = session.SendAsync("Page.crash").ContinueWith(ended => ended.Exception, TaskScheduler.Default);
            await Task.Delay(30, TestContext.Current.CancellationToken);
            await page.CloseAsync();
        }

        IPage reader = await device.NewPageAsync();
        await reader.GotoAsync(fixture.Address + "/health");
        string[] kept = await reader.EvaluateAsync<string[]>("async () => JSON.parse(await (await import('/js/app.js')).recordsJson('x')).map(r => r.id)");
        lock (acknowledged)
        {
            Assert.True(acknowledged.Count >= Kills, $"Only {acknowledged.Count} records were acknowledged in {Kills} tabs.");
            Assert.Empty(acknowledged.Except(kept));
        }

        await device.CloseAsync();
    }
}
