using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>A draft that an earlier session left behind, offered: go on with it, or save it as it is. It is never thrown away.</summary>
internal sealed record LeftPage : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "go on", "Goes on with it.", (session, _, _) => GoOn(session), KeyName.Enter) with { WhyNot = Not },
        KeyRow.Letter('v', "save", "Saves it as one entry, as it is, under the name of the one who typed it.", (session, _) => Save(session)) with { WhyNot = OwnFirst },
        KeyRow.Named("Esc", "later", "Leaves it where it is; u on Now shows it again.", (session, _, _) => Next.Of(session.Back()), KeyName.Esc),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var draft = session.Left[0].Draft;
        return new Layout(
            [
                Line.Of(" Typed, but not in the journal", Look.Watch),
                Line.Of($" {Saving.Unsaved(session, draft)}"),
                Line.Of($" {(session.Left.Count == 1 ? "Its session ended before it was saved." : $"Its session ended before it was saved. {session.Left.Count - 1} more after this one.")}"),
                Line.Empty,
            ],
            [.. draft.Lines.SelectMany(l => Gutter.Lines(l.Point, Look.Strong, Words(session, l), session.Width))], 0, 0, []);
    }

    private static string Words(Session session, DraftLine line)
    {
        var point = session.Site.FindPoint(line.Point);
        var text = line.Text is null ? "" : line.Text == "-" ? $"not taken ({line.Why})"
            : point?.Choices.FirstOrDefault(c => $"{c.Digit}" == line.Text) is { } choice ? $"{line.Text} {choice.Text}"
            : $"{line.Text} {point?.Unit}";
        return $"{text}  read {Say.Time(session.Site, line.At, session.Clock)}{(line.Remark is null ? "" : "; " + line.Remark)}";
    }

    private static string? OwnFirst(Session session) => session.Draft is null ? null : "save first what you have typed yourself: Esc, then v";

    /// <summary>A draft is one person's: nobody goes on under another's name.</summary>
    private static string? Not(Session session)
    {
        var draft = session.Left[0].Draft;
        return OwnFirst(session)
            ?? (draft.By != session.By ? $"{Say.Person(session.Site, draft.By)} typed it: v saves it under that name, then r goes on under your own" : null)
            ?? (ChoosePage.Find(session, draft.Round) is null ? $"{InsteadOfTrips.Title(session.Site, draft.Round)} is walked no more; v tries to save it" : null);
    }

    private static Next GoOn(Session session)
    {
        var (taken, effect) = Take(session);
        var round = ChoosePage.Find(taken, taken.Draft!.Round)!;
        return Next.Of(taken, effect, taken.Draft.SecondOf is { } first
            ? new OpenRound(round, null, SecondReading.Of(taken.Site, first, taken.Draft.Lines[0].Point))
            : ChoosePage.Opening(taken, round));
    }

    private static Next Save(Session session)
    {
        var (taken, effect) = Take(session);
        return Next.Of(taken, effect, Saving.All(taken.Draft!));
    }

    /// <summary>The draft is this session's from now on, and still of the one who typed it.</summary>
    private static (Session Session, Effect Effect) Take(Session session)
    {
        var left = session.Left[0];
        session = session.Back() with { Draft = left.Draft, Left = session.Left.RemoveAt(0) };
        return (session, new TakeUpDraft(left.File));
    }
}
