using Logbook.Checks;
using Logbook.Demo.Instruments;
using Logbook.Demo.Line;
using Logbook.Demo.Planted;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Demo;

/// <summary>The invented mill: a simulated line and its people, who type into the desk like anyone else.</summary>
public static class DemoMill
{
    /// <summary>
    /// Types <paramref name="days"/> days of rounds, titrations, remarks and planted events into the desk's empty journal,
    /// under a simulated clock. One seed and one end give the same records.
    /// </summary>
    /// <param name="open">Makes the desk of a terminal with the given clock; called once. The caller disposes its store.</param>
    /// <param name="until">The demo's history ends here: now.</param>
    /// <param name="days">1 or more.</param>
    /// <param name="seed">Of everything that chance decides.</param>
    /// <param name="work">Told how many days are done.</param>
    /// <returns>What was planted, oldest first, and where it must show.</returns>
    public static IReadOnlyList<PlantedEvent> Make(
        Func<TimeProvider, Desk> open, DateTimeOffset until, int days, int seed, LongWork? work = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(days, 1);
        var clock = new SimulatedClock(until.AddDays(-days));
        var desk = open(clock);
        var end = Calendar.ToSite(desk.Site, until);
        var scene = new Scene(desk.Site, end.AddDays(-days), end);
        return Play(desk, clock, scene, new Chance(seed), work ?? LongWork.Unwatched);
    }

    private static IReadOnlyList<Act> Acts(Scene scene, Chance chance, out Script script)
    {
        var plan = Rounds.Plan(scene, chance).ToList();
        script = Plot.Of(scene, plan, chance);
        var history = new LineHistory(scene.Start, scene.Until, script.Changes, scene.Site.AltitudeM, chance);
        var reader = new Reader(history, script.Faults, chance);
        var rounds = new Rounds(scene, script, reader, chance);
        var undone = script.LeftUndone;
        return
        [
            .. plan.Where(t => !undone.Contains((t.Round.Id, t.Slot.DueAt))).Select(rounds.Do)
                .Concat(script.Acts)
                .Concat(script.Rereadings.Select(r => r.Act(scene, reader)))
                .OrderBy(a => a.At),
        ];
    }

    private static IReadOnlyList<PlantedEvent> Play(Desk desk, SimulatedClock clock, Scene scene, Chance chance, LongWork work)
    {
        var acts = Acts(scene, chance, out var script);
        var seqs = new Dictionary<PlantedEvent, long>();
        foreach (var act in acts)
        {
            work.Reached((act.At - scene.Start).Days);
            clock.MoveTo(act.At);
            if (act.Save(desk) is not { } written)
            {
                continue;
            }

            var record = written.Record ?? throw new InvalidOperationException(
                $"the demo typed something that was refused at {act.At:O}: {string.Join("; ", written.Mistakes)}");
            if (act.Plants is { } planted)
            {
                seqs[planted] = record.Seq;
            }
        }

        clock.MoveTo(scene.Until);
        return [.. script.Events.Select(e => e with { Seq = seqs.TryGetValue(e, out var seq) ? seq : null }).OrderBy(e => e.At)];
    }
}
