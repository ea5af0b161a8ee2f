using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.LimeMud;

/// <summary>Dry mud fed to the kiln, and the lime that comes of it.</summary>
public sealed class MudToKiln : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "mud-to-kiln",
        Title = "Dry mud to the kiln, and the lime that comes of it",
        System = "lime-mud-filter",
        Purpose = "The lime's way back: mud from the slaker, over the mud tank, to the kiln. Feed and the change of what the tank holds are the mud made, which "
            + "must agree with the lime used.",
        Formula = Slurry.Formula + "\nfeed = flow density share / 1000\nmade = feed + storage-change\n"
            + "kiln-cao = 0.56029 feed calcium-carbonate / 100\nkiln-product = kiln-cao + feed (1 - calcium-carbonate / 100)",
        Source = Slurry.Source + "; lime of calcite computed from IUPAC atomic weights; method uncertainty 1.5 % (5 % where the storage change is a guess): common practice, no source",
        LeavesOut = "Dust from the kiln, calcite left in the product, and lime bought or thrown away.",
        Inputs =
        [
            new("flow", "m3/h", "mud slurry to the filter", 0, 1000),
            .. Slurry.Roles,
            new("calcium-carbonate", "%", "calcite of the dry mud", 0, 100) { Default = 95 },
            new("storage-change", "t/h", "dry mud that the tank gains, an hour; below zero when it empties", -500, 500) { Required = false },
        ],
        Outputs =
        [
            new("feed", "t/h", "dry mud to the kiln"),
            new("made", "t/h", "dry mud that the line makes; needs the storage change")
            {
                Estimates = "dry-mud",
                MethodU = "1.5%",
                WhenOff = "the mud tank gains or loses more than entered: the flow to the filter may be right",
                Moves = ["flow"],
            },
            new("kiln-cao", "t/h", "CaO in the kiln's product"),
            new("kiln-product", "t/h", "lime from the kiln, with what the mud held beside calcite"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var sheet = new Worksheet();
        if (Slurry.Share(sheet, inputs, out var share) is { } refused)
        {
            return refused;
        }

        var (flow, density, calcite) = (inputs["flow"], inputs["density"], inputs["calcium-carbonate"] / 100);
        var feed = flow * density * share / 1000;
        var cao = MolarMass.CaOPerCaCO3 * feed * calcite;
        sheet.Give("feed", feed, $"feed = {flow:0.##} x {density:0.0} x {share:0.00000} / 1000 = {feed:0.000} t/h dry");
        if (inputs.Find("storage-change") is { } change)
        {
            if (feed + change < 0)
            {
                return Worksheet.Refuse("storage-change", $"storage-change ({change:0.##} t/h) takes more than the feed ({feed:0.##} t/h): the line makes no less than nothing");
            }

            sheet.Give("made", feed + change, $"made = {feed:0.000} + {change:0.000} = {feed + change:0.000} t/h dry");
        }

        sheet.Give("kiln-cao", cao, $"kiln-cao = {MolarMass.CaOPerCaCO3:0.00000} x {feed:0.000} x {100 * calcite:0.#} / 100 = {cao:0.000} t/h");
        sheet.Give("kiln-product", cao + (feed * (1 - calcite)), $"kiln-product = {cao:0.000} + {feed:0.000} x (1 - {100 * calcite:0.#} / 100) = {cao + (feed * (1 - calcite)):0.000} t/h");
        return sheet.ToValues();
    }
}
