using System.CommandLine;
using SecondShore.Answers.Rig;
using SecondShore.Engine.Rig;

namespace SecondShore.Cli.Verbs;

/// <summary>Options of <c>rig</c>, and the request that they make.</summary>
internal sealed class RigOptions
{
    public Argument<string?> LakePath { get; } = new("LAKE")
    {
        Description = "A lake folder or trip file, for its tackle.json and units, and for --stop; left out, the trade's usual sizes.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    public Option<string?> Units { get; } = SharedOptions.Units();

    public Option<bool> Json { get; } = SharedOptions.Json();

    /// <summary>Number of a stop in the day's plan.</summary>
    public Option<int?> Stop { get; } = new("--stop") { Description = "A stop of the day's plan by its number: depth, bottom, water and current are taken from there and then." };

    /// <summary>Day of that plan.</summary>
    public Option<string?> Date { get; } = SharedOptions.Date();

    /// <summary>Folder for the card.</summary>
    public Option<string?> Out { get; } = new("--out") { Description = "Folder for rig-card.html: a pocket card to print, with the line under water to scale." };

    /// <summary>Members of the ensemble behind that plan.</summary>
    public Option<int> Members { get; } = SharedOptions.Members();

    /// <summary>Seed of the doubt.</summary>
    public Option<ulong> Seed { get; } = new("--seed") { Description = "Seed of the doubt: the same seed gives the same answer.", DefaultValueFactory = _ => 1 };

    private readonly Option<string?> _depth = new("--depth") { Description = "Depth, such as 27ft or 8.2m; a bare number is feet, or metres with --units metric. Needed unless --stop gives it." };
    private readonly Option<string?> _speed = new("--speed") { Description = "Drag speed over the bottom, such as 0.6mph, 1km/h, 0.3m/s; left out, 0.6 mph." };
    private readonly Option<string?> _line = new("--line") { Description = "A line of tackle.json by name, or such as '15 lb fluorocarbon' or '30 lb braid 0.28 mm'." };
    private readonly Option<string?> _lineOut = new("--line-out") { Description = "Line out from the rod tip; left out, twice the depth below it." };
    private readonly Option<string?> _weight = new("--weight") { Description = "Also say what this weight would do, such as 1/2oz or 14g." };
    private readonly Option<string?> _material = new("--material") { Description = "lead, tungsten, bismuth, brass, steel, tin or zinc." };
    private readonly Option<string?> _head = new("--head") { Description = "ball, broad, slim, pointed or flat." };
    private readonly Option<string?> _trailer = new("--trailer") { Description = "none, slim, bulky, flapping or swimming." };
    private readonly Option<string?> _bottom = new("--bottom") { Description = "mud, clay, sand, gravel, rock or wood." };
    private readonly Option<string?> _current = new("--current") { Description = "Current the way the boat goes, such as 0.1mph; against it is negative." };
    private readonly Option<string?> _crossCurrent = new("--cross-current") { Description = "Current across the track, to the left positive." };
    private readonly Option<string?> _tip = new("--rod-tip") { Description = "Height of the rod tip over the water; left out, 2 ft." };
    private readonly Option<double> _confidence = new("--confidence") { Description = "How surely it must stay down, 0.5 to 0.99.", DefaultValueFactory = _ => 0.9 };
    private readonly Option<bool> _workedIn = new("--worked-in") { Description = "The boat stands and the jig is worked in, not dragged behind." };
    private readonly Option<bool> _timber = new("--timber") { Description = "Brush, stumps or timber stand near." };
    private readonly Option<bool> _anySize = new("--any-size") { Description = "Choose among the trade's sizes although tackle.json lists jigs." };
    public void AddTo(Command command)
    {
        command.Arguments.Add(LakePath);
        foreach (Option option in new Option[]
        {
            _depth, _speed, _line, _lineOut, _weight, _material, _head, _trailer, _bottom, _current, _crossCurrent, _tip, _confidence,
            _workedIn, _timber, _anySize, Stop, Date, Members, Seed, Out, Units, Json,
        })
        {
            command.Options.Add(option);
        }
    }

    /// <summary>The request of a command line.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="units">Units of bare numbers and of the words.</param>
    /// <param name="tackle">What the user owns.</param>
    /// <param name="stop">What a stop of the plan asks; null by hand. Options given win over it.</param>
    /// <exception cref="BadUsageException">An option cannot be understood.</exception>
    public RigRequest Request(ParseResult parsed, UnitSystem units, Tackle tackle, RigRequest? stop)
    {
        double confidence = parsed.GetValue(_confidence);
        if (confidence is not (>= 0.5 and <= 0.99)) throw new BadUsageException($"--confidence {confidence} is out of range; use 0.5 to 0.99.");
        double? along = Speed(parsed, _current, units), across = Speed(parsed, _crossCurrent, units);
        double? depthM = LengthOf(parsed, _depth, units), speedMps = Speed(parsed, _speed, units);
        bool kindGiven = parsed.GetValue(_material) is not null || parsed.GetValue(_head) is not null || parsed.GetValue(_trailer) is not null;
        RigRequest asked = stop ?? new RigRequest
        {
            DepthM = depthM ?? throw new BadUsageException("--depth is needed, such as --depth 27ft; or name a stop of the day's plan with LAKE and --stop 1."),
            SpeedMps = 0.6 * Engine.Core.Units.Speed.MpsPerMph,
        };
        return asked with
        {
            DepthM = depthM ?? asked.DepthM,
            DepthSdM = depthM is null ? asked.DepthSdM : null,
            SpeedMps = speedMps ?? asked.SpeedMps,
            Line = LineOf(parsed, tackle),
            LineOutM = LengthOf(parsed, _lineOut, units),
            AskedKg = Weight(parsed, units),
            Kind = kindGiven ? Kind(parsed) : null,
            AnySize = parsed.GetValue(_anySize) || kindGiven,
            Bottom = parsed.GetValue(_bottom) is null ? asked.Bottom : Bottom(parsed),
            Current = along is null && across is null ? asked.Current : CurrentProfile.Uniform(along ?? 0, across ?? 0),
            CurrentSdMps = along is null && across is null ? asked.CurrentSdMps : null,
            TipHeightM = LengthOf(parsed, _tip, units),
            Rule = new HoldRule(confidence, HoldRule.Usual.LeastShare, HoldRule.Usual.FeelShare),
            Motion = parsed.GetValue(_workedIn) ? TowMotion.WorkedIn : TowMotion.BehindBoat,
            NearTimber = asked.NearTimber || parsed.GetValue(_timber),
            Seed = parsed.GetValue(Seed),
            Tackle = tackle,
            Units = units,
        };
    }

    private FishingLine? LineOf(ParseResult parsed, Tackle tackle)
    {
        string? text = parsed.GetValue(_line);
        if (text is null) return null;
        return QuantityText.Line(text, tackle.Lines)
            ?? throw new BadUsageException($"--line {text} is not understood; write it like '15 lb fluorocarbon', '30 lb braid 0.28 mm', or a name in tackle.json.");
    }

    private Jig Kind(ParseResult parsed)
    {
        string material = parsed.GetValue(_material) ?? "lead", head = parsed.GetValue(_head) ?? "broad", trailer = parsed.GetValue(_trailer) ?? "slim";
        return Jig.Usual(0.014, JigMaterial.Find(material) ?? throw Unknown("--material", material, JigMaterial.All.Select(m => m.Name))) with
        {
            Head = TackleMapper.Head(head) ?? throw Unknown("--head", head, ["ball", "broad", "slim", "pointed", "flat"]),
            Trailer = TackleMapper.TrailerKind(trailer) ?? throw Unknown("--trailer", trailer, Trailer.Kinds.Select(t => t.Name)),
        };
    }

    private BottomKind Bottom(ParseResult parsed)
    {
        string? text = parsed.GetValue(_bottom);
        if (text is null) return BottomKind.Unknown;
        return text.Trim().ToUpperInvariant() switch
        {
            "MUD" or "SILT" => BottomKind.Mud,
            "CLAY" => BottomKind.Clay,
            "SAND" => BottomKind.Sand,
            "GRAVEL" or "COBBLE" or "SHELL" => BottomKind.Gravel,
            "ROCK" => BottomKind.Rock,
            "WOOD" or "BRUSH" or "TIMBER" or "STUMPS" => BottomKind.Wood,
            _ => throw Unknown("--bottom", text, ["mud", "clay", "sand", "gravel", "rock", "wood"]),
        };
    }

    private double? Weight(ParseResult parsed, UnitSystem units)
    {
        string? text = parsed.GetValue(_weight);
        if (text is null) return null;
        return QuantityText.TryMassKg(text, units, out double kg) && kg is >= 0.0005 and <= 1
            ? kg
            : throw new BadUsageException($"--weight {text} is no jig's weight; write it like 3/4oz or 21g.");
    }

    private static double? LengthOf(ParseResult parsed, Option<string?> option, UnitSystem units) => LengthOf(option.Name, parsed.GetValue(option), units);

    private static double? LengthOf(string name, string? text, UnitSystem units)
    {
        if (text is null) return null;
        return QuantityText.TryLengthM(text, units, out double metres) ? metres : throw new BadUsageException($"{name} {text} is no length; write it like 27ft or 8.2m.");
    }

    private static double? Speed(ParseResult parsed, Option<string?> option, UnitSystem units)
    {
        string? text = parsed.GetValue(option);
        if (text is null) return null;
        return QuantityText.TrySpeedMps(text, units, out double mps) ? mps : throw new BadUsageException($"{option.Name} {text} is no speed; write it like 0.6mph, 1km/h or 0.3m/s.");
    }

    private static BadUsageException Unknown(string option, string text, IEnumerable<string> known) =>
        new($"{option} {text} is not known; use {string.Join(", ", known)}.");
}
