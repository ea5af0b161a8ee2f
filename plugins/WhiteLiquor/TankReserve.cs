using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.WhiteLiquor;

/// <summary>What a tank holds and how long it lasts.</summary>
public sealed class TankReserve : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "tank-reserve",
        Title = "What a tank holds, and hours until it is empty or full",
        System = "white-liquor-tank",
        Purpose = "For every tank of the line: how long the digester or the slaker can go on when a flow stops, and when a tank would run over.",
        Formula = "volume = capacity level / 100\nsoda = volume tta / 1000\n"
            + "hours-to-empty = (level - heel) capacity / (100 (outflow - inflow)), when more goes out than in\n"
            + "hours-to-full = (full - level) capacity / (100 (inflow - outflow)), when more comes in than goes out",
        Source = "Volume balance of an upright tank",
        LeavesOut = "Changes of the flows, a level meter on foam, and tanks that are not upright cylinders. Not a safeguard against overfilling.",
        Inputs =
        [
            new("level", "%", "level of the tank", 0, 110),
            new("capacity", "m3", "volume of the tank at 100 %", 0.1, 20_000),
            new("heel", "%", "level below which nothing can be drawn", 0, 100) { Default = 0 },
            new("full", "%", "level at which it counts as full", 0, 110) { Default = 100 },
            new("tta", "g/L Na2O", "total titratable alkali of what is in it, at its temperature", 0, 250) { Required = false },
            new("inflow", "m3/h", "into the tank", 0, 5000) { Required = false },
            new("outflow", "m3/h", "out of the tank", 0, 5000) { Required = false },
        ],
        Outputs =
        [
            new("volume", "m3", "what is in it"),
            new("soda", "t Na2O", "soda in it"),
            new("hours-to-empty", "h", "until the heel is reached"),
            new("hours-to-full", "h", "until it is full"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (level, capacity, heel, full) = (inputs["level"], inputs["capacity"], inputs["heel"], inputs["full"]);
        if (heel >= full)
        {
            return Worksheet.Refuse("heel", $"heel ({heel:0.#} %) is not below full ({full:0.#} %)");
        }

        var sheet = new Worksheet();
        var volume = capacity * level / 100;
        sheet.Give("volume", volume, $"volume = {capacity:0.#} x {level:0.#} / 100 = {volume:0.0} m3");
        if (inputs.Find("tta") is { } tta)
        {
            sheet.Give("soda", volume * tta / 1000, $"soda = {volume:0.0} x {tta:0.##} / 1000 = {volume * tta / 1000:0.000} t Na2O");
        }

        if (inputs.Has("inflow") || inputs.Has("outflow"))
        {
            Hours(sheet, inputs, inputs.Find("inflow") ?? 0, inputs.Find("outflow") ?? 0);
        }

        return sheet.ToValues();
    }

    /// <summary>A flow that is not given counts as stopped: the hours then tell how long the tank lasts alone.</summary>
    private static void Hours(Worksheet sheet, Inputs inputs, double inflow, double outflow)
    {
        var (level, capacity, heel, full) = (inputs["level"], inputs["capacity"], inputs["heel"], inputs["full"]);
        if (!inputs.Has("inflow") || !inputs.Has("outflow"))
        {
            sheet.Step($"{(inputs.Has("inflow") ? "outflow" : "inflow")} is not given and counts as 0 m3/h");
        }

        if (outflow > inflow)
        {
            var hours = Math.Max(0, level - heel) * capacity / (100 * (outflow - inflow));
            sheet.Give("hours-to-empty", hours, $"hours-to-empty = ({level:0.#} - {heel:0.#}) x {capacity:0.#} / (100 x ({outflow:0.##} - {inflow:0.##})), not below 0 = {hours:0.0} h");
            if (hours < 2)
            {
                sheet.Note($"Less than two hours to the heel at these flows ({hours:0.0} h); a level meter on foam or a stuck one would show the same.");
            }
        }
        else if (inflow > outflow)
        {
            var hours = Math.Max(0, full - level) * capacity / (100 * (inflow - outflow));
            sheet.Give("hours-to-full", hours, $"hours-to-full = ({full:0.#} - {level:0.#}) x {capacity:0.#} / (100 x ({inflow:0.##} - {outflow:0.##})), not below 0 = {hours:0.0} h");
            if (hours < 2)
            {
                sheet.Note($"Less than two hours until it is full at these flows ({hours:0.0} h); foam under the level meter would show the same.");
            }
        }
        else
        {
            sheet.Step($"in and out are equal: the level stays");
        }
    }
}
