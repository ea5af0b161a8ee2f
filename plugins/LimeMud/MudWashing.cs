using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.LimeMud;

/// <summary>Soda left in the mud after washing by dilution.</summary>
public sealed class MudWashing : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "mud-washing",
        Title = "Soda left in the mud after washing",
        System = "lime-mud-tank",
        Purpose = "Countercurrent washing: what part of the soda stays with the mud, given the wash for each cubic metre of liquor in the underflow.",
        Formula = "r = wash / underflow\nremaining = (r - 1) / (r^(stages + 1) - 1), 1 / (stages + 1) when r = 1\n"
            + "outlet-tta = wash-tta + remaining (inlet-tta - wash-tta)\nefficiency = 100 (1 - outlet-tta / inlet-tta)",
        Source = "Kremser's equation for equal underflows; above 98 % from white liquor filter to kiln feed: common practice, no source",
        LeavesOut = "Mixing that is not complete and soda bound in the solids, both of which leave more.",
        Inputs =
        [
            new("wash", "m3/h", "wash water", 0, 2000),
            new("underflow", "m3/h", "liquor that goes on with the mud", 0, 2000),
            new("stages", "1", "washing stages in a row", 1, 20) { Default = 1 },
            new("inlet-tta", "g/L Na2O", "total titratable alkali of the liquor in the mud before", 0, 250),
            new("wash-tta", "g/L Na2O", "total titratable alkali of the wash water", 0, 250) { Default = 0 },
        ],
        Outputs =
        [
            new("remaining", "1", "part of the soda above the wash's own that stays"),
            new("outlet-tta", "g/L Na2O", "total titratable alkali of the liquor in the mud after"),
            new("efficiency", "%", "soda taken out of the mud's liquor"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (wash, underflow, stages, inlet, fresh) = (inputs["wash"], inputs["underflow"], inputs["stages"], inputs["inlet-tta"], inputs["wash-tta"]);
        if (underflow <= 0)
        {
            return Worksheet.Refuse("underflow", $"underflow is {underflow:0.##} m3/h: a wash ratio needs one above 0 m3/h");
        }

        if (inlet <= 0)
        {
            return Worksheet.Refuse("inlet-tta", $"inlet-tta is {inlet:0.##} g/L: there is no soda to wash out");
        }

        var ratio = wash / underflow;
        var remaining = Remaining(ratio, stages);
        var outlet = fresh + (remaining * (inlet - fresh));
        var sheet = new Worksheet();
        sheet.Step($"r = {wash:0.##} / {underflow:0.##} = {ratio:0.0000}");
        sheet.Give("remaining", remaining, $"remaining = ({ratio:0.0000} - 1) / ({ratio:0.0000}^({stages:0.##} + 1) - 1) = {remaining:0.00000}");
        sheet.Give("outlet-tta", outlet, $"outlet-tta = {fresh:0.###} + {remaining:0.00000} x ({inlet:0.###} - {fresh:0.###}) = {outlet:0.000} g/L");
        sheet.Give("efficiency", 100 * (1 - (outlet / inlet)), $"efficiency = 100 x (1 - {outlet:0.000} / {inlet:0.000}) = {100 * (1 - (outlet / inlet)):0.00} %");
        if (fresh >= inlet)
        {
            sheet.Note($"The wash is as strong as the liquor in the mud, so that it washes nothing out: weak wash recirculated too far, or the two strengths swapped.");
        }

        return sheet.ToValues();
    }

    private static double Remaining(double ratio, double stages)
    {
        // Near 1 both terms vanish and only their limit is left.
        if (Math.Abs(ratio - 1) < 1e-9)
        {
            return 1 / (stages + 1);
        }

        return (ratio - 1) / (Math.Pow(ratio, stages + 1) - 1);
    }
}
