using CsCheck;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Basin.Gridding;

public class NearestCellTests
{
    [Fact]
    public void Nearest_marked_cells_are_those_that_a_search_of_all_finds() =>
        Gen.Select(Gen.Int[1, 14], Gen.Int[1, 14], Gen.Int[0, 1000]).Hold((nx, ny, seed) =>
        {
            bool[] marked = new bool[nx * ny];
            for (int i = 0; i < marked.Length; i++) marked[i] = ((i + seed) * 2654435761u >> 7) % 9 == 0;
            (int[] nearest, float[] squared) = NearestCell.Of(marked, nx, ny);
            for (int i = 0; i < marked.Length; i++)
            {
                int best = int.MaxValue;
                for (int j = 0; j < marked.Length; j++)
                    if (marked[j]) best = Math.Min(best, Squared(i, j, nx));
                if (best == int.MaxValue) { Assert.Equal(-1, nearest[i]); continue; }
                Assert.Equal(best, squared[i]);
                Assert.True(marked[nearest[i]] && Squared(i, nearest[i], nx) == best);
            }
        }, 300);

    private static int Squared(int i, int j, int nx) => (((i % nx) - (j % nx)) * ((i % nx) - (j % nx))) + (((i / nx) - (j / nx)) * ((i / nx) - (j / nx)));
}
