using SecondShore.Demo.Terrain;
using SecondShore.Engine.Basin.Shape;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Bench.Shapes;

/// <summary>Lakes of the generator, several seeds of each kind.</summary>
internal static class MadeShapes
{
    private static readonly (string Name, LakeRecipe Recipe)[] Kinds =
        [("pond", LakeRecipe.Pond), ("reservoir", LakeRecipe.SmallReservoir), ("long-reservoir", LakeRecipe.LargeReservoir),
            ("ice", LakeRecipe.IceLake)];

    /// <summary>Seeds of a kind.</summary>
    public const int Seeds = 4;

    public static IReadOnlyList<(ShapeLake Lake, int Seed)> All()
    {
        (ShapeLake?, int)[] lakes = new (ShapeLake?, int)[Kinds.Length * Seeds];
        Parallel.For(0, lakes.Length, i =>
        {
            (string name, LakeRecipe recipe) = Kinds[i / Seeds];
            int seed = 401 + (i % Seeds);
            BasinKind kind = recipe.Origin == LakeOrigin.IceBasins ? BasinKind.Natural : BasinKind.Dammed;
            lakes[i] = (ShapeLake.Of($"made-{name}-{seed}", kind, LakeGenerator.Generate((ulong)seed, recipe)
                .ToGrid(new GeoPoint(44, -90))), seed);
        });
        return [.. lakes.Where(l => l.Item1 is not null).Select(l => (l.Item1!, l.Item2))];
    }
}
