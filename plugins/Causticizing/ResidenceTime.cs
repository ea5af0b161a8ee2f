using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Causticizing;

/// <summary>How long liquor stays in a tank.</summary>
public sealed class ResidenceTime : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "residence-time",
        Title = "Time that liquor stays in a tank",
        System = "causticizers",
        Purpose = "Volume over flow, for any tank of the line: the slaker usually 15 to 20 minutes, the causticizers 1.5 to 3 hours in all.",
        Formula = "time = 60 level / 100 capacity / flow",
        Source = "Mean residence time of a stirred tank; usual times: common practice, no source",
        LeavesOut = "Short-circuiting and settled solids, both of which make the true time shorter.",
        Inputs =
        [
            new("level", "%", "level of the tank", 0, 110),
            new("capacity", "m3", "volume of the tank at 100 %", 0.1, 20_000),
            new("flow", "m3/h", "flow through it", 0, 5000),
        ],
        Outputs = [new("time", "min", "mean time in the tank")],
    };

    public Outcome Run(Inputs inputs)
    {
        var (level, capacity, flow) = (inputs["level"], inputs["capacity"], inputs["flow"]);
        if (flow <= 0)
        {
            return Worksheet.Refuse("flow", $"flow is {flow:0.##} m3/h: a time in the tank needs a flow above 0 m3/h");
        }

        var sheet = new Worksheet();
        var time = 60 * level / 100 * capacity / flow;
        sheet.Give("time", time, $"time = 60 x {level:0.#} / 100 x {capacity:0.#} / {flow:0.##} = {time:0.0} min");
        return sheet.ToValues();
    }
}
