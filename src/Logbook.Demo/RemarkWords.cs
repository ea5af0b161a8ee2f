using Bogus;
using Logbook.Demo.Line;
using Logbook.Plant;

namespace Logbook.Demo;

/// <summary>Remarks in the words of the trade, as people leave them between the rounds.</summary>
internal sealed class RemarkWords(Site site, Chance chance)
{
    private static readonly string[] _about =
    [
        "Hosed down, floor clean",
        "Checked by hand, agrees with the panel",
        "Packing drips, nipped up a quarter turn",
        "Sounds steady, bearings hand-warm",
        "Strainer cleaned, little in it",
        "Sample cock was slow, cleared with hot water from a distance",
        "Greased on the weekly list",
        "Instrument technician looked at the transmitter, nothing found",
        "Lagging loose, reported to the day crew",
        "Scale at the flange, not wet, keep an eye on it",
    ];

    private static readonly string[] _general =
    [
        "Kiln says lime a little softer burnt since the morning",
        "Digester house asks for steady white liquor, two cooks close together",
        "Recovery boiler is on steady load",
        "Dregs bin changed",
        "Grits bin changed",
        "Barrier tape at the slaker stair renewed",
        "Walked the line with the new colleague, hatches and eyewashes shown",
        "Radio check with the kiln, good",
        "Rain on the roof, drain at the mud filter runs free",
        "Acid for the titrations freshly made up and standardised by the laboratory",
    ];

    private readonly Faker _faker = new("en") { Random = new Randomizer((int)chance.Between(1, int.MaxValue)) };

    /// <summary>The next remark, and the equipment that it is about.</summary>
    public (string Text, string? On) Next()
    {
        if (_faker.Random.Bool(0.35f))
        {
            return (_faker.PickRandom(_general), null);
        }

        var equipment = _faker.PickRandom(site.Equipment.Where(e => !e.Code.StartsWith("eyewash", StringComparison.Ordinal)).ToArray());
        return (_faker.PickRandom(_about), equipment.Code);
    }
}
