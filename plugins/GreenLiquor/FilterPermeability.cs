using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.GreenLiquor;

/// <summary>How open a pressure filter is, freed of pressure and temperature.</summary>
public sealed class FilterPermeability : ICalculation
{
    private const double ReferenceTemperature = 90;

    public CalculationInfo Info { get; } = new()
    {
        Id = "filter-permeability",
        Title = "Flux and permeability of a pressure filter",
        System = "green-liquor-filter",
        Purpose = "Flow per area and pressure, brought to the viscosity at 90 degC, so that today compares with the day after the last wash. Below 50 to 60 % of "
            + "clean a wash is usually due. Serves the green liquor filter and the white liquor filter.",
        Formula = "flux = flow / area\npermeability = flux viscosity(temperature) / viscosity(90) / pressure-difference\n"
            + "relative = 100 permeability / clean-permeability\n"
            + "viscosity(t) / viscosity(90) = exp(1675.7 y + 1.0211e6 y^2), y = 1 / (t + 273.15) - 1 / 363.15",
        Source = "Darcy's law; viscosity of a liquor like green liquor from the model of Laliberte (0.75, 0.86 and 1.21 mPa s at 90, 80 and 60 degC); "
            + "wash below 50 to 60 %: common practice, no source",
        LeavesOut = "That a dregs cake packs: flux goes with about the 0.4th power of pressure, so figures compare best at one pressure difference.",
        Inputs =
        [
            new("flow", "m3/h", "filtrate", 0, 5000),
            new("area", "m2", "filter area in use", 0.1, 10_000),
            new("pressure-difference", "bar", "across the filter", 0, 20),
            new("temperature", "degC", "of the liquor", 40, 110),
            new("clean-permeability", "m3/m2 h bar", "permeability after the last wash", 0.0001, 1000) { Required = false },
        ],
        Outputs =
        [
            new("flux", "m3/m2 h", "filtrate per area"),
            new("permeability", "m3/m2 h bar", "flux per bar, at the viscosity of 90 degC"),
            new("relative", "%", "of the permeability after the last wash"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (flow, area, pressure, temperature) = (inputs["flow"], inputs["area"], inputs["pressure-difference"], inputs["temperature"]);
        if (pressure <= 0)
        {
            return Worksheet.Refuse("pressure-difference", $"pressure-difference is {pressure:0.###} bar: a permeability needs one above 0 bar");
        }

        var sheet = new Worksheet();
        var flux = flow / area;
        var viscosity = Viscosity(temperature);
        var permeability = flux * viscosity / pressure;
        sheet.Give("flux", flux, $"flux = {flow:0.##} / {area:0.##} = {flux:0.0000} m3/m2 h");
        sheet.Step($"viscosity at {temperature:0.#} degC is {viscosity:0.000} times that at 90 degC");
        sheet.Give("permeability", permeability, $"permeability = {flux:0.0000} x {viscosity:0.000} / {pressure:0.###} = {permeability:0.0000} m3/m2 h bar");
        if (inputs.Find("clean-permeability") is { } clean)
        {
            var relative = 100 * permeability / clean;
            sheet.Give("relative", relative, $"relative = 100 x {permeability:0.0000} / {clean:0.0000} = {relative:0.0} %");
            Advise(sheet, relative);
        }

        return sheet.ToValues();
    }

    private static double Viscosity(double celsius)
    {
        var y = (1 / (celsius + 273.15)) - (1 / (ReferenceTemperature + 273.15));
        return Math.Exp((1675.7 * y) + (1.0211e6 * y * y));
    }

    private static void Advise(Worksheet sheet, double relative)
    {
        if (relative < 60)
        {
            sheet.Note($"{relative:0} % of clean: the cloth or membrane is fouled, and a wash is usually due below 50 to 60 %; or the flow meter reads low, or fewer elements are in use than entered.");
        }
        else if (relative > 115)
        {
            sheet.Note($"{relative:0} % of clean: a leak past the filter (see the filtrate's clarity), or a clean figure taken before the last wash.");
        }
    }
}
