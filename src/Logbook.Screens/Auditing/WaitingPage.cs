using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>What waits for a signature, oldest first: a supervisor's for handovers that were refused, left, unattended or taken in an emergency, for a bypass or a change that of who is said to have allowed it.</summary>
internal sealed record WaitingPage(int Selected) : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Letter('p', "countersign", "Signs that it was looked at: what was found, then the PIN.", (session, _) => Next.Of(session.Open(Found(Open(session)!)))) with { WhyNot = WhyNotThis },
        KeyRow.Named("Enter", "open", "Opens its record.", (session, _, _) => Next.Of(session, new ReadRecord(Open(session)!.Seq)), KeyName.Enter) with { WhyNot = Nothing },
        KeyRow.Letter(']', "related", "All records that belong to it.", (session, _) => RelatedPage.Ask(session, Open(session)!.Seq)) with { WhyNot = Nothing },
        KeyRow.Named("Up Down", "", "Moves the mark.", (session, key, _) => Next.Of(session.Put(new WaitingPage(Moving.Move(At(session), key, All(session).Count, session.Leaf)))), Moving.Keys),
        UsualKeys.Back(),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var rows = All(session).Select((t, i) => Gutter.Lines(i == Selected ? ">" : "", Look.Strong, $"{Countersigning.Words(session.Site, t)}{(t.Named is null ? $", shift {t.Shift}: {t.Why}" : "")}", session.Width, rest: i == Selected ? Look.Chosen : Look.Plain).ToList()).ToList();
        var from = rows.Take(At(session)).Sum(r => r.Count);
        return new Layout(
            [Line.Of(" Waits for a signature", Look.Strong), Line.Empty],
            rows.Count == 0 ? [Line.Of("   nothing waits", Look.Faint)] : [.. rows.SelectMany(r => r)],
            from, from + Math.Max(0, (rows.ElementAtOrDefault(At(session))?.Count ?? 1) - 1), []);
    }

    /// <summary>Why nothing can be signed just now; null when it can.</summary>
    public static string? WhyNot(Session session) => Nothing(session)
        ?? (All(session).Any(t => Countersigning.WhyNot(session.Site, t, session.By ?? "") is null) || session.Site.FindPerson(session.By ?? "") is { Role: Role.Supervisor } ? null : "only a supervisor countersigns");

    /// <summary>Said at once: nobody writes what was found and is refused behind the PIN.</summary>
    private static string? WhyNotThis(Session session) => Nothing(session) ?? Countersigning.WhyNot(session.Site, Open(session)!, session.By ?? "");

    private static string? Nothing(Session session) => All(session).Count == 0 ? "nothing waits for a signature" : null;

    /// <summary>What this person is said to have allowed first, then the handovers, then what others have still to sign.</summary>
    private static IReadOnlyList<ToCountersign> All(Session session) =>
        [.. session.Facts.Line.ToCountersign.OrderBy(t => t.Named is null ? 1 : Countersigning.WhyNot(session.Site, t, session.By ?? "") is null ? 0 : 2)];

    private static int At(Session session) => session.Top is WaitingPage page ? Math.Min(page.Selected, Math.Max(0, All(session).Count - 1)) : 0;

    private static ToCountersign? Open(Session session) => All(session).ElementAtOrDefault(At(session));

    private static AskPage Found(ToCountersign open) => AskPage.Words(open.Named is null ? "What was found?" : "What did you allow, and for how long?", open.Named is null ? "looked at with those who were there; then the PIN" : "then the PIN; who did not allow it signs nothing and says so in a remark", (asking, text) =>
        Next.Of(asking.Back().Open(new SignPage(new Countersign(asking.By!, open, text), Secret.Empty, null)))) with { NoPin = true };
}
