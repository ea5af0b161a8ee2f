using Logbook.Checks;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Which round is to be typed: what is read instead of a defeated trip, then those that are open, then any. Each has its own digit wherever it stands.</summary>
/// <param name="Round">Id of the one under the mark; null for the first.</param>
/// <param name="Chosen">By a digit or a letter: what is typed behind it is no other choice, for it may be the first value already.</param>
internal sealed record ChoosePage(string? Round, bool Chosen = false) : Page
{
    private const string OfSite = "123456789abcdefghijklmnops";

    // None of a round of the site: a trip's check that is closed moves no other key.
    private const string OfTrips = "tuvwxyz";

    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "open", "Opens the round under the mark.", Open, KeyName.Enter) with { WhyNot = WhyNot },
        new KeyRow("text", "", "Is no other choice, behind a digit that chose a round: Enter opens that.", key => key.Name == KeyName.Written && !key.Is('?') && !key.Is('/'), (session, _, _) => Next.Of(session.Say(Opens(session), Look.Watch))) with { Applies = s => ((ChoosePage)s.Top).Chosen },
        new KeyRow("1-9", "choose", "Puts the mark on a round, which Enter opens: the same digit for the same round, whatever is due. What is read instead of a trip has a letter.", key => key.Name == KeyName.Written && (OfSite + OfTrips).Contains(key.Rune.ToString(), StringComparison.Ordinal), (session, key, _) => Choose(session, key)) with { Applies = s => !((ChoosePage)s.Top).Chosen },
        KeyRow.Named("Up Down", "", "Moves the mark.", (session, key, _) => Next.Of(session.Put(new ChoosePage(Rounds(session)[Moving.Move(Selected(session), key, Rounds(session).Count, session.Leaf)].Id))), Moving.Keys),
        UsualKeys.Back(),
        UsualKeys.Find,
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var (rounds, selected) = (Rounds(session), Selected(session));
        var wide = Math.Max(26, rounds.Max(r => TextWidth.Of(r.Title)));
        var lines = rounds.Select((r, i) =>
            Line.Of($" {(i == selected ? ">" : " ")} {Key(session, r)} {TextWidth.Fit(r.Title, wide)} {When(session, r)}", i == selected ? Look.Chosen : Look.Plain));
        return new Layout([Line.Of(" Which round?", Look.Strong), Line.Empty], [.. lines], selected, selected, []);
    }

    /// <summary>A round of the site, or of what is read instead of a defeated trip; null when there is none.</summary>
    public static Round? Find(Session session, string id) => session.Site.FindRound(id) ?? InsteadOfTrips(session).FirstOrDefault(r => r.Id == id);

    public static OpenRound Opening(Session session, Round round) => new(round, Slot(session, round));

    private static IReadOnlyList<Round> InsteadOfTrips(Session session) => Handover.InsteadOfTrips.Rounds(session.Site, session.Facts.Now.Carried);

    private static List<Round> Rounds(Session session)
    {
        var open = session.Facts.Now.Rounds.Where(r => r.State == CheckState.Due).OrderBy(r => r.Closes).Select(r => r.Round).Distinct(StringComparer.Ordinal).ToList();
        return [.. InsteadOfTrips(session), .. session.Site.Rounds.OrderBy(r => open.IndexOf(r.Id) is var i && i < 0 ? int.MaxValue : i)];
    }

    private static int Selected(Session session) => Math.Max(0, Rounds(session).FindIndex(r => r.Id == ((ChoosePage)session.Top).Round));

    private static string Key(Session session, Round round) => ByKey(session).FirstOrDefault(k => k.Round.Id == round.Id) is { Round: not null } found ? found.Key.ToString() : " ";

    /// <summary>By the place in the site's list, and of what is read instead of trips by the age of its item: not by what is due.</summary>
    private static IEnumerable<(char Key, Round Round)> ByKey(Session session) => OfSite.Zip(session.Site.Rounds).Concat(OfTrips.Zip(InsteadOfTrips(session)));

    private static string When(Session session, Round round)
    {
        if (session.Draft is { SecondOf: null } draft && draft.Round == round.Id)
        {
            return $"{Say.Count(draft.Readings, "reading")} typed and not saved";
        }

        return Slot(session, round) is not { } slot ? Coming(session, round)
            : Handover.InsteadOfTrips.Is(round.Id) ? $"{round.Points[0]} due {Say.Time(session.Site, slot.DueAt, session.Clock)}, closes {Say.Time(session.Site, slot.Closes, session.Clock)}"
            : RoundWords.Due(session, slot);
    }

    private static string Coming(Session session, Round round) => session.Facts.Now.Instead.FirstOrDefault(r => r.Round == round.Id && r.State == CheckState.Coming) is { } next
        ? $"{round.Points[0]} next {Say.Time(session.Site, next.DueAt, session.Clock)}"
        : "not open now";

    private static RoundNow? Slot(Session session, Round round) =>
        session.Facts.Now.Instead.Concat(session.Facts.Now.Rounds).FirstOrDefault(r => r.Round == round.Id && r.State == CheckState.Due);

    private static Next Choose(Session session, Keystroke key) => ByKey(session).FirstOrDefault(k => k.Key.ToString() == key.Rune.ToString()) is { Round: { } round }
        ? Next.Of(session.Put(new ChoosePage(round.Id, Chosen: true)).Say($"Enter opens {key.Rune} {round.Title}"))
        : Next.Of(session.Say($"no round has {key.Rune}"));

    private static string Opens(Session session)
    {
        var round = Rounds(session)[Selected(session)];
        return $"not taken: press Enter to open {Key(session, round)} {round.Title}; Up and Down choose another";
    }

    private static string? WhyNot(Session session) => session.By is null ? "say first who is typing: Esc, then i" : null;

    /// <summary>What is typed of another round is saved first; its answer tells whether this one may be opened.</summary>
    private static Next Open(Session session, Keystroke key, Setting setting)
    {
        var round = Rounds(session)[Selected(session)];
        session = session.Put(new ChoosePage(round.Id));
        return session.Draft is { } draft && (draft.Round != round.Id || draft.By != session.By || draft.SecondOf is not null)
            ? Next.Of(session, Saving.All(draft))
            : Next.Of(session, Opening(session, round));
    }
}
