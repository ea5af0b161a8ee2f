namespace Logbook.Screens;

/// <summary>Pasted text. In a round each line of a column is one row's value, also of a row that is not asked for; an empty one leaves its row open. Where one line is asked for, of several none is taken.</summary>
internal static class Pasting
{
    public static Next Paste(Session session, string text)
    {
        string[] lines = text.Replace('\t', ' ').ReplaceLineEndings("\n").Split('\n');
        var given = lines.Count(l => l.Trim().Length > 0);
        return session.Top switch
        {
            RoundPage => Next.Of(session, new GoOn(new PastedColumn(lines, 0))),
            var page when given > 1 && page.Pasted("") is not null => Next.Of(session.Say($"{given} lines were pasted where one is asked for: nothing was taken", Look.Watch)),
            var page => Next.Of(page.Pasted(lines[0]) is { } with ? session.Put(with) : session.Say("nothing can be pasted here")),
        };
    }

    /// <summary>
    /// One line as if typed, then the next. The first line that is not accepted ends it, and it is said how much was left
    /// out. What stands behind the last line end waits in the field for its Enter.
    /// </summary>
    public static Next Line(Session session, PastedColumn column, Setting setting)
    {
        if (session.Top is not RoundPage page || page.IsTyping || (page.Refused && column.At > 0) || page.AtEnd || column.At == column.Lines.Count)
        {
            return Next.Of(LeftOut(session, column));
        }

        var text = column.Lines[column.At].Trim();
        if (page.Row is { Rests: { } why, Answered: false } && text.Length > 0)
        {
            return Next.Of(LeftOut(session, column, $"; the next is {page.Row.Point.Tag}, not asked for: {why}"));
        }

        page = Typing.In(session, page, text, setting);
        if (column.At == column.Lines.Count - 1)
        {
            return Next.Of(session.Put(page));
        }

        var next = Entering.Enter(session.Put(page), page, setting);
        return next with { Session = RowByRow(next.Session, page.Current), Effects = [.. next.Effects, new GoOn(column with { At = column.At + 1 })] };
    }

    /// <summary>Keys pass over what is not asked for; a column has a line for it.</summary>
    private static Session RowByRow(Session session, int before) =>
        session.Top is RoundPage { Refused: false } page && page.Rows.FindIndex(before + 1, r => !r.Answered) is >= 0 and var row && page.Rows[row].Rests is not null
            ? session.Put(page.MoveTo(row)) : session;

    private static Session LeftOut(Session session, PastedColumn column, string why = "")
    {
        var rest = column.Lines.Skip(column.At).Count(l => l.Trim().Length > 0);
        return rest == 0 ? session : session.Say(FormattableString.Invariant($"pasting ended at line {column.At}; {rest} more were left out{why}"));
    }
}
