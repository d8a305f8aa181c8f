namespace SecondShore.Engine.Season;

/// <summary>
/// The readings and casts a season is held against, in time order; absurd ones are refused with the reason.
/// Errors join instrument, place and model (season.md, "Readings").
/// </summary>
internal sealed class ObservationSet
{
    private ObservationSet(List<Observation> all, List<Finding> refused) => (All, Refused) = ([.. all.OrderBy(o => o.Step)], refused);

    /// <summary>Error of an oxygen meter, mg/L; what a column is not is in the slope (<see cref="ReadingsFilter"/>).</summary>
    public static readonly double OxygenSd = 1.0;

    /// <summary>Error of a lowered thermometer, K.</summary>
    public static readonly double TemperatureSd = 0.7;

    public IReadOnlyList<Observation> All { get; }

    public IReadOnlyList<Finding> Refused { get; }

    public static ObservationSet Build(OutlookRequest request, DateTimeOffset start, int atStep, IReadOnlyList<ArmShape> arms, WaterProfile? startProfile)
    {
        List<Observation> all = [];
        List<Finding> refused = [];
        int StepOf(DateTimeOffset at) => (int)Math.Floor((at - start).TotalHours);
        foreach (Reading reading in request.Readings)
        {
            int step = StepOf(reading.At);
            if (step < 0 || reading.At > request.At) continue;
            int arm = ArmIndex(request, reading, arms);
            if (Absurd(reading, arms[arm]) is { } why) refused.Add(SeasonFindings.LeftOut.Of(Told.Source(reading.Source), why));
            else all.Add(new Observation(Math.Min(step, atStep), arm, reading.Kind, reading.Value - Tilt(reading), reading.DepthM ?? 0, Sd(reading), reading.Source) { TiltM = Tilt(reading) });
        }

        foreach (WaterProfile profile in request.Profiles)
        {
            int step = StepOf(profile.At);
            if (step < 0 || profile.At > request.At || ReferenceEquals(profile, startProfile)) continue;
            AddCast(all, refused, profile, Math.Min(step, atStep), arms[0]);
            AddOxygen(all, profile, Math.Min(step, atStep), arms[0]);
        }

        return new ObservationSet(all, refused);
    }

    private static void AddCast(List<Observation> all, List<Finding> refused, WaterProfile profile, int step, ArmShape arm)
    {
        List<double> depth = [], temp = [];
        for (int i = 0; i < profile.DepthM.Length; i++)
        {
            double z = profile.DepthM[i], t = profile.TempC[i];
            if (!double.IsFinite(t) || z < 0 || z > arm.Basin.MaxDepthM * 1.05 || t is < -0.5 or > 45 || (depth.Count > 0 && z <= depth[^1])) continue;
            depth.Add(z);
            temp.Add(t);
        }

        if (depth.Count == 0)
        {
            if (profile.TempC.Any(double.IsFinite)) refused.Add(SeasonFindings.CastLeftOut.Of(Told.Source(profile.Source)));
            return;
        }

        WaterProfile clean = profile with { DepthM = [.. depth], TempC = [.. temp], OxygenMgPerL = null };
        int every = Math.Max(1, depth.Count / 8);
        int kept = (depth.Count + every - 1) / every;
        for (int i = 0; i < depth.Count; i += every)
        {
            bool last = i + every >= depth.Count;
            all.Add(new Observation(step, 0, ReadingKind.Temperature, temp[i], depth[i], TemperatureSd, profile.Source)
            {
                Weight = Math.Min(1.0, 3.0 / kept),
                Cast = last ? clean : null,
            });
        }
    }

    // As for temperatures: the depths are compared, then the run is moved toward the whole.
    private static void AddOxygen(List<Observation> all, WaterProfile profile, int step, ArmShape arm)
    {
        if (OxygenCast.Of(profile, arm.Basin.MaxDepthM * 1.05) is not { } cast) return;
        int count = cast.DepthM.Length, every = Math.Max(1, count / 8), kept = (count + every - 1) / every;
        for (int i = 0; i < count; i += every)
        {
            all.Add(new Observation(step, 0, ReadingKind.Oxygen, cast.MgPerL[i], cast.DepthM[i], OxygenSd, profile.Source)
            {
                Weight = Math.Min(1.0, 3.0 / kept),
                OxygenCast = i + every >= count ? cast : null,
                OfCast = true,
            });
        }
    }

    private static int ArmIndex(OutlookRequest request, Reading reading, IReadOnlyList<ArmShape> arms)
    {
        if (reading.Place is not { } place || request.ArmOf?.Invoke(place) is not { } name) return 0;
        for (int i = 0; i < arms.Count; i++)
            if (arms[i].Name == name) return i;
        return 0;
    }

    // The wind's share of a haze depth: never so much that nothing is left at rest.
    private static double Tilt(Reading reading) => reading.Kind == ReadingKind.HazeDepth ? Math.Clamp(reading.TiltM, -reading.Value, 0.8 * reading.Value) : 0;

    /// <summary>Error of a step seen on a sounder, m.</summary>
    public static double HazeSdM(double depthM) => 0.4 + (0.08 * depthM);

    private static double Sd(Reading reading) => reading.Kind switch
    {
        ReadingKind.SurfaceTemperature => 0.8,
        ReadingKind.Temperature => TemperatureSd,
        // Half of a tilt is doubt of its own: the wind over the water is not known better (choice).
        ReadingKind.HazeDepth => Math.Sqrt(Math.Pow(HazeSdM(reading.Value), 2) + (0.25 * Tilt(reading) * Tilt(reading))),
        ReadingKind.Secchi => 0.30,
        _ => OxygenSd,
    };

    private static Finding? Absurd(Reading reading, ArmShape arm)
    {
        double v = reading.Value, deepest = arm.Basin.MaxDepthM;
        if (!double.IsFinite(v)) return SeasonFindings.NotANumber.Of();
        return reading.Kind switch
        {
            ReadingKind.HazeDepth when v <= 0.2 || v > deepest => SeasonFindings.StepTooDeep.Of(Told.Difference(v), Told.Difference(deepest)),
            ReadingKind.SurfaceTemperature or ReadingKind.Temperature when v is < -0.5 or > 42 => SeasonFindings.NoSuchTemperature.Of(Told.Temperature(v)),
            ReadingKind.Temperature or ReadingKind.Oxygen when reading.DepthM is null => SeasonFindings.NoDepth.Of(),
            ReadingKind.Temperature or ReadingKind.Oxygen when reading.DepthM < 0 || reading.DepthM > deepest * 1.05 => SeasonFindings.BelowBottom.Of(Told.Difference(reading.DepthM.Value), Told.Difference(deepest)),
            ReadingKind.Oxygen when v is < 0 or > 25 => SeasonFindings.NoSuchOxygen.Of(v),
            ReadingKind.Secchi when v is <= 0 or > 60 => SeasonFindings.NoSuchSecchi.Of(Told.Difference(v)),
            _ => null,
        };
    }
}
