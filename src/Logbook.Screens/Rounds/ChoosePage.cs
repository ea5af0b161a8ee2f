using Logbook.Checks;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Which round is to be typed: those that are open first, then any.</summary>
internal sealed record ChoosePage(int Selected) : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "open", "Opens the round under the mark.", Open, KeyName.Enter) with { WhyNot = WhyNot },
        new KeyRow("1-9", "choose", "Puts the mark on a round.", key => key.Digit is >= 1, (session, key, _) => Choose(session, key.Digit!.Value - 1)),
        KeyRow.Named("Up Down", "", "Moves the mark.", (session, key, _) => Choose(session, Moving.Move(((ChoosePage)session.Top).Selected, key, Rounds(session).Count, session.Leaf)), Moving.Keys),
        UsualKeys.Back(),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var rounds = Rounds(session);
        var lines = rounds.Select((r, i) =>
            Line.Of($" {(i == Selected ? ">" : " ")} {i + 1} {TextWidth.Fit(r.Title, 26)} {When(session, r)}", i == Selected ? Look.Chosen : Look.Plain));
        return new Layout([Line.Of(" Which round?", Look.Strong), Line.Empty], [.. lines], Selected, Selected, []);
    }

    private static List<Round> Rounds(Session session)
    {
        var open = session.Facts.Now.Rounds.Where(r => r.State == CheckState.Due).OrderBy(r => r.Closes).Select(r => r.Round).Distinct(StringComparer.Ordinal).ToList();
        return [.. session.Site.Rounds.OrderBy(r => open.IndexOf(r.Id) is var i && i < 0 ? int.MaxValue : i)];
    }

    private static string When(Session session, Round round)
    {
        if (session.Draft is { SecondOf: null } draft && draft.Round == round.Id)
        {
            return $"{Say.Count(draft.Readings, "reading")} typed and not saved";
        }

        return Slot(session, round) is { } slot
            ? RoundWords.Due(session, slot)
            : "not open now";
    }

    public static OpenRound Opening(Session session, Round round) => new(round, Slot(session, round));

    private static RoundNow? Slot(Session session, Round round) =>
        session.Facts.Now.Rounds.FirstOrDefault(r => r.Round == round.Id && r.State == CheckState.Due);

    private static Next Choose(Session session, int row) => Next.Of(session.Put(new ChoosePage(Math.Clamp(row, 0, Rounds(session).Count - 1))));

    private static string? WhyNot(Session session) => session.By is null ? "say first who is typing: Esc, then i" : null;

    /// <summary>What is typed of another round is saved first; its answer tells whether this one may be opened.</summary>
    private static Next Open(Session session, Keystroke key, Setting setting)
    {
        var round = Rounds(session)[((ChoosePage)session.Top).Selected];
        return session.Draft is { } draft && (draft.Round != round.Id || draft.By != session.By || draft.SecondOf is not null)
            ? Next.Of(session, Saving.All(draft))
            : Next.Of(session, Opening(session, round));
    }
}
