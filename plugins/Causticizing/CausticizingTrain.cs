using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Causticizing;

/// <summary>The causticity that three stirred tanks in a row should give.</summary>
public sealed class CausticizingTrain : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "causticizing-train",
        Title = "Causticity along the three causticizers",
        System = "causticizers",
        Purpose = "Each tank covers a share of the way to the ceiling, which is the equilibrium or what the lime allows, whichever is lower. A tank that "
            + "falls short points to short-circuiting, a sunken level or slow lime; one that falls back points to samples.",
        Formula = "ceiling = lower of equilibrium and gl-causticity + (100 - gl-causticity) liming-ratio\n"
            + "minutes(n) = 60 volume(n) / flow\n"
            + "causticity(n) = ceiling - (ceiling - causticity(n - 1)) / (1 + rate minutes(n)), starting at inlet-causticity\n"
            + "distance(n) = measured - expected",
        Source = "First order towards equilibrium in stirred tanks, exact for each tank; rate 0.04 per minute: common practice, no source",
        LeavesOut = "That the reaction slows as the lime is coated, and channels in the tanks. The rate is the site's to fit.",
        Inputs =
        [
            new("inlet-causticity", "%", "causticity at the slaker's overflow", 0, 100),
            new("equilibrium", "%", "causticity at equilibrium", 1, 100),
            new("rate", "1/min", "rate of the approach", 0.0001, 2) { Default = 0.04 },
            new("flow", "m3/h", "liquor through the tanks", 0, 5000),
            new("volume-1", "m3", "liquor in causticizer 1", 0, 5000),
            new("volume-2", "m3", "liquor in causticizer 2", 0, 5000),
            new("volume-3", "m3", "liquor in causticizer 3", 0, 5000),
            new("gl-causticity", "%", "causticity of the green liquor", 0, 95) { Required = false },
            new("liming-ratio", "1", "available CaO per carbonate of the green liquor, in moles", 0, 2) { Required = false },
            new("causticity-1", "%", "measured after causticizer 1", 0, 100) { Required = false },
            new("causticity-2", "%", "measured after causticizer 2", 0, 100) { Required = false },
            new("causticity-3", "%", "measured after causticizer 3", 0, 100) { Required = false },
        ],
        Outputs =
        [
            new("causticity-1", "%", "expected after causticizer 1"),
            new("causticity-2", "%", "expected after causticizer 2"),
            new("causticity-3", "%", "expected after causticizer 3"),
            new("ceiling", "%", "where the reaction would end"),
            new("retention", "min", "time in the three tanks"),
            new("distance-1", "points", "measured less expected after causticizer 1"),
            new("distance-2", "points", "measured less expected after causticizer 2"),
            new("distance-3", "points", "measured less expected after causticizer 3"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (inlet, equilibrium, flow) = (inputs["inlet-causticity"], inputs["equilibrium"], inputs["flow"]);
        if (flow <= 0)
        {
            return Worksheet.Refuse("flow", $"flow is {flow:0.##} m3/h: a retention needs a flow above 0 m3/h");
        }

        if (inlet > equilibrium)
        {
            return Worksheet.Refuse("inlet-causticity", $"inlet-causticity ({inlet:0.##} %) is above equilibrium ({equilibrium:0.##} %): no liquor gets there");
        }

        var sheet = new Worksheet();
        var ceiling = Ceiling(sheet, inputs, inlet, equilibrium);
        var (expected, retention) = (inlet, 0.0);
        for (var tank = 1; tank <= 3; tank++)
        {
            var minutes = 60 * inputs[$"volume-{tank}"] / flow;
            var before = expected;
            expected = ceiling - ((ceiling - before) / (1 + (inputs["rate"] * minutes)));
            retention += minutes;
            sheet.Give($"causticity-{tank}", expected,
                $"causticity-{tank} = {ceiling:0.00} - ({ceiling:0.00} - {before:0.00}) / (1 + {inputs["rate"]:0.####} x {minutes:0.0}) = {expected:0.00} %");
            if (inputs.Find($"causticity-{tank}") is { } measured)
            {
                sheet.Give($"distance-{tank}", measured - expected, $"distance-{tank} = {measured:0.00} - {expected:0.00} = {measured - expected:0.00} points");
            }
        }

        sheet.Give("retention", retention, $"retention = 60 x ({inputs["volume-1"]:0.#} + {inputs["volume-2"]:0.#} + {inputs["volume-3"]:0.#}) / {flow:0.##} = {retention:0.0} min");
        Advise(sheet, inputs, expected, retention);
        return sheet.ToValues();
    }

    private static double Ceiling(Worksheet sheet, Inputs inputs, double inlet, double equilibrium)
    {
        var ceiling = equilibrium;
        if (inputs.Find("gl-causticity") is { } green && inputs.Find("liming-ratio") is { } ratio)
        {
            var byLime = green + ((100 - green) * ratio);
            ceiling = Math.Max(inlet, Math.Min(equilibrium, byLime));
            sheet.Step($"the lime allows {green:0.##} + (100 - {green:0.##}) x {ratio:0.0000} = {byLime:0.00} %");
            if (byLime < inlet)
            {
                sheet.Note($"The lime allows only {byLime:0.0} %, less than the {inlet:0.0} % already at the slaker's overflow: a sample or the liming ratio does not belong to this liquor.");
            }
        }

        sheet.Give("ceiling", ceiling, $"ceiling = {ceiling:0.00} % (equilibrium {equilibrium:0.00} %)");
        return ceiling;
    }

    // 4 points: three times what the readings leave uncertain; common practice, no source.
    private static void Advise(Worksheet sheet, Inputs inputs, double expected, double retention)
    {
        double[] way = [inputs["inlet-causticity"], .. new[] { "causticity-1", "causticity-2", "causticity-3" }.Where(inputs.Has).Select(r => inputs[r])];
        if (way.Zip(way.Skip(1)).Any(step => step.Second < step.First - 0.5))
        {
            sheet.Note($"Causticity falls along the train, which the reaction does not do: samples swapped or one that took up carbon dioxide, or the line was still moving.");
        }

        if (inputs.Find("causticity-3") < expected - 4)
        {
            sheet.Note($"The last tank is {expected - inputs["causticity-3"]:0.0} points short of what {retention:0} min should give: short-circuiting, a low level, weak stirring or slow lime; or a rate that does not fit this mill.");
        }
    }
}
