namespace Logbook.Screens;

/// <summary>Finishing or leaving a round: one entry of what the draft holds.</summary>
internal static class Leaving
{
    /// <summary>To where the round was opened from; a round that is done leads to Now.</summary>
    public static Next Leave(Session session, RoundPage page)
    {
        session = session.Back();
        session = page.AllAnswered && session.Top is ChoosePage ? session.Back() : session;
        if (session.Draft is { } draft)
        {
            return Next.Of(session, Saving.All(draft));
        }

        var (open, all) = (page.Rows.Count(r => r.Applies && !r.Answered), page.Rows.Count(r => r.Applies));
        return Next.Of(open == 0 ? session : session.Say($"{page.Round.Title}: {open} of {all} open, nothing unsaved"));
    }
}
