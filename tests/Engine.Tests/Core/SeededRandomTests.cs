using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Tests.Core;

public class SeededRandomTests
{
    [Fact]
    public void The_same_seed_gives_the_same_stream_and_another_seed_another()
    {
        SeededRandom a = new(7), b = new(7), c = new(8);
        uint[] first = [.. Enumerable.Range(0, 8).Select(_ => a.NextUInt())];
        Assert.Equal(first, Enumerable.Range(0, 8).Select(_ => b.NextUInt()));
        Assert.NotEqual(first, Enumerable.Range(0, 8).Select(_ => c.NextUInt()));
    }

    [Fact]
    public void Moments_of_the_laws_are_right()
    {
        SeededRandom random = new(1);
        const int n = 200_000;
        double mean = 0, square = 0, gamma = 0, poisson = 0, poissonSquare = 0;
        for (int i = 0; i < n; i++)
        {
            double z = random.NextNormal();
            mean += z / n;
            square += z * z / n;
            gamma += random.NextGamma(0.6) / n;
            int k = random.NextPoisson(47.5);
            poisson += (double)k / n;
            poissonSquare += (double)k * k / n;
        }

        Assert.Equal(0, mean, 0.01);
        Assert.Equal(1, square, 0.02);
        Assert.Equal(0.6, gamma, 0.01);
        Assert.Equal(47.5, poisson, 0.1);
        Assert.Equal(47.5, poissonSquare - (poisson * poisson), 1.0);
    }
}
