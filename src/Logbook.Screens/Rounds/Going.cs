namespace Logbook.Screens;

/// <summary>From row to row.</summary>
internal static class Going
{
    public static Next To(Session session, RoundPage page, int row)
    {
        page = page.MoveTo(row);
        return Next.Of(session.Put(page), new LookBack(page.Row.Point.Tag));
    }

    /// <summary>To the next open row. When there is none the field goes behind the last, and one more Enter saves the round.</summary>
    public static Next On(Session session, RoundPage page)
    {
        if (page.NextOpen is { } row)
        {
            return To(session, page, row);
        }

        page = page.MoveTo(page.Current) with { AtEnd = page.AllAnswered };
        return Next.Of(session.Put(page).Say(page.AtEnd
            ? $"every row is answered: Enter saves the round{CarriedInRound.Rest(session, page)}, arrows look again"
            : "only this row is open: n says why it was not taken, Esc leaves it open and saves the round"));
    }
}
