using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>One line of the audit: a fact as it is, or something to look at, without accusation.</summary>
/// <param name="Flag">One of <see cref="Audit.Flags"/>.</param>
public sealed record AuditFlag(string Flag, string ShiftId, DateTimeOffset At, string? Round, string? Point, string Text, long? Seq)
{
    /// <summary>For something to look at: what it rests on, what innocent explains it, what would settle it.</summary>
    public IReadOnlyList<string> Evidence { get; init; } = [];

    /// <summary>A supervisor signed for it: nothing of it is left to do.</summary>
    public bool Settled { get; init; }
}

public static class Audit
{
    /// <summary>Facts first, then what is only something to look at.</summary>
    public static readonly IReadOnlyList<string> Flags =
    [
        "missed", "late", "not-taken", "upset", "corrected", "entered-later", "carried-too-long", "past-date", "not-seen", "unanswered", "order-unread",
        "refused", "unattended", "emergency", "reservation", "read-again", ToCountersign, Contradicted, Hazard, "recurrent", "off-laboratory", "same-as-earlier", "varies-less", "limit-never", "limit-always", "always-not-taken",
    ];

    /// <summary>What waits for a supervisor's signature, or for that of who is said to have allowed it, whenever it was. Only when it is asked for: the others list it as what it is.</summary>
    public const string ToCountersign = "to-countersign";

    /// <summary>Two things recorded of one equipment that could not both be true, such as people inside and acid: begin and end.</summary>
    public const string Contradicted = "contradicted";

    /// <summary>What could hurt, open at some time of the stretch. A fact, and nothing to settle.</summary>
    public const string Hazard = "hazard";

    // Three days of two shifts. Judgement, no source.
    private const int TooManyShifts = 6;

    /// <summary>The flags of [from, to), by flag and time.</summary>
    /// <param name="wanted">Only these flags; all when empty. What is not asked for is not computed.</param>
    public static IReadOnlyList<AuditFlag> Between(Desk desk, DateTimeOffset from, DateTimeOffset to, params IReadOnlyCollection<string> wanted) =>
        Of(new AuditSpan(desk, from, to), wanted);

    internal static IReadOnlyList<AuditFlag> Of(AuditSpan span, params IReadOnlyCollection<string> wanted)
    {
        bool Asked(params string[] flags) => wanted.Count == 0 || flags.Any(f => wanted.Contains(f, StringComparer.Ordinal));
        IEnumerable<AuditFlag> When(bool asked, Func<IEnumerable<AuditFlag>> flags) => asked ? flags() : [];
        return
        [
            .. When(Asked("missed", "late", "not-taken", "upset", "entered-later"), () => Slots(span.Checks).SelectMany(slot => Checks(span.Desk.Site, slot)))
                .Concat(When(Asked("upset"), () => RecordFacts.Upsets(span)))
                .Concat(When(Asked(ToCountersign), () => RecordFacts.ToCountersign(span).Where(f => wanted.Count > 0 || !RecordFacts.IsOfHandover(span, f))))
                .Concat(When(Asked("corrected", "entered-later"), () => Corrections(span).Concat(RecordFacts.EnteredLater(span))))
                .Concat(When(Asked("carried-too-long", "past-date", "not-seen", "unanswered", "order-unread"), () => CarriedLong(span).Concat(RecordFacts.StillOpen(span))))
                .Concat(When(Asked("refused", "unattended", "emergency", "reservation"), () => RecordFacts.Handovers(span)))
                .Concat(When(Asked("read-again"), () => RecordFacts.ReadAgain(span)))
                .Concat(When(Asked(Contradicted), () => ContradictedFacts.Of(span).Concat(ReadAsInOrder.Of(span))))
                .Concat(When(Asked(Hazard), () => HazardFacts.Of(span).Concat(InjuriesTold.Of(span)).Concat(ReadAsHazard.Of(span))))
                .Concat(When(Asked("recurrent"), () => Recurrence.Flags(span)))
                .Concat(When(Asked("off-laboratory"), () => OffLaboratory.Flags(span)))
                .Concat(When(Asked("same-as-earlier", "varies-less"), () => LooksAlike.Flags(span)))
                .Concat(When(Asked("limit-never", "limit-always", "always-not-taken"), () => LimitUse.Flags(span)))
                .Where(f => Asked(f.Flag))
                .OrderBy(f => Order[f.Flag]).ThenBy(f => f.At),
        ];
    }

    private static readonly Dictionary<string, int> Order = Flags.Select((flag, i) => (flag, i)).ToDictionary(x => x.flag, x => x.i, StringComparer.Ordinal);

    /// <summary>The slots in which something was not done. The checks of one stand together.</summary>
    private static IEnumerable<List<DueCheck>> Slots(IReadOnlyList<DueCheck> checks)
    {
        for (int begin = 0, end; begin < checks.Count; begin = end)
        {
            var first = checks[begin];
            var done = true;
            for (end = begin; end < checks.Count && checks[end].DueAt == first.DueAt && checks[end].Round == first.Round; end++)
            {
                done &= checks[end].State == CheckState.Done;
            }

            if (!done)
            {
                yield return [.. checks.Skip(begin).Take(end - begin)];
            }
        }
    }

    /// <summary>A slot missed as a whole is one line, and so is what one entry brought late: it is one fact.</summary>
    private static IEnumerable<AuditFlag> Checks(Site site, List<DueCheck> slot)
    {
        var applies = slot.Where(c => c.State != CheckState.NotApplicable).ToList();
        var upset = slot.Exists(c => c.Upset) ? "safety points in the upset, " : "";
        foreach (var rest in slot.Where(c => c.State == CheckState.NotApplicable && (c.Upset || c.SaidLater is not null)).GroupBy(c => (c.SaidLater, c.Why)))
        {
            var first = rest.First();
            yield return new AuditFlag(
                rest.Key.SaidLater is not null ? "entered-later" : "upset", first.ShiftId, first.DueAt, first.Round, null,
                $"{Title(site, first)}, {Say.Count(rest.Count(), "check")} not walked: {first.Why}", rest.Key.SaidLater);
        }

        // An upset that was declared afterwards is said of the slot: the safety points in it were missed with the rest.
        var afterwards = applies.TrueForAll(c => c.State == CheckState.Missed) ? applies.Find(c => c.SaidLater is not null)?.Why : null;
        foreach (var fate in applies.Where(c => Flag(c.State) is not null).GroupBy(c => (c.State, c.Seq, Why: c.TypedLater ? c.Why : afterwards ?? c.Why)))
        {
            var checks = fate.ToList();
            var whole = checks.Count == applies.Count;
            if (checks.Count > 1 && (fate.Key.State == CheckState.Late || (whole && fate.Key.State == CheckState.Missed)))
            {
                var which = whole ? $"all {checks.Count} checks" : string.Join(", ", checks.Select(c => Say.Visible(c.Point)));
                yield return Of(site, checks[0]) with { Point = null, Text = $"{Title(site, checks[0])}, {upset}{which}: {Fate(site, checks[0] with { Why = fate.Key.Why })}" };
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
        CheckState.Missed when check is { Why: { } why } && (check.TakenBack || check.TypedLater) => why,
        CheckState.Missed => "no reading in the window" + (check.Why is { } afterwards ? "; " + afterwards : ""),
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

    private static IEnumerable<AuditFlag> Corrections(AuditSpan span) =>
        span.Records.Where(r => r.Body is Correction).Select(r => new AuditFlag(
            "corrected", r.Shift, r.At, null, ((Correction)r.Body).Readings is [var one] ? one.Point : null,
            $"{LogLine.Of(span.Desk, r).Words}. {Say.Person(span.Desk.Site, r.By)} {Say.Day(span.Desk.Site, r.At)} {Say.Ref(r.Seq)}", r.Seq));

    /// <summary>Items open at the end of the stretch that are past their date, open for more than six shifts, or not seen when they should have been.</summary>
    private static IEnumerable<AuditFlag> CarriedLong(AuditSpan span)
    {
        var (site, moment) = (span.Desk.Site, span.End);
        foreach (var item in span.EndState.Carried)
        {
            string[] flags =
            [
                .. item.Until < moment ? ["past-date"] : Array.Empty<string>(),
                .. Say.ShiftsSince(site, item.Since, moment) > TooManyShifts ? ["carried-too-long"] : Array.Empty<string>(),
                .. Carried.LookMissed(site, item, moment) ? ["not-seen"] : Array.Empty<string>(),
            ];
            foreach (var flag in flags)
            {
                yield return new AuditFlag(
                    flag, Calendar.ShiftAt(site, item.Since).Id, item.Since, null, null,
                    $"{Say.Kind(item.ItemKind)}, {Say.Equipment(site, item.On)}: {Carried.Rest(site, item, moment, brief: false)}. {Carried.Opened(site, item, moment)}", item.Id);
            }
        }
    }
}
