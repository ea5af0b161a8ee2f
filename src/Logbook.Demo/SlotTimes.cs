using Logbook.Demo.Line;
using Logbook.Plant;

namespace Logbook.Demo;

/// <summary>One slot of a round as a person does it: when it is read and when it is saved.</summary>
/// <param name="ReadFrom">A walk's start, a sample's time.</param>
/// <param name="ReadTo">A walk's end; the same for a sample.</param>
internal sealed record SlotTimes(Round Round, Slot Slot, DateTimeOffset ReadFrom, DateTimeOffset ReadTo, DateTimeOffset Saved)
{
    /// <summary>Titrations and other samples are taken at one time and saved when the result is there.</summary>
    public static bool IsLaboratory(Site site, Round round) =>
        !round.Field && (round.Schedule is not Schedule.Every || round.Points.Any(tag => site.FindPoint(tag)?.Sample is not null));

    public static SlotTimes Of(Site site, Round round, Slot slot, Chance chance)
    {
        if (round.Schedule is Schedule.Per)
        {
            // Spread over the last hours of the shift, so that samples of the shift are its own.
            var taken = slot.DueAt - TimeSpan.FromMinutes(chance.Between(60, 150));
            return new SlotTimes(round, slot, taken, taken, taken + TimeSpan.FromMinutes(chance.Between(25, 50)));
        }

        if (round.Field)
        {
            var start = slot.DueAt + TimeSpan.FromMinutes(chance.Between(-8, 15));
            var end = start + (round.Takes * chance.Between(0.85, 1.2));
            return new SlotTimes(round, slot, start, end, end + TimeSpan.FromMinutes(chance.Between(4, 18)));
        }

        if (IsLaboratory(site, round))
        {
            var taken = slot.DueAt + TimeSpan.FromMinutes(chance.Between(-6, 12));
            return new SlotTimes(round, slot, taken, taken, taken + round.Takes + TimeSpan.FromMinutes(chance.Between(3, 10)));
        }

        return Panel(round, slot, chance);
    }

    /// <summary>At the panel reading and typing are one; one round in forty is late.</summary>
    private static SlotTimes Panel(Round round, Slot slot, Chance chance)
    {
        var late = chance.OneIn(40) ? round.Late + TimeSpan.FromMinutes(chance.Between(2, 9)) : TimeSpan.FromMinutes(chance.Between(0.5, 7));
        var start = slot.DueAt + late;
        var end = start + (round.Takes * chance.Between(0.8, 1.2));
        return new SlotTimes(round, slot, start, end, end);
    }
}
