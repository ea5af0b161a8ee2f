using System.Collections.Immutable;
using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>Records in words, newest first.</summary>
/// <param name="Read">What has been read of the journal, newest first.</param>
/// <param name="Oldest">Everything from this sequence number on has been read.</param>
/// <param name="Filter">What a shown record has; empty shows every record.</param>
internal sealed record LogPage(ImmutableList<LogLine> Read, long Oldest, LogFilter Filter, int Selected) : Page
{
    /// <summary>What is shown of <see cref="Read"/>: kept, so that a key does not look through thousands of records.</summary>
    public ImmutableList<LogLine> Shown { get; init; } = [];

    /// <summary>Records read since the last key while looking for those of the filter.</summary>
    public int Searched { get; init; }

    internal static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "open", "Opens the record in full.", (session, _, _) => Next.Of(session, new ReadRecord(Of(session).Marked!.Seq)), KeyName.Enter) with { WhyNot = NothingShown },
        KeyRow.Named("Up Down", "", "Moves the mark; Page Up, Page Down, Home and End too. Older records are read as they come.", Move, Moving.Keys),
        UsualKeys.Back(),
        KeyRow.Letter('f', "filter", "Shows only records with some words; area=, kind=, by= and shift= look in one place alone.", (session, _) => Next.Of(session.Open(LogReading.AskFilter(Of(session))))),
        KeyRow.Letter(']', "related", "All records that belong to this one: corrections, answers, what was carried and closed.", (session, _) => RelatedPage.Ask(session, Of(session).Marked!.Seq)) with { WhyNot = NothingShown },
        KeyRow.Letter('c', "correct", "Puts a reading of this entry right; both values stay.", (session, _) => Next.Of(session, new ReadRecord(Of(session).Marked!.Seq), new GoOn(new CorrectAsked()))) with { WhyNot = NoEntry },
        KeyRow.Letter('m', "remark", "A remark on this record.", (session, _) => Next.Of(session.Open(RecordAsks.Remark(Of(session).Marked!.Seq)))) with { WhyNot = s => NothingShown(s) ?? RecordAsks.NobodyTypes(s) },
        UsualKeys.Find,
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    /// <summary>The record under the mark; null when none is shown.</summary>
    public LogLine? Marked => Selected < Shown.Count ? Shown[Selected] : null;

    public override Layout Draw(Session session) => LogDrawing.Draw(session, this);

    private static LogPage Of(Session session) => (LogPage)session.Top;

    private static string? NothingShown(Session session) => Of(session).Marked is null ? "no record is shown" : null;

    private static string? NoEntry(Session session) => NothingShown(session) ?? (Of(session).Marked!.Kind != "entry" ? "only an entry has readings" : RecordAsks.NobodyTypes(session));

    private static Next Move(Session session, Keystroke key, Setting setting)
    {
        var page = Of(session);
        page = page with { Selected = Moving.Move(page.Selected, key, page.Shown.Count, session.Leaf), Searched = 0 };
        return LogReading.Enough(session.Put(page), page);
    }
}
