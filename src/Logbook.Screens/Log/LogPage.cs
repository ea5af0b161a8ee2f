using System.Collections.Immutable;
using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>Records in words, newest first.</summary>
/// <param name="Read">What has been read of the journal, newest first.</param>
/// <param name="Oldest">Everything from this sequence number on has been read.</param>
/// <param name="Filter">Words that a shown record has, all of them; empty shows every record.</param>
internal sealed record LogPage(ImmutableList<LogLine> Read, long Oldest, string Filter, int Selected) : Page
{
    /// <summary>Records read since the last key while looking for those of the filter.</summary>
    public int Searched { get; init; }

    internal static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "open", "Opens the record in full.", (session, _, _) => Next.Of(session, new ReadRecord(Of(session).Shown[Of(session).Selected].Seq)), KeyName.Enter)
            with { WhyNot = s => Of(s).Shown.Count == 0 ? "no record is shown" : null },
        KeyRow.Named("Up Down", "move", "Moves the mark; Page Up, Page Down, Home and End too. Older records are read as they come.", Move, Moving.Keys),
        KeyRow.Letter('f', "filter", "Shows only records with some words.", (session, _) => Next.Of(session.Open(LogReading.AskFilter(Of(session))))),
        UsualKeys.Find,
        UsualKeys.Back(),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public IReadOnlyList<LogLine> Shown => Filter.Length == 0 ? Read : [.. Read.Where(Has)];

    public override Layout Draw(Session session) => LogDrawing.Draw(session, this);

    private bool Has(LogLine line) => Filter.Split(' ', StringSplitOptions.RemoveEmptyEntries).All(word =>
        new[] { line.Words, line.By, line.Area, line.Kind, line.Shift }.Any(text => text.Contains(word, StringComparison.OrdinalIgnoreCase)));

    private static LogPage Of(Session session) => (LogPage)session.Top;

    private static Next Move(Session session, Keystroke key, Setting setting)
    {
        var page = Of(session);
        page = page with { Selected = Moving.Move(page.Selected, key, page.Shown.Count, session.Leaf), Searched = 0 };
        return LogReading.Enough(session.Put(page), page);
    }
}
