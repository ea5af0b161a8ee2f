using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>Reads the journal as the log needs it: the newest records at once, older ones as the mark comes near them.</summary>
internal static class LogReading
{
    private const int Portion = 200;

    /// <summary>So many records are looked through at one key for those that a filter shows.</summary>
    private const int Patience = 4000;

    /// <param name="filter">Words that a shown record has; empty for every record.</param>
    public static Next Open(Session session, string filter = "")
    {
        var page = new LogPage([], session.Facts.Head.Seq + 1, new LogFilter(filter), 0);
        return Next.Of(session.Open(page), Older(page));
    }

    public static AskPage AskFilter(LogPage page) => new(
        "Show only records with", page.Filter.IsEmpty ? LogFilter.Accepted : $"{LogFilter.Accepted}. Now shown: {page.Filter.Text}", "",
        (asking, words, _) => new LogFilter(words.Trim()) is var filter && filter.WhyNot is { } why ? Next.Of(asking.Say(why)) : Filter(asking.Back(), filter));

    private static Next Filter(Session session, LogFilter filter)
    {
        var page = (LogPage)session.Top with { Filter = filter, Selected = 0, Searched = 0 };
        page = page with { Shown = page.Read.FindAll(filter.Shows) };
        return Enough(session.Put(page), page);
    }

    public static Next Read(Session session, LogRead read)
    {
        if (session.Pages.FindIndex(p => p is LogPage) is var at && at < 0)
        {
            return Next.Of(session);
        }

        var page = (LogPage)session.Pages[at];
        if (read.Oldest > page.Oldest || (page.Read.Count > 0 && read.Lines.Count > 0 && read.Lines[^1].Seq > page.Read[0].Seq))
        {
            page = Newer(page, read.Lines);
        }
        else if (page.Read.IsEmpty || read.Lines.Count == 0 || read.Lines[0].Seq < page.Read[^1].Seq)
        {
            page = page with
            {
                Read = page.Read.AddRange(read.Lines), Shown = page.Shown.AddRange(read.Lines.Where(page.Filter.Shows)),
                Oldest = read.Oldest, Searched = page.Searched + read.Lines.Count,
            };
        }

        return Enough(session with { Pages = session.Pages.SetItem(at, page) }, page);
    }

    /// <summary>Reads on while there is more and the screen below the mark is not full.</summary>
    public static Next Enough(Session session, LogPage page) =>
        page.Oldest > 1 && page.Shown.Count < page.Selected + session.Height && page.Searched < Patience
            ? Next.Of(session, Older(page))
            : Next.Of(session);

    /// <summary>What was written since stands on top; the mark stays on its record.</summary>
    public static Next Follow(Session session)
    {
        var newest = session.Pages.OfType<LogPage>().FirstOrDefault()?.Read.FirstOrDefault()?.Seq;
        return newest < session.Facts.Head.Seq ? Next.Of(session, new ReadNewer(newest.Value)) : Next.Of(session);
    }

    private static ReadOlder Older(LogPage page) => new(page.Oldest, Portion, Later: !page.Filter.IsEmpty);

    private static LogPage Newer(LogPage page, IReadOnlyList<LogLine> lines)
    {
        var shown = lines.Where(page.Filter.Shows).ToList();
        return page with
        {
            Read = page.Read.InsertRange(0, lines), Shown = page.Shown.InsertRange(0, shown),
            Selected = page.Selected == 0 ? 0 : page.Selected + shown.Count,
        };
    }
}
