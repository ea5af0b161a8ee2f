namespace Logbook.Screens;

/// <summary>What was asked about the present row, put into its line.</summary>
internal static class RowAnswers
{
    public static Next Remark(Session session, string text)
    {
        var page = (RoundPage)session.Top;
        var words = string.IsNullOrWhiteSpace(text) ? null : text.Trim();
        return words is null && page.Row.Line is null
            ? Next.Of(session)
            : Entering.Amend(session, page, (page.Row.Line ?? page.Line(session, null, session.Clock)) with { Remark = words });
    }

    /// <summary>The time belongs to the value that is there or comes next; a value that is there is judged again by it.</summary>
    public static Next ReadAt(Session session, DateTimeOffset at, Setting setting)
    {
        var page = (RoundPage)session.Top;
        var line = (page.Row.Line ?? page.Line(session, null, setting.Now)) with { At = at, AtGiven = true };
        return line.Text is null || page.Field.Length > 0 ? Entering.Amend(session, page, line) : Entering.Take(session, page, line, setting);
    }

    /// <summary>The second reading goes beside the first in its row; the field stays where it is.</summary>
    public static Next Second(Session session, Session asking, int row, string text, Setting setting)
    {
        var (present, page) = ((RoundPage)session.Top, ((RoundPage)session.Top).MoveTo(row));
        if (page.Row.Line is not { Text: not null and not "-" } first)
        {
            return Next.Of(asking.Say("there is no first reading to set it beside: Esc, type that, then s on its row"));
        }

        var line = first with { Second = string.IsNullOrWhiteSpace(text) ? null : text.Trim() };
        var judged = Judging.Judge(session, page, line, setting);
        if (!judged.Ok)
        {
            return Next.Of(asking.Say(InKeys.Of(string.Join("; ", judged.Mistakes))));
        }

        var amended = Entering.Amend(session, page, line);
        return amended with { Session = amended.Session.Put(present with { Rows = ((RoundPage)amended.Session.Top).Rows }) };
    }

    public static Next Keep(Session session, string why, Setting setting)
    {
        var page = (RoundPage)session.Top;
        return Entering.Take(session, page, page.Line(session, page.Field, setting.Now) with { Why = why.Trim() }, setting);
    }
}
