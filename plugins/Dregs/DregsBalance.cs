using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Dregs;

/// <summary>Dregs counted at three places: taken out by the filter, in its concentrate, in the cake.</summary>
public sealed class DregsBalance : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "dregs-balance",
        Title = "Dregs at the filter, in the concentrate and in the cake",
        System = "dregs",
        Purpose = "What the filter takes out of the liquor must come along in the concentrate and leave as cake. When the three part for days, dregs pile up or "
            + "go on with the liquor.",
        Formula = "from-filter = flow (raw-dregs - filtrate-dregs) / 1000\nfrom-concentrate = concentrate-flow concentrate-solids\n"
            + "from-cake = 1000 / 24 cake cake-solids / 100",
        Source = "Mass balance; method uncertainty 15 % each: common practice, no source",
        LeavesOut = "What the tanks and the centrifuge hold for a while, dissolved solids in the cake, and dregs that come back with the centrate.",
        Inputs =
        [
            new("flow", "m3/h", "green liquor through the filter", 0, 5000),
            new("raw-dregs", "mg/L", "dregs before the filter", 0, 20_000),
            new("filtrate-dregs", "mg/L", "dregs after the filter", 0, 20_000),
            new("concentrate-flow", "m3/h", "concentrate to the centrifuge", 0, 500) { Required = false },
            new("concentrate-solids", "g/L", "dregs in the concentrate", 0, 500) { Required = false },
            new("cake", "t/d", "cake, wet", 0, 1000) { Required = false },
            new("cake-solids", "%", "dry part of the cake", 0, 100) { Required = false },
        ],
        Outputs = [Place("from-filter", "taken out by the filter"), Place("from-concentrate", "in the concentrate"), Place("from-cake", "leaving as cake")],
    };

    public Outcome Run(Inputs inputs)
    {
        var (flow, raw, filtrate) = (inputs["flow"], inputs["raw-dregs"], inputs["filtrate-dregs"]);
        if (filtrate > raw)
        {
            return Worksheet.Refuse("filtrate-dregs", $"filtrate-dregs ({filtrate:0.#} mg/L) is above raw-dregs ({raw:0.#} mg/L): a filter adds none; the samples may be swapped");
        }

        var sheet = new Worksheet();
        var found = new List<double> { flow * (raw - filtrate) / 1000 };
        sheet.Give("from-filter", found[0], $"from-filter = {flow:0.##} x ({raw:0.#} - {filtrate:0.#}) / 1000 = {found[0]:0.0} kg/h");
        if (inputs.Find("concentrate-flow") is { } concentrate && inputs.Find("concentrate-solids") is { } solids)
        {
            found.Add(concentrate * solids);
            sheet.Give("from-concentrate", found[^1], $"from-concentrate = {concentrate:0.###} x {solids:0.##} = {found[^1]:0.0} kg/h");
        }

        if (inputs.Find("cake") is { } cake && inputs.Find("cake-solids") is { } dry)
        {
            found.Add(1000 / 24.0 * cake * dry / 100);
            sheet.Give("from-cake", found[^1], $"from-cake = 1000 / 24 x {cake:0.###} x {dry:0.#} / 100 = {found[^1]:0.0} kg/h");
        }

        Advise(sheet, inputs, found);
        return sheet.ToValues();
    }

    private static OutputInfo Place(string id, string where) => new(id, "kg/h", "dry dregs " + where)
    {
        Estimates = "dregs",
        MethodU = "15%",
        WhenOff = "dregs are piling up or being worked off between the three places",
    };

    // 30 %: common practice, no source.
    private static void Advise(Worksheet sheet, Inputs inputs, List<double> found)
    {
        if (inputs.Has("concentrate-flow") != inputs.Has("concentrate-solids"))
        {
            sheet.Note($"The dregs in the concentrate are left out: they need both concentrate-flow and concentrate-solids.");
        }

        if (inputs.Has("cake") != inputs.Has("cake-solids"))
        {
            sheet.Note($"The dregs in the cake are left out: they need both cake and cake-solids.");
        }

        if (found.Min() < 0.7 * found.Max())
        {
            sheet.Note($"The dregs differ by place ({string.Join(", ", found.Select(d => FormattableString.Invariant($"{d:0}")))} kg/h): they pile up or are worked off between the places; or a clarity test or the centrifuge's figures are off.");
        }
    }
}
