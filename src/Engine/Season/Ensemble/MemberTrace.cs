namespace SecondShore.Engine.Season;

/// <summary>What one member said: at the readings, at the outlook's instant, and day by day.</summary>
internal sealed class MemberTrace
{
    private readonly SeasonModel _model;
    private readonly double[] _topSum, _bottomSum;
    private int _samples;

    public MemberTrace(SeasonModel model, bool keep, int toStep)
    {
        _model = model;
        int arms = model.Arms.Count, days = keep ? (toStep / 24) + 1 : 0;
        Predicted = new double[model.Observations.All.Count];
        Slope = new double[Predicted.Length];
        Array.Fill(Predicted, double.NaN);
        Days = new ArmDays[arms];
        Now = new ArmNow[arms];
        (_topSum, _bottomSum) = (new double[arms], new double[arms]);
        for (int a = 0; a < arms; a++) Days[a] = new ArmDays(days, model.ProfileDepthsM.Length);
    }

    public double[] Predicted { get; }

    public double[] Slope { get; }

    public ArmDays[] Days { get; }

    public ArmNow[] Now { get; }

    /// <summary>The deepest arm's two layers from the outlook's instant on, hour by hour; NaN without a step.</summary>
    public List<(double UpperM, double Upper, double Lower)> Ahead { get; } = [];

    public static LastingLayers Layers(LakeColumn column, DaySkin skin)
    {
        // Water just above freezing over the warmer deep of winter is a layer of its own kind: the lake has turned.
        if (column.SurfaceTempC < column.TempC[^1]) return new LastingLayers(Stratification.None, double.NaN, 0);
        int n = column.Grid.Count - column.Top;
        Span<double> depth = stackalloc double[n];
        ReadOnlySpan<double> centre = column.Centres.Slice(column.Top, n);
        double dropM = column.DropM;
        for (int i = 0; i < n; i++) depth[i] = centre[i] - dropM;
        return DaySkin.Of(depth, column.TempC.Slice(column.Top, n), column.DensitiesNow().Slice(column.Top, n), skin.CoolestC);
    }

    public void KeepNow(LakeColumn[] columns, OxygenColumn[] oxygen, DaySkin[] skins)
    {
        for (int a = 0; a < columns.Length; a++)
        {
            LakeColumn column = columns[a];
            double[] depths = _model.ProfileDepthsM;
            LastingLayers lasting = Layers(column, skins[a]);
            ArmNow now = new()
            {
                Layers = lasting.Layers,
                Skin = lasting,
                FloorM = oxygen[a].FloorM(),
                TempC = new double[depths.Length],
                OxygenMgPerL = new double[depths.Length],
            };
            for (int i = 0; i < depths.Length; i++)
            {
                now.TempC[i] = column.TempAtC(depths[i]);
                now.OxygenMgPerL[i] = oxygen[a].AtMgPerL(depths[i]);
            }

            _model.Priors[a].Bias?.Correct(depths, now.TempC, _model.DayOfYear(_model.Timeline.AtStep));
            if (now.Layers.HasThermocline) now.Two = TwoLayersOf(column, now.Layers.ThermoclineM, skins[a].CoolestC);
            Now[a] = now;
        }
    }

    public void KeepAhead(LakeColumn column, DaySkin skin)
    {
        double thermoclineM = Layers(column, skin).Layers.ThermoclineM;
        Ahead.Add(double.IsNaN(thermoclineM) ? (double.NaN, 0, 0) : TwoLayersOf(column, thermoclineM, skin.CoolestC));
    }

    public void AddSample(LakeColumn[] columns, int step)
    {
        _ = step;
        for (int a = 0; a < columns.Length; a++)
        {
            _topSum[a] += columns[a].TempAtC(1.0);
            _bottomSum[a] += columns[a].TempAtC(0.95 * columns[a].DepthM);
        }

        _samples++;
    }

    public void KeepDay(LakeColumn[] columns, DaySkin[] skins, int day)
    {
        for (int a = 0; a < columns.Length; a++)
        {
            ArmDays d = Days[a];
            LakeColumn column = columns[a];
            if (day >= d.TopC.Length) continue;
            d.TopC[day] = _samples > 0 ? _topSum[a] / _samples : column.TempAtC(1.0);
            d.BottomC[day] = _samples > 0 ? _bottomSum[a] / _samples : column.TempAtC(0.95 * column.DepthM);
            d.ThermoclineM[day] = (float)Layers(column, skins[a]).Layers.ThermoclineM;
            int depths = _model.ProfileDepthsM.Length;
            Span<float> profile = d.TempC.AsSpan(day * depths, depths);
            column.TempsAtC(_model.ProfileDepthsM, profile);
            float uncorrected = profile[0];
            _model.Priors[a].Bias?.Correct(_model.ProfileDepthsM, profile, _model.DayOfYear(day * 24));
            d.SurfaceC[day] = (float)column.SurfaceTempC + (profile[0] - uncorrected);
            (_topSum[a], _bottomSum[a]) = (0, 0);
        }

        _samples = 0;
    }

    private static (double UpperM, double Upper, double Lower) TwoLayersOf(LakeColumn column, double thermoclineM, double coolestC)
    {
        double upper = 0, upperVolume = 0, lower = 0, lowerVolume = 0;
        for (int i = column.Top; i < column.Grid.Count; i++)
        {
            double density = Water.FreshWater.DensityKgPerM3(DaySkin.LastingC(column.TempC[i], coolestC));
            double volume = column.LayerVolumesM3[i];
            if (column.LayerDepthM(i) < thermoclineM) (upper, upperVolume) = (upper + (volume * density), upperVolume + volume);
            else (lower, lowerVolume) = (lower + (volume * density), lowerVolume + volume);
        }

        return upperVolume > 0 && lowerVolume > 0 ? (thermoclineM, upper / upperVolume, lower / lowerVolume) : (double.NaN, 0, 0);
    }
}

/// <summary>One arm of one member, day by day from the timeline's start.</summary>
internal sealed class ArmDays(int days, int depths)
{
    public double[] TopC { get; } = Missing(days);

    public double[] BottomC { get; } = Missing(days);

    public float[] SurfaceC { get; } = new float[days];

    public float[] ThermoclineM { get; } = new float[days];

    public float[] TempC { get; } = new float[days * depths];

    private static double[] Missing(int count)
    {
        double[] values = new double[count];
        Array.Fill(values, double.NaN);
        return values;
    }
}

/// <summary>One arm of one member at the outlook's instant.</summary>
internal sealed class ArmNow
{
    public required Stratification Layers { get; init; }

    public required LastingLayers Skin { get; init; }

    public required double FloorM { get; init; }

    public required double[] TempC { get; init; }

    public required double[] OxygenMgPerL { get; init; }

    public (double UpperM, double Upper, double Lower) Two { get; set; } = (double.NaN, 0, 0);
}
