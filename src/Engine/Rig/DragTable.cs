namespace SecondShore.Engine.Rig;

/// <summary>
/// The line's drag laws of <see cref="LineDrag"/> by the square root of the Reynolds number, evenly spaced, to be read straight
/// between nodes: to 1e-5 of themselves from Reynolds number 0.1 up, below which a line's drag is nothing.
/// </summary>
internal static class DragTable
{
    /// <summary>Nodes for each unit of the root of the Reynolds number.</summary>
    public const double PerUnit = 250;

    /// <summary>Root of the Reynolds number up to which the table reaches; above, the laws are two products.</summary>
    public const double Most = 6.6;

    /// <summary>Normal drag coefficient times Reynolds number.</summary>
    public static readonly double[] Normal = Filled(root => LineDrag.NormalCoefficient(root * root) * root * root);

    /// <summary>Axial drag over pi times the dynamic viscosity.</summary>
    public static readonly double[] Axial = Filled(root => LineDrag.TangentialCoefficient(root * root, 1.0 / Math.PI));

    private static double[] Filled(Func<double, double> law)
    {
        double[] nodes = new double[(int)(Most * PerUnit) + 2];
        for (int i = 0; i < nodes.Length; i++) nodes[i] = law(i / PerUnit);
        return nodes;
    }
}
