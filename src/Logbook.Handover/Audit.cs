using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>One fact of the audit, as it is, without accusation.</summary>
/// <param name="Flag">missed, late, not-taken, corrected or carried-too-long.</param>
public sealed record AuditFlag(string Flag, string ShiftId, DateTimeOffset At, string? Round, string? Point, string Text, long? Seq);

public static class Audit
{
    // Three days of two shifts. Judgement, no source.
    private const int TooManyShifts = 6;

    /// <summary>The flags of [from, to), by flag and time.</summary>
    public static IReadOnlyList<AuditFlag> Between(Desk desk, DateTimeOffset from, DateTimeOffset to) =>
    [
        .. DueList.Between(desk, from, to).GroupBy(c => (c.Round, c.DueAt)).SelectMany(slot => Checks(desk.Site, [.. slot]))
            .Concat(Corrections(desk, from, to)).Concat(CarriedLong(desk, to))
            .OrderBy(f => Order.IndexOf(f.Flag)).ThenBy(f => f.At),
    ];

    private static readonly List<string> Order = ["missed", "late", "not-taken", "corrected", "carried-too-long"];

    /// <summary>A slot missed as a whole is one line, and so is what one entry brought late: it is one fact.</summary>
    private static IEnumerable<AuditFlag> Checks(Site site, List<DueCheck> slot)
    {
        var applies = slot.Where(c => c.State != CheckState.NotApplicable).ToList();
        foreach (var fate in applies.Where(c => Flag(c.State) is not null).GroupBy(c => (c.State, c.Seq, c.Why)))
        {
            var checks = fate.ToList();
            var whole = checks.Count == applies.Count;
            if (checks.Count > 1 && (fate.Key.State == CheckState.Late || (whole && fate.Key.State == CheckState.Missed)))
            {
                var which = whole ? $"all {checks.Count} checks" : string.Join(", ", checks.Select(c => Say.Visible(c.Point)));
                yield return Of(site, checks[0]) with { Point = null, Text = $"{Title(site, checks[0])}, {which}: {Fate(site, checks[0])}" };
                continue;
            }

            foreach (var check in checks)
            {
                yield return Of(site, check);
            }
        }
    }

    private static AuditFlag Of(Site site, DueCheck check) => new(
        Flag(check.State)!, check.ShiftId, check.DueAt, check.Round, check.Point, $"{Title(site, check)}, {Say.Visible(check.Point)}: {Fate(site, check)}", check.Seq);

    private static string Title(Site site, DueCheck check) =>
        $"{Say.Visible(InsteadOfTrips.Title(site, check.Round))} {Say.Day(site, check.DueAt)}";

    private static string Fate(Site site, DueCheck check) => (check.State switch
    {
        CheckState.Missed => "no reading in the window",
        CheckState.NotTaken => "not taken, " + Say.Visible(string.IsNullOrWhiteSpace(check.Why) ? "no reason given" : check.Why),
        _ => check.Why ?? "late",
    }) + (check.Seq is { } seq ? $", {Say.Person(site, check.By ?? "")} {Say.Ref(seq)}" : "");

    private static string? Flag(CheckState state) => state switch
    {
        CheckState.Missed => "missed",
        CheckState.Late => "late",
        CheckState.NotTaken => "not-taken",
        _ => null,
    };

    private static IEnumerable<AuditFlag> Corrections(Desk desk, DateTimeOffset from, DateTimeOffset to) =>
        desk.Store.Between(from, to).Where(r => r.Body is Correction).Select(r => new AuditFlag(
            "corrected", r.Shift, r.At, null, ((Correction)r.Body).Reading.Point,
            $"{LogLine.Of(desk, r).Words}. {Say.Person(desk.Site, r.By)} {Say.Day(desk.Site, r.At)} {Say.Ref(r.Seq)}", r.Seq));

    /// <summary>Items open at the end of the stretch that are past their date or open for more than six shifts.</summary>
    private static IEnumerable<AuditFlag> CarriedLong(Desk desk, DateTimeOffset to)
    {
        var (site, moment) = (desk.Site, to < desk.Now ? to : desk.Now);
        return JournalSpan.StateAt(desk, moment).Carried
            .Where(i => i.Until < moment || Say.ShiftsSince(site, i.Since, moment) > TooManyShifts)
            .Select(i => new AuditFlag(
                "carried-too-long", Calendar.ShiftAt(site, i.Since).Id, i.Since, null, null,
                $"{Say.Visible(i.ItemKind)}, {Say.Equipment(site, i.On)}: {Carried.Rest(site, i, moment)}. {Carried.Opened(site, i, moment)}", i.Id));
    }
}
