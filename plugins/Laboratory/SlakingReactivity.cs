using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Laboratory;

/// <summary>How fast and how far a lime heats water when it slakes.</summary>
public sealed class SlakingReactivity : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "slaking-reactivity",
        Title = "Slaking rate of the lime",
        System = "lime",
        Purpose = "Soft-burnt lime slakes within minutes, hard-burnt lime goes on slaking in the causticizers or leaves as grits. A sudden rise of "
            + "reactivity can also carry the slaker to its boiling point at an unchanged dose.",
        Formula = "rise-3min = after-3min - start\nrise-total = final - start\n"
            + "high: 40 K within 3 min and done within 10; medium: 40 K in all and done within 20; else low",
        Source = "Procedure: ASTM C110 slaking rate; classes from memory of AWWA B202",
        LeavesOut = "Heat lost by the flask, and the difference of other procedures' amounts of lime and water.",
        Inputs =
        [
            new("start", "degC", "water before the lime", 0, 60),
            new("after-30s", "degC", "after 30 seconds", 0, 110) { Required = false },
            new("after-3min", "degC", "after 3 minutes", 0, 110),
            new("final", "degC", "highest temperature", 0, 110),
            new("complete", "min", "time until it rose no more", 0, 240),
        ],
        Outputs =
        [
            new("rise-3min", "K", "rise within 3 minutes"),
            new("rise-total", "K", "rise in all"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (start, early, three, final, complete) = (inputs["start"], inputs.Find("after-30s"), inputs["after-3min"], inputs["final"], inputs["complete"]);
        if (three < start)
        {
            return Worksheet.Refuse("after-3min", $"after-3min ({three:0.#} degC) is below start ({start:0.#} degC): slaking gives heat, it cools nothing");
        }

        if (early < start || early > three)
        {
            return Worksheet.Refuse("after-30s", $"after-30s ({early:0.#} degC) lies outside start to after-3min ({start:0.#} to {three:0.#} degC)");
        }

        if (final < three)
        {
            return Worksheet.Refuse("final", $"final ({final:0.#} degC) is below after-3min ({three:0.#} degC): it is the highest temperature reached");
        }

        var sheet = new Worksheet();
        sheet.Give("rise-3min", three - start, $"rise-3min = {three:0.0} - {start:0.0} = {three - start:0.0} K");
        sheet.Give("rise-total", final - start, $"rise-total = {final:0.0} - {start:0.0} = {final - start:0.0} K, complete after {complete:0.#} min");
        Classify(sheet, three - start, final - start, complete);
        return sheet.ToValues();
    }

    private static void Classify(Worksheet sheet, double three, double total, double complete)
    {
        if (three >= 40 && complete <= 10)
        {
            sheet.Note($"High reactivity: {three:0} K within 3 min and done in {complete:0.#} min.");
        }
        else if (total >= 40 && complete <= 20)
        {
            sheet.Note($"Medium reactivity: {total:0} K in all, done in {complete:0.#} min; harder burnt than high, or the sample has slaked in air.");
        }
        else
        {
            sheet.Note($"Low reactivity: {total:0} K in {complete:0.#} min; hard-burnt or unburnt lime, or a sample that has slaked in air. Expect slow causticizing and more grits.");
        }
    }
}
