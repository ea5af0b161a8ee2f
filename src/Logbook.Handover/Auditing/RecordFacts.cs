using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Facts that stand in single records, or in what is still open.</summary>
internal static class RecordFacts
{
    /// <summary>
    /// Readings typed after the shift in which they were taken had ended, or imported then. One who comes on takes what is due at
    /// the change of shift before it and types it after: what was in time for its check is not late.
    /// </summary>
    public static IEnumerable<AuditFlag> EnteredLater(AuditSpan span)
    {
        var inTime = span.Checks.Where(c => c.State == CheckState.Done).Select(c => c.Seq).ToHashSet();
        return
            from record in span.Records
            where record.Body is Entry && !inTime.Contains(record.Seq) && Calendar.ShiftAt(span.Desk.Site, record.At).End <= record.Entered // which is asked last: it is slow
            select new AuditFlag(
                "entered-later", record.Shift, record.At, ((Entry)record.Body).Round, null,
                $"{LogLine.Of(span.Desk, record).Words}: {(((Entry)record.Body).Imported is null ? "typed" : "imported")} {Say.Day(span.Desk.Site, record.Entered)}, after its shift. {Say.Person(span.Desk.Site, record.By)} {Say.Ref(record.Seq)}", record.Seq);
    }

    /// <summary>Urgent findings without an answer, and orders that somebody has not read, or had not when they were withdrawn, as they stood at the end of the stretch.</summary>
    public static IEnumerable<AuditFlag> StillOpen(AuditSpan span)
    {
        var (site, state, moment) = (span.Desk.Site, span.EndState, span.End);
        var unanswered = state.Unanswered.Select(f => new AuditFlag(
            "unanswered", Calendar.ShiftAt(site, f.At).Id, f.At, null, f.Finding.Point,
            $"{(f.Finding.Point is { } tag ? Say.Visible(tag) + ": " : "")}{Say.Sentence(f.Finding.Text)} Cause and who was told are not recorded; answer {f.Seq}.{f.Number}", f.Seq));
        var unread = from order in state.Orders
                     where order.HoldsAt(moment)
                     let waiting = site.People.Where(p => p.Role == Role.Operator && !order.Seen.ContainsKey(p.Code)).Select(p => Say.Person(site, p.Code)).ToList()
                     where waiting.Count > 0
                     select new AuditFlag(
                         "order-unread", Calendar.ShiftAt(site, order.Since).Id, order.Since, null, null,
                         $"Order {order.Id}, {Say.Sentence(order.Text)} Not read yet by {string.Join(", ", waiting)}", order.Id);
        var ended = from order in state.Orders
                    from end in new[] { order.Withdrawn }.OfType<Withdrawal>()
                    where end.At >= span.From && end.At <= moment
                    let never = site.People.Where(p => p.Role == Role.Operator && !order.Seen.ContainsKey(p.Code)).Select(p => Say.Person(site, p.Code)).ToList()
                    where never.Count > 0
                    select new AuditFlag(
                        "order-unread", Calendar.ShiftAt(site, order.Since).Id, order.Since, null, null,
                        $"Order {order.Id}, {Say.Sentence(order.Text)} Withdrawn {Say.Day(site, end.At)} by {Say.Person(site, end.By)}: {Say.Sentence(end.Why)} Not read before that by {string.Join(", ", never)} {Say.Ref(end.Seq)}", order.Id);
        return unanswered.Concat(unread).Concat(ended);
    }

    // Nobody declares it in the moment. Judgement, no source.
    internal static readonly TimeSpan ToldAtOnce = TimeSpan.FromMinutes(30);

    /// <summary>Upsets of the stretch, each with its length and words: the rounds that it cost stand beside it.</summary>
    public static IEnumerable<AuditFlag> Upsets(AuditSpan span) =>
        from upset in UpsetThen.Of(span.Desk, span.EndState, span.Records)
        let site = span.Desk.Site
        select new AuditFlag(
            "upset", upset.Begun.Shift, upset.Began, null, null,
            $"UPSET {(upset.End is { } end ? $"from {Say.Day(site, upset.Began)} to {Say.Day(site, end)}" : $"since {Say.Day(site, upset.Began)}, not over")}{(upset.Begun.Entered - upset.Began > ToldAtOnce ? $", declared {Say.Day(site, upset.Begun.Entered)}" : "")}{string.Concat(upset.Words.Select(w => $"; {Say.Visible(w)}"))}. {Say.Person(site, upset.Begun.By)} {Say.Ref(new[] { upset.Begun, upset.Ended }.OfType<JournalRecord>().Select(r => r.Seq))}",
            upset.Begun.Seq);

    /// <summary>What waited for a supervisor's signature at the end of the stretch, or for that of who is said to have allowed it, also from before it.</summary>
    public static IEnumerable<AuditFlag> ToCountersign(AuditSpan span) =>
        from open in span.EndState.Line.ToCountersign
        let site = span.Desk.Site
        let record = span.Desk.Store.Read(open.Seq).First()
        let late = Calendar.ShiftAt(site, open.At).End <= span.End ? "; its shift is over" : ""
        select new AuditFlag(
            Audit.ToCountersign, open.Shift, open.At, null, null,
            open.Named is not null ? Countersigning.Words(site, open) + "."
            : $"{open.What}: {StepWords.Of(site, record)}. {Say.Person(site, open.By)} {Say.Day(site, open.At)} {Say.Ref(open.Seq)}{late}; waits for a supervisor's signature", open.Seq);

    /// <summary>True of what a handover of the stretch waits for: unless it is asked for by its name, the handover's own flag tells it.</summary>
    public static bool IsOfHandover(AuditSpan span, AuditFlag waits) =>
        span.EndState.Line.ToCountersign.Exists(open => open.Seq == waits.Seq && open.Named is null) && span.Records.Any(r => r.Seq == waits.Seq);

    /// <summary>Handovers at which a question about what can hurt was first answered otherwise than the page.</summary>
    public static IEnumerable<AuditFlag> ReadAgain(AuditSpan span) =>
        from record in span.Records
        where record.Body is HandoverAccepted { Missed.Count: > 0 }
        let missed = ((HandoverAccepted)record.Body).Missed!
        select new AuditFlag(
            "read-again", record.Shift, record.At, null, null,
            $"{Say.Count(missed.Count, "answer")} at first otherwise than the page of what can hurt, read again and answered: {string.Join("; ", missed.GroupBy(q => q, StringComparer.Ordinal).Select(g => Say.Visible(g.Key) + (g.Count() > 1 ? FormattableString.Invariant($" ({g.Count()} times)") : "")))}. {Say.Person(span.Desk.Site, record.By)} {Say.Day(span.Desk.Site, record.At)} {Say.Ref(record.Seq)}", record.Seq)
        {
            Evidence = ["Not a finding about anyone: a page that is often misread may be worded badly, or the change-over was short."],
        };

    /// <summary>Handovers that were refused, unattended, taken in an emergency, or accepted with a reservation; whether a supervisor signed for it since stands beside.</summary>
    public static IEnumerable<AuditFlag> Handovers(AuditSpan span)
    {
        var site = span.Desk.Site;
        var open = span.Desk.State.Line.ToCountersign.Select(t => t.Seq).ToHashSet();
        var signed = span.WithHistory.Where(r => r.Body is HandoverCountersigned).ToLookup(r => ((HandoverCountersigned)r.Body).Target);
        foreach (var record in span.Records)
        {
            var (flag, why) = record.Body switch
            {
                HandoverRefused refused => ("refused", refused.Why),
                HandoverRelief { Mode: "left" } left => ("unattended", left.Words),
                HandoverRelief { Mode: "emergency" } relief => ("emergency", relief.Words),
                HandoverAccepted { Unattended: { } unattended } => ("unattended", unattended),
                HandoverAccepted { Reservation: { } reservation } => ("reservation", reservation),
                _ => ("", ""),
            };
            if (flag.Length == 0)
            {
                continue;
            }

            var settled = flag != "reservation" && !open.Contains(record.Seq);
            var signature = signed[record.Seq].LastOrDefault() is { } s ? $", countersigned by {Say.Person(site, s.By)} {Say.Day(site, s.At)}: {Say.Visible(((HandoverCountersigned)s.Body).Why)} {Say.Ref(s.Seq)}"
                : settled ? ", countersigned since"
                : flag == "reservation" ? ""
                : ", not countersigned yet";
            yield return new AuditFlag(
                flag, record.Shift, record.At, null, null, $"{Say.Visible(why)}. {Say.Person(site, record.By)} {Say.Day(site, record.At)} {Say.Ref(record.Seq)}{signature}", record.Seq) { Settled = settled };
        }
    }
}
