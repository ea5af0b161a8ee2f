using CsCheck;
using Logbook.Plugins.Causticizing;
using Logbook.Plugins.Laboratory;
using Logbook.Plugins.LimeMud;
using Logbook.Plugins.Slaking;
using Logbook.Plugins.WhiteLiquor;

namespace Logbook.Plugins.Tests;

/// <summary>
/// Sodium, sulphur, calcium and carbonate over random plants: what goes in comes out, in kmol per m3 of green liquor, to
/// one part in a thousand million. Molar masses written down here from the IUPAC atomic weights.
/// </summary>
public sealed class BalanceTests
{
    private const double Na2O = 61.97853856, CaO = 56.077, CaCO3 = 100.086, CaOH2 = 74.092, Closed = 1e-9;

    private static readonly Gen<Plant> Plants = Gen.Select(
        Gen.Double[60, 150], Gen.Double[0.10, 0.40], Gen.Double[0.05, 0.30], Gen.Double[0.5, 0.95], Gen.Double[0.70, 0.98],
        (tta, sulphidity, green, target, available) => new Plant(tta, sulphidity, green, target, available));

    [Fact]
    public void Lime_turns_as_many_moles_of_carbonate_as_it_has_of_calcium() => Plants.Sample(plant =>
    {
        var cao = Trial.Value(new LimeDose(), "cao-needed", plant.Dose());

        var calcium = cao / CaO;
        var converted = plant.Carbonate - (plant.Rest * (1 - plant.Target));
        Assert.Equal(calcium, converted, Closed);
    });

    [Fact]
    public void The_titration_finds_the_sodium_sulphur_and_carbonate_that_were_put_in() => Plants.Sample(plant =>
    {
        // one mole of acid for a mole of hydroxide; sulphide gives half at A and half at B, carbonate both at C
        var (sulphide, carbonate) = (plant.Tta * plant.Sulphidity / Na2O, plant.Rest * (1 - plant.Target));
        var hydroxide = 2 * plant.Rest * plant.Target;
        var a = (hydroxide + sulphide) * 5 / 0.5;
        var b = a + (sulphide * 5 / 0.5);
        var c = b + (2 * carbonate * 5 / 0.5);

        var values = Trial.Values(new AlkaliTitration(), ("a", a), ("b", b), ("c", c), ("acid", 0.5), ("sample", 5)).Numbers;

        Assert.Equal(plant.Tta, values["tta"], Closed * 100);
        Assert.Equal(values["tta"], values["naoh"] + values["na2s"] + values["na2co3"], Closed * 100);
        Assert.Equal(sulphide, values["na2s"] / Na2O, Closed);
        Assert.Equal(carbonate, values["na2co3"] / Na2O, Closed);
        Assert.Equal(100 * plant.Target, values["causticity"], Closed * 100);
        Assert.Equal(values["aa"], values["naoh"] + values["na2s"], Closed * 100);
        Assert.Equal(values["ea"], values["aa"] * (1 - (values["sulphidity-aa"] / 200)), Closed * 100);
        Assert.Equal(values["activity"], values["sulphidity-tta"] + ((1 - (values["sulphidity-tta"] / 100)) * values["causticity"]), Closed * 100);
    });

    [Fact]
    public void The_dose_that_a_target_asks_for_is_the_dose_that_the_target_tells() => Plants.Sample(plant =>
    {
        var asked = Trial.Value(new LimeDose(), "cao-needed", plant.Dose());
        var told = Trial.Value(new LimeFromCausticity(), "cao-dose", [.. plant.GreenLiquor(), ("causticity", 100 * plant.Target)]);

        Assert.Equal(asked, told, Closed);
    });

    [Fact]
    public void A_liming_ratio_lets_the_train_reach_just_the_target() => Plants.Sample(plant =>
    {
        var ratio = Trial.Value(new LimeDose(), "liming-ratio", plant.Dose());
        var ceiling = Trial.Value(new CausticizingTrain(), "ceiling",
            ("inlet-causticity", 100 * plant.Green), ("equilibrium", 100), ("flow", 300), ("volume-1", 100), ("volume-2", 100), ("volume-3", 100),
            ("gl-causticity", 100 * plant.Green), ("liming-ratio", ratio));

        Assert.Equal(100 * plant.Target, ceiling, Closed * 100);
    });

    [Fact]
    public void Calcium_fed_comes_out_as_mud_and_back_from_the_kiln() => Gen.Select(Plants, Gen.Double[0, 0.1], Gen.Double[0, 0.05]).Sample((plant, freeShare, gritsShare) =>
    {
        var cao = Trial.Value(new LimeDose(), "cao-needed", plant.Dose());
        var (free, inert) = (freeShare * cao, cao * ((1 / plant.Available) - 1));
        var grits = gritsShare * inert;

        var made = Trial.Value(new MudFromLime(), "made", ("flow", 1000), ("cao-dose", cao), ("free-cao", free), ("inert", inert), ("grits", grits));

        var (calcite, hydroxide) = ((cao - free) / CaO * CaCO3, free / CaO * CaOH2);
        Assert.Equal(made, calcite + hydroxide + inert - grits, Closed * made);

        // the same mud fed to the kiln as a slurry of 30 % gives back the calcite's calcium
        var density = 1 / ((0.3 / 2710) + (0.7 / 980));
        var kiln = Trial.Values(new MudToKiln(), ("flow", made / 0.3 / density * 1000), ("density", density), ("calcium-carbonate", 100 * calcite / made)).Numbers;
        Assert.Equal(made, kiln["feed"], Closed * made);
        Assert.Equal(cao - free, kiln["kiln-cao"], Closed * made);
    });

    [Fact]
    public void Free_lime_begins_where_the_equilibrium_ends() => Gen.Select(Plants, Gen.Double[0.8, 1.2]).Sample((plant, share) =>
    {
        var limit = CaO * plant.Carbonate * 0.88;
        var values = Trial.Values(new FreeLime(), ("cao-dose", share * limit), ("na2co3", plant.Carbonate * Na2O), ("equilibrium-conversion", 88)).Numbers;

        Assert.Equal(Math.Max(0, share - 1) * limit / CaO, values["free-calcium-hydroxide"] / CaOH2, Closed);
        Assert.Equal(100 * (share - 1), values["over-liming"], 1e-7);
    });

    [Fact]
    public void White_liquor_and_the_liquor_in_the_mud_make_up_what_left_the_reaction() =>
        Gen.Select(Gen.Double[100, 500], Gen.Double[5, 60], Gen.Double[40, 80], Gen.Double[1000, 1200]).Sample((green, mud, solids, density) =>
        {
            var values = Trial.Values(new WhiteLiquorYield(), ("gl-flow", green), ("wl-flow", green), ("mud", mud), ("cake-solids", solids), ("liquor-density", density)).Numbers;

            var wetCake = mud / (solids / 100);
            Assert.Equal(wetCake - mud, values["cake-liquor"] * density / 1000, Closed * wetCake);
            Assert.Equal(0.976 * green, (values["expected-yield"] * green) + values["cake-liquor"], Closed * green);
        });

    // Everything at once, with the volumes of one temperature: what green liquor and lime bring is in white liquor, cake and mud.
    [Fact]
    public void Sodium_sulphur_calcium_and_carbonate_close_over_the_whole_line() =>
        Gen.Select(Plants, Gen.Double[200, 400], Gen.Double[50, 80]).Sample((plant, green, solids) =>
        {
            var cao = Trial.Value(new LimeDose(), "cao-needed", plant.Dose());
            var made = Trial.Value(new MudFromLime(), "made", ("flow", green), ("cao-dose", cao), ("inert", 0), ("grits", 0));
            var yields = Trial.Values(new WhiteLiquorYield(), ("gl-flow", green), ("wl-flow", green), ("mud", made), ("cake-solids", solids)).Numbers;
            var leaves = (yields["expected-yield"] * green) + yields["cake-liquor"];

            // What the burette would show of that liquor: 5 mL of it, 0.5 mol/L acid.
            var perLitre = green / leaves;
            var (hydroxide, sulphide, carbonate) = (2 * plant.Rest * plant.Target * perLitre, plant.Tta * plant.Sulphidity / Na2O * perLitre, plant.Rest * (1 - plant.Target) * perLitre);
            var a = 10 * (hydroxide + sulphide);
            var white = Trial.Values(new AlkaliTitration(), ("a", a), ("b", a + (10 * sulphide)), ("c", a + (10 * sulphide) + (20 * carbonate)), ("acid", 0.5), ("sample", 5)).Numbers;

            var scale = green * plant.Tta;
            Assert.Equal(green * plant.Tta, leaves * white["tta"], Closed * scale);                                                   // sodium, kg/h Na2O
            Assert.Equal(green * plant.Tta * plant.Sulphidity, leaves * white["na2s"], Closed * scale);                               // sulphur
            Assert.Equal(green * plant.Carbonate, (leaves * white["na2co3"] / Na2O) + (1000 * made / CaCO3), Closed * scale);         // carbonate, kmol/h
            Assert.Equal(green * cao / CaO, 1000 * made / CaCO3, Closed * scale);                                                     // calcium
        });

    /// <summary>Shares, not percent; kmol of Na2O per m3 where it says so.</summary>
    private sealed record Plant(double Tta, double Sulphidity, double Green, double Target, double Available)
    {
        /// <summary>Hydroxide and carbonate together, kmol of Na2O per m3.</summary>
        public double Rest => Tta / Na2O * (1 - Sulphidity);

        public double Carbonate => Rest * (1 - Green);

        public (string, double)[] GreenLiquor() => [("tta", Tta), ("sulphidity-tta", 100 * Sulphidity), ("gl-causticity", 100 * Green)];

        public (string, double)[] Dose() => [.. GreenLiquor(), ("target-causticity", 100 * Target), ("available-cao", 100 * Available)];
    }
}
