using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// The one contradiction that the journal itself can show: somebody who, by the times given, walked the field, while the
/// clock of a terminal has the same code typing.
/// </summary>
internal static class WalkAndTyping
{
    // Times of a walk are given by people, to the minute or rounder.
    private static readonly TimeSpan Rounding = TimeSpan.FromMinutes(5);

    public static IEnumerable<AuditFlag> Of(Site site, AuditSpan span, IReadOnlyList<(JournalRecord Record, Entry Entry)> walks)
    {
        foreach (var (walk, entry) in walks.Where(w => w.Entry.WalkStart is not null && w.Entry.WalkEnd is not null).DistinctBy(w => (w.Entry.WalkStart, w.Entry.WalkEnd)))
        {
            var (began, ended) = (entry.WalkStart!.Value + Rounding, entry.WalkEnd!.Value - Rounding);
            if (span.Records.FirstOrDefault(r => r.Seq != walk.Seq && Handed.Same(r.By, walk.By) && r.Entered > began && r.Entered < ended) is { } typed)
            {
                yield return new AuditFlag(
                    "walk-and-typing", walk.Shift, walk.At, entry.Round, null,
                    $"{Say.Visible(site.FindRound(entry.Round ?? "")?.Title ?? "walk")} {Say.Day(site, entry.WalkStart.Value)} to {Say.Time(site, entry.WalkEnd.Value, walk.At)}; "
                    + $"typed at {Say.Visible(typed.Terminal)} under the same code at {Say.Time(site, typed.Entered, walk.At)} {Say.Ref(walk.Seq, typed.Seq)}", walk.Seq)
                {
                    Evidence = ["Also seen when: a colleague typed under that code, the times of the walk were rounded or mistyped.", "Would settle: asking who typed.", "Not a finding about anyone."],
                };
            }
        }
    }
}
