using System.Numerics;
using PureHDF;
using SecondShore.Formats.Surveys.Arrays;
using SecondShore.Formats.Surveys.Hdf5;
using SecondShore.TestKit;

namespace SecondShore.Formats.Tests.Surveys;

/// <summary>Our reader of HDF5 holds memory and length before it reads; an independent one says what the arrays hold.</summary>
public class IndependentHdfTests
{
    [Theory]
    [InlineData("pond-4.nc")]
    [InlineData("pond-latest.nc")]
    [InlineData("pond-dense.nc")]
    [InlineData("pond.bag")]
    public void Every_array_holds_what_an_independent_reader_finds_in_it(string name)
    {
        byte[] bytes = SurveySamples.PondFile(name);
        using var theirs = H5File.Open(new MemoryStream(bytes));
        int compared = 0;
        foreach (FiledArray ours in HdfFile.Arrays(bytes))
        {
            IH5Dataset dataset = theirs.Dataset(ours.Name);
            Assert.Equal(dataset.Space.Dimensions.Select(d => (long)d), ours.Shape);
            if (Numbers(dataset) is not { } found) continue;
            double[] numbers = ours.Numbers(TestContext.Current.CancellationToken);
            // Where the file holds nothing we say so; the other reader gives the file's one value for it.
            bool[] held = Array.ConvertAll(numbers, n => !double.IsNaN(n));
            Assert.Equal(found.Where((_, i) => held[i]), numbers.Where((_, i) => held[i]));
            Assert.True(found.Where((_, i) => !held[i]).Distinct().Count() <= 1, ours.Name);
            compared += held.Count(h => h);
        }

        Assert.True(compared >= 400, $"only {compared} numbers were compared; the pond alone has 400 wet cells");
    }

    private static double[]? Numbers(IH5Dataset dataset) => (dataset.Type.Class, dataset.Type.Size) switch
    {
        (H5DataTypeClass.FloatingPoint, 4) => As<float>(dataset),
        (H5DataTypeClass.FloatingPoint, 8) => As<double>(dataset),
        (H5DataTypeClass.FixedPoint, 2) => As<short>(dataset),
        (H5DataTypeClass.FixedPoint, 4) => As<int>(dataset),
        _ => null,
    };

    private static double[] As<T>(IH5Dataset dataset)
        where T : unmanaged, INumber<T> => Array.ConvertAll(dataset.Read<T[]>(), double.CreateChecked);
}
