namespace Logbook.Screens;

/// <summary>Finishing or leaving a round: one entry of what the draft holds.</summary>
internal static class Leaving
{
    public static Next Leave(Session session, RoundPage page)
    {
        session = session.Back();
        if (session.Draft is { } draft)
        {
            return Next.Of(session, Saving.All(draft));
        }

        var (open, all) = (page.Rows.Count(r => r.Applies && !r.Answered), page.Rows.Count(r => r.Applies));
        return Next.Of(open == 0 ? session : session.Say($"{page.Round.Title}: {open} of {all} open, nothing unsaved"));
    }
}
