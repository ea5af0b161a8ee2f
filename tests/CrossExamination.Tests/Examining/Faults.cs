using CrossExamination.Tests.Plants;

namespace CrossExamination.Tests.Examining;

/// <summary>A wrong reading: from its hour on the readings are moved by so much for each unit of size and sign.</summary>
/// <param name="Kind">In words.</param>
/// <param name="Culprit">Its place among the parameters.</param>
/// <param name="Put">Changes the readings; the number is sign times size (0.5, 1 or 2).</param>
/// <param name="OneWay">True when only one direction makes sense.</param>
internal sealed record Fault(string Kind, int Culprit, Action<double[], double> Put, bool OneWay = false)
{
    public static readonly double[] Sizes = [0.5, 1, 2];

    public static IReadOnlyList<Fault> All(SiteRelations relations) =>
    [
        Add("white A 0.5 mL", Tag.WhiteA, .5), Add("white B 0.5 mL", Tag.WhiteB, .5), Add("white C 1 mL", Tag.WhiteC, 1),
        Add("green A 0.5 mL", Tag.GreenA, .5), Add("green B 0.5 mL", Tag.GreenB, .5), Add("green C 1 mL", Tag.GreenC, 1),
        new("acid strength 1 %", relations.Acid, (r, by) =>
        {
            foreach (var tag in new[] { Tag.WhiteA, Tag.WhiteB, Tag.WhiteC, Tag.GreenA, Tag.GreenB, Tag.GreenC, Tag.WeakWash })
            {
                r[(int)tag] *= 1 + (.01 * by);
            }
        }),
        Share("green flow -5 %", Tag.GreenFlow, -.05), Share("green flow -10 %", Tag.GreenFlow, -.1),
        Share("lime weigher 5 %", Tag.LimeWeigher, .05), Share("lime weigher 10 %", Tag.LimeWeigher, .1), Share("screw 10 %", Tag.LimeScrew, .1),
        Add("laboratory CaO 3 points", Tag.LimeCao, 3),
        Add("temperature to the slaker 2 K", Tag.GreenTemperature, 2), Add("temperature to the slaker 4 K", Tag.GreenTemperature, 4),
        Add("slaker temperature 2 K", Tag.SlakerTemperature, 2), Add("slaker temperature 4 K", Tag.SlakerTemperature, 4),
        Add("green density 8 kg/m3", Tag.GreenDensity, 8), Add("mud density 25 kg/m3", Tag.MudDensity, 25),
        Add("weak wash density 5 kg/m3", Tag.WeakWashDensity, 5), Share("mud flow 7 %", Tag.MudFlow, .07), Add("weak wash 2 g/L", Tag.WeakWash, 2),
        Share("grits doubled", Tag.Grits, 1) with { OneWay = true },
    ];

    private static Fault Add(string kind, Tag tag, double by) => new(kind, (int)tag, (r, size) => r[(int)tag] += by * size);

    private static Fault Share(string kind, Tag tag, double by) => new(kind, (int)tag, (r, size) => r[(int)tag] *= 1 + (by * size), OneWay: by < 0);
}

/// <summary>A real change of the plant.</summary>
/// <param name="Kind">In words.</param>
/// <param name="Change">What happens.</param>
internal sealed record PlantStep(string Kind, Func<Process, Process> Change)
{
    /// <summary>Steps that keep the physics: nothing may be accused.</summary>
    public static readonly IReadOnlyList<PlantStep> Keeping =
    [
        new("strength +8 g/L", p => p with { Strength = p.Strength + 8 }), new("strength -12 g/L", p => p with { Strength = p.Strength - 12 }),
        new("flow -60 m3/h", p => p with { Flow = p.Flow - 60 }), new("flow +40 m3/h", p => p with { Flow = p.Flow + 40 }),
        new("available CaO -5 points", p => p with { Available = p.Available - 5 }),
        new("liquor 6 K colder", p => p with { GreenTemperature = p.GreenTemperature - 6, TankTemperature = p.TankTemperature - 6 }),
        new("causticity -4 points", p => p with { Causticity = p.Causticity - .04 }), new("causticity +3 points", p => p with { Causticity = p.Causticity + .03 }),
        new("sulphidity +3 points", p => p with { Sulphidity = p.Sulphidity + .03 }), new("green causticity +4 points", p => p with { GreenCausticity = p.GreenCausticity + .04 }),
        new("weak wash +6 g/L", p => p with { WeakWash = p.WeakWash + 6 }), new("mud density +40 kg/m3", p => p with { MudDensity = p.MudDensity + 40 }),
        new("grits +150 kg/h", p => p with { Grits = p.Grits + 150 }),
    ];

    /// <summary>Steps that break the simple physics: a method may be accused, a reading only with its method.</summary>
    public static readonly IReadOnlyList<PlantStep> Breaking =
    [
        new("free lime 4 kg/m3", p => p with { FreeLime = p.FreeLime + 4 }), new("dilution 3 %", p => p with { Dilution = p.Dilution + .03 }),
        new("evaporation +4 kg/m3", p => p with { Evaporation = p.Evaporation + 4 }), new("lime 80 K hotter", p => p with { LimeTemperature = p.LimeTemperature + 80 }),
        new("mud into store 10 %", p => p with { ToStore = p.ToStore + .1 }), new("dead load 8 kg/m3", p => p with { DeadLoad = p.DeadLoad + 8 }),
        new("sulphide lost 2 points", p => p with { SulphideLost = p.SulphideLost + .02 }), new("screw filled 10 % less", p => p with { ScrewFill = p.ScrewFill * .9 }),
    ];
}
