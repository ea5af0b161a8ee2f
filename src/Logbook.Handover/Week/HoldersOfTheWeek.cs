using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Who held the line when, by the same fold that says who holds it now.</summary>
internal static class HoldersOfTheWeek
{
    /// <param name="Holder">Null when nobody did.</param>
    public sealed record From(DateTimeOffset At, Holder? Holder);

    /// <summary>Who held it at the week's begin, and each change since.</summary>
    public static IReadOnlyList<From> Of(WeekFacts week)
    {
        var begin = JournalSpan.StateAt(week.Desk, week.From);
        var line = begin.Line;
        var holders = new List<From> { new(DateTimeOffset.MinValue, line.Holder) };
        foreach (var record in week.Span.WithHistory.Where(r => r.Seq > begin.Head.Seq && SincePrepared.IsStep(r.Body)))
        {
            line = line.After(record);
            if (line.Holder?.Seq != holders[^1].Holder?.Seq)
            {
                holders.Add(new From(record.At, line.Holder));
            }
        }

        return holders;
    }

    /// <summary><c>held by A. Stone, from 23:00 by B. Vane (emergency relief)</c>. Who takes over in the last minutes holds the next shift.</summary>
    public static string In(Site site, IReadOnlyList<From> holders, ShiftInstance shift)
    {
        var held = holders.Where((h, i) => h.At < shift.End - LastMinutes && (i + 1 == holders.Count || holders[i + 1].At > shift.Start)).ToList();
        return "held by " + string.Join(", ", held.Select((h, i) => $"{(i == 0 ? "" : $"from {Say.Time(site, h.At, shift.End)} by ")}{Name(site, h.Holder)}"));
    }

    private static readonly TimeSpan LastMinutes = TimeSpan.FromMinutes(30);

    private static string Name(Site site, Holder? holder) => holder is null ? "NOBODY" : Say.Person(site, holder.Code) + holder.How switch
    {
        "short" => " (short relief)",
        "emergency" => " (emergency relief)",
        "unattended" => " (unattended)",
        _ => "",
    };
}
