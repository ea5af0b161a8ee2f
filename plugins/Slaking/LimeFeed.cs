using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Slaking;

/// <summary>CaO fed with each cubic metre of green liquor, from the weigher and from the screw's speed.</summary>
public sealed class LimeFeed : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "lime-feed",
        Title = "Lime fed per cubic metre of green liquor",
        System = "lime",
        Purpose = "The dose as the feeders have it, in available CaO. Weigher and screw are two ways to know one thing: when they part, "
            + "a feeder is bridging, slipping or out of calibration.",
        Formula = "from-weigher = 1000 lime available-cao / 100 / flow\n"
            + "from-screw = 60 screw-speed screw-factor available-cao / 100 / flow",
        Source = "Mass balance; screw factor from a drop test: common practice, no source",
        LeavesOut = "Lime that leaves as dust or grits, and what lies between weigher and slaker.",
        Inputs =
        [
            new("lime", "t/h", "lime by the weigher", 0, 500) { Required = false },
            new("screw-speed", "rpm", "speed of the lime screw", 0, 1000) { Required = false },
            new("screw-factor", "kg/rev", "lime that one turn moves, by drop test", 0.001, 1000) { Required = false },
            new("available-cao", "%", "available CaO of the lime", 1, 100),
            new("flow", "m3/h", "green liquor to the slaker", 0, 5000),
        ],
        Outputs =
        [
            new("from-weigher", "kg/m3", "available CaO per m3 of green liquor, by the weigher") { Estimates = "cao-dose" },
            new("from-screw", "kg/m3", "available CaO per m3 of green liquor, by the screw")
            {
                Estimates = "cao-dose",
                MethodU = "3%",
                WhenOff = "the screw moves more or less with each turn than in the drop test: bridging, slip, or lime of another bulk density",
                Moves = ["screw-speed"],
                NeedsFitted = ["screw-factor"],
            },
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (cao, flow) = (inputs["available-cao"], inputs["flow"]);
        if (flow <= 0)
        {
            return Worksheet.Refuse("flow", $"flow is {flow:0.##} m3/h: a dose per cubic metre needs a flow above 0 m3/h; with no green liquor, no lime should run");
        }

        var weigher = inputs.Find("lime") * 1000 * cao / 100 / flow;
        var screw = inputs.Find("screw-speed") * inputs.Find("screw-factor") * 60 * cao / 100 / flow;
        if (weigher is null && screw is null)
        {
            return inputs.Has("screw-speed")
                ? Worksheet.Refuse("screw-factor", $"screw-factor is missing: with screw-speed, give the kg of lime that one turn moves")
                : Worksheet.Refuse("lime", $"lime is missing: give lime (t/h), or screw-speed (rpm) with screw-factor (kg/rev)");
        }

        var sheet = new Worksheet();
        if (weigher is { } byWeigher)
        {
            sheet.Give("from-weigher", byWeigher, $"from-weigher = 1000 x {inputs["lime"]:0.###} x {cao:0.##} / 100 / {flow:0.##} = {byWeigher:0.00} kg CaO/m3");
        }

        if (screw is { } byScrew)
        {
            sheet.Give("from-screw", byScrew,
                $"from-screw = 60 x {inputs["screw-speed"]:0.###} x {inputs["screw-factor"]:0.####} x {cao:0.##} / 100 / {flow:0.##} = {byScrew:0.00} kg CaO/m3");
        }

        else if (inputs.Has("screw-speed"))
        {
            sheet.Note($"The dose from the screw is left out: it needs screw-factor, from a drop test.");
        }

        Advise(sheet, weigher, screw);
        return sheet.ToValues();
    }

    private static void Advise(Worksheet sheet, double? weigher, double? screw)
    {
        // 5 %: common practice, no source.
        if (weigher is > 0 && Math.Abs((screw / weigher - 1) ?? 0) > 0.05)
        {
            sheet.Note($"Screw and weigher differ by {100 * (screw!.Value / weigher.Value - 1):+0.0;-0.0} %: lime bridging or slipping in the screw, or one of the two out of calibration.");
        }
    }
}
