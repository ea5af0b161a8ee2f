using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// What the audit's signals say of the walks that one person typed. Off unless the site cites a policy; computed when it is
/// asked for and kept nowhere; of eight weeks, in shifts that the person opened by PIN; less than two signals in different
/// shifts, or one contradiction, is not shown at all.
/// </summary>
public static class OwnAudit
{
    private static readonly TimeSpan Weeks = TimeSpan.FromDays(8 * 7);

    // What is assumed of a flag's worth, printed beside it. Judgement: simulated operators are measured in tests/Benchmarks.
    private const double Inventing = 0.01;
    private const double Caught = 0.5;
    private const double FalselyFlagged = 0.01;

    /// <summary>Of those who are flagged the share that is honest, when so many invent, so many of them are caught and so many others flagged.</summary>
    public static double HonestAmongFlagged(double inventing, double caught, double falselyFlagged) =>
        (1 - inventing) * falselyFlagged / (((1 - inventing) * falselyFlagged) + (inventing * caught));

    /// <summary>Why nothing is computed of anybody just now; null when it may be.</summary>
    internal static string? WhyOff(Desk desk)
    {
        var from = desk.Now - Weeks;
        return desk.Site.Policy is null ? "this site cites no policy, so nothing is computed of one person: [policy] in site.toml"
            : Since(desk) is var since && since > from ? $"the policy is in force since {Say.Day(desk.Site, since)}: eight weeks of walks are whole on {Say.Day(desk.Site, since + Weeks)}"
            : null;
    }

    /// <summary>What is shown of one person, line by line.</summary>
    internal static IReadOnlyList<NoteLine> Of(Desk desk, string code)
    {
        var span = new AuditSpan(desk, desk.Now - Weeks, desk.Now);
        var opened = OpenedByPin.Of(span.Records, code, desk.Now);
        var mine = span.Entries.Where(e => e.Record.At >= span.From && e.Entry.Round is not null && Is(e.Record.By, code) && opened.Covers(e.Record.Entered)).ToList();
        var signals = LooksAlike.Flags(span).Where(f => IsOf(f, span, mine)).ToList();
        var contradictions = WalkAndTyping.Of(desk.Site, span, mine).ToList();
        var shows = contradictions.Count > 0 || signals.DistinctBy(s => s.ShiftId, StringComparer.Ordinal).Count() > 1;
        return
        [
            .. About(desk, code, span, mine.Count, opened.Count),
            .. !shows ? [new NoteLine("shown", "nothing: no two signals in different shifts, and no contradiction. Less is not shown.")] : contradictions.Concat(signals).SelectMany(Lines),
            new NoteLine("worth", Worth()),
            .. OwnLooks.Lines(desk, code),
        ];
    }

    private static IEnumerable<NoteLine> About(Desk desk, string code, AuditSpan span, int walks, int shifts)
    {
        var (site, policy) = (desk.Site, desk.Site.Policy!);
        yield return new NoteLine("of", $"{Say.Person(site, code)}: {Say.Count(walks, "walk")} typed from {Say.Day(site, span.From)} to now in {Say.Count(shifts, "shift")} opened by PIN");
        yield return new NoteLine("purpose", Say.Visible(policy.Purpose));
        yield return new NoteLine("seen by", $"{Say.Person(site, code)}; after an answer, and told at each look: {string.Join(", ", policy.Readers.Select(r => Say.Person(site, r)))}");
        yield return new NoteLine("kept", $"nothing of this page; {Say.Visible(policy.Retention)}");
        yield return new NoteLine("agreed", Say.Visible(policy.Consultation));
    }

    private static IEnumerable<NoteLine> Lines(AuditFlag flag) =>
        [new NoteLine("signal", $"{flag.Flag}: {flag.Text}"), .. flag.Evidence.Select(e => new NoteLine("", e))];

    private static string Worth() => FormattableString.Invariant(
        $"If {Inventing:0%} of people invent readings, {Caught:0%} of those are caught and {FalselyFlagged:0%} of the others are flagged, then of a hundred who are flagged {100 * HonestAmongFlagged(Inventing, Caught, FalselyFlagged):0} are honest. A signal is a reason to ask, never an answer.");

    /// <summary>A walk that is the person's; a shift of which the person typed every walk of that round.</summary>
    private static bool IsOf(AuditFlag flag, AuditSpan span, List<(JournalRecord Record, Entry Entry)> mine) => flag.Seq is { } seq
        ? mine.Exists(e => e.Record.Seq == seq)
        : span.Entries.Where(e => e.Record.Shift == flag.ShiftId && Is(e.Entry.Round, flag.Round)).All(e => mine.Exists(m => m.Record.Seq == e.Record.Seq));

    /// <summary>Since when every site file in force has cited a policy; what was walked before is not looked at.</summary>
    private static DateTimeOffset Since(Desk desk)
    {
        var begun = JournalSpan.Begin(desk);
        return SiteInForce.Since(desk, desk.Now - Weeks).Reverse().TakeWhile(s => s.Site.Policy is not null).Last() is var first && first.From > begun ? first.From : begun;
    }

    private static bool Is(string? one, string? other) => Handed.Same(one, other);
}
