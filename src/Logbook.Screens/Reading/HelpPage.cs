namespace Logbook.Screens;

/// <summary>The keys of a page, drawn from the same table that does their work; a key that does nothing now says why.</summary>
internal sealed record HelpPage(Page Of, int Scroll = 0) : Page, IScrolled
{
    private static readonly KeyTable Table = new(
        Scrolling.Keys,
        UsualKeys.Back("Back to the page."));

    public override KeyTable Keys => Table;

    public Page ScrolledTo(int line) => this with { Scroll = line };

    public override Layout Draw(Session session) => new([Line.Of(" Keys of this page", Look.Strong), Line.Empty], Lines(session), Scroll, Scroll, []) { Top = Scroll };

    private List<Line> Lines(Session session)
    {
        var under = session.Back();
        return
        [
            .. Of.Keys.Rows.Append(UsualKeys.Emergency).SelectMany(row => Gutter.Lines(row.Keys, Look.Strong, row.Help + (Of.Keys.WhyNot(under, row) is { } why ? $" Not now: {why}." : ""), session.Width)),
            Line.Empty,
            .. Of.Legend.Marks.Count == 0 ? [] : Of.Legend.Marks.Select(m => Line.Of("   " + m)).Prepend(Line.Of(" " + Of.Legend.Title, Look.Strong)).Append(Line.Empty),
            .. TextWidth.Wrap("Plus or minus is two standard uncertainties: 19 in 20. It covers what stands behind it, or in the record, and nothing else. Figures advise; the site's procedures, local codes and licensed practice decide.", session.Width - 2).Select(l => Line.Of(" " + l, Look.Faint)),
        ];
    }
}
