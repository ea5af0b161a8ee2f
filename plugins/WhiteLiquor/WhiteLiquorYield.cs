using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.WhiteLiquor;

/// <summary>White liquor made of each cubic metre of green liquor.</summary>
public sealed class WhiteLiquorYield : ICalculation
{
    /// <summary>Liquor after the reaction per m3 of green liquor at 90 degC, both hot, with 8 kg/m3 evaporated.</summary>
    private const double AfterReaction = 0.976;

    public CalculationInfo Info { get; } = new()
    {
        Id = "white-liquor-yield",
        Title = "White liquor per cubic metre of green liquor",
        System = "white-liquor-filter",
        Purpose = "Lime binds water and mud carries liquor off, so a little less white liquor comes out than green went in. More says dilution, less says loss "
            + "or a meter.",
        Formula = "yield = wl-flow / gl-flow\ncake-liquor = 1000 mud (100 - cake-solids) / cake-solids / liquor-density\n"
            + "expected-yield = 0.976 - cake-liquor / gl-flow",
        Source = "Volume balance; 0.976 m3 of liquor after the reaction computed from IUPAC atomic weights and Laliberte 2009 for 120 g/L, 82 % causticity, "
            + "8 kg/m3 evaporated; usual band 0.85 to 1.05: common practice, no source",
        LeavesOut = "Wash water that goes into the white liquor (0.95 to 1.0 is then usual) and what the tanks between take up or give.",
        Inputs =
        [
            new("gl-flow", "m3/h", "green liquor to the slaker", 0, 5000),
            new("wl-flow", "m3/h", "white liquor made", 0, 5000),
            new("mud", "t/h", "lime mud from the filter, dry", 0, 500),
            new("cake-solids", "%", "dry part of the mud as it leaves the filter", 0, 100),
            new("liquor-density", "kg/m3", "of the liquor in the mud", 900, 1300) { Default = 1100 },
        ],
        Outputs =
        [
            new("yield", "1", "white liquor over green liquor, by volume"),
            new("expected-yield", "1", "the same without dilution, from the balance"),
            new("cake-liquor", "m3/h", "liquor that the mud carries off"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (green, white, mud, solids) = (inputs["gl-flow"], inputs["wl-flow"], inputs["mud"], inputs["cake-solids"]);
        if (green <= 0)
        {
            return Worksheet.Refuse("gl-flow", $"gl-flow is {green:0.##} m3/h: a yield needs a flow above 0 m3/h");
        }

        if (solids <= 0)
        {
            return Worksheet.Refuse("cake-solids", $"cake-solids is {solids:0.#} %: a cake has more than 0 and at most 100 %");
        }

        var sheet = new Worksheet();
        var found = white / green;
        var cake = 1000 * mud * (100 - solids) / solids / inputs["liquor-density"];
        var expected = AfterReaction - (cake / green);
        sheet.Give("yield", found, $"yield = {white:0.##} / {green:0.##} = {found:0.0000}");
        sheet.Give("cake-liquor", cake, $"cake-liquor = 1000 x {mud:0.###} x (100 - {solids:0.#}) / {solids:0.#} / {inputs["liquor-density"]:0.#} = {cake:0.00} m3/h");
        sheet.Give("expected-yield", expected, $"expected-yield = {AfterReaction} - {cake:0.00} / {green:0.##} = {expected:0.0000}");
        Advise(sheet, found, expected);
        return sheet.ToValues();
    }

    private static void Advise(Worksheet sheet, double found, double expected)
    {
        if (found > 1.05)
        {
            sheet.Note($"{found:0.00} m3 of white liquor from one of green is more than wash returned explains (usually up to 1.0): dilution, a tank being emptied, or a flow meter.");
        }
        else if (found < 0.85)
        {
            sheet.Note($"{found:0.00} m3 of white liquor from one of green is less than the balance ({expected:0.00}): liquor lost or held in a tank, a wet cake, or a flow meter.");
        }
    }
}
