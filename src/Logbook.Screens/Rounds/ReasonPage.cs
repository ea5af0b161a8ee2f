namespace Logbook.Screens;

/// <summary>Why a reading was not taken. The digit only chooses; Enter takes it, so that a wrong digit never lands in the next row.</summary>
/// <param name="Digit">The chosen reason; null before the first digit.</param>
internal sealed record ReasonPage(int? Digit) : Page
{
    private static readonly KeyTable Table = new(
        new KeyRow("1-9", "choose", "Chooses a reason; another digit chooses another.", key => key.Digit is not null, Choose),
        KeyRow.Named("Enter", "take", "Takes the reason and goes to the next open row.", Take, KeyName.Enter) with { WhyNot = s => ((ReasonPage)s.Top).Digit is null ? "choose a reason by its digit first" : null },
        UsualKeys.Back("Back to the row; it stays open."));

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var reasons = session.Site.Reasons.NotTaken;
        var page = (RoundPage)session.Under;
        IReadOnlyList<Line> foot =
        [
            Line.Of($" {page.Row.Point.Tag} {page.Row.Point.Description}: not taken, because", Look.Strong),
            .. reasons.Take(9).Select((reason, i) => Line.Of($"{(Digit == i + 1 ? " >" : "  ")} {i + 1} {reason}", Digit == i + 1 ? Look.Chosen : Look.Plain)),
        ];
        return page.Draw(session) with { Foot = foot };
    }

    private static Next Choose(Session session, Keystroke key, Setting setting)
    {
        var known = session.Site.Reasons.NotTaken.Take(9).Count();
        return Next.Of(key.Digit >= 1 && key.Digit <= known
            ? session.Put(new ReasonPage(key.Digit))
            : session.Say($"there is no reason {key.Digit}; 1 to {known}"));
    }

    private static Next Take(Session session, Keystroke key, Setting setting)
    {
        var why = session.Site.Reasons.NotTaken[((ReasonPage)session.Top).Digit!.Value - 1];
        session = session.Back();
        var page = (RoundPage)session.Top;
        return Entering.Take(session, page, page.Line(session, "-", setting.Now) with { Why = why, Second = null }, setting);
    }
}
