using SecondShore.Host.Verbs;

return await HostVerbs.RunAsync(args);
