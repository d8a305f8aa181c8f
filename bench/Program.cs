return SecondShore.Bench.Runner.Run(args);
