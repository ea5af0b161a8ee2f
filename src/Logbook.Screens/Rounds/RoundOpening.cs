using System.Collections.Immutable;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Opens a round for typing, with what is in the draft and in the journal already.</summary>
internal static class RoundOpening
{
    public static Next Open(Session session, RoundOpened opened, Setting setting)
    {
        var draft = session.Draft;
        var rows = opened.Round.Points.Select(session.Site.FindPoint).OfType<Point>().Where(p => p.Kind == PointKind.Read && (opened.Second?.Points.Contains(p.Tag, StringComparer.OrdinalIgnoreCase) ?? true))
            .Select(p => new RoundRow(p) { Line = draft?.Find(p.Tag), Saved = opened.Saved.GetValueOrDefault(p.Tag), Rests = opened.Resting.GetValueOrDefault(p.Tag) })
            .ToImmutableList();
        if (rows.IsEmpty)
        {
            return Next.Of(session.Say($"{opened.Round.Title} has no point that is read"));
        }

        var walk = draft?.Lines.Find(l => l.WalkStart is not null);
        var page = new RoundPage(opened.Round, opened.Slot, rows, new Links(session.Site)) { WalkStart = walk?.WalkStart, WalkEnd = walk?.WalkEnd, SecondOf = opened.Second?.Seq };
        page = Judged(session, Spoken(page), setting);
        page = page.MoveTo(Math.Max(0, page.Rows.FindIndex(r => r.IsAsked)));
        session = session.Open(page);
        session = opened.Round.Field && opened.Second is null && page.WalkEnd is null ? session.Open(RoundAsks.WalkStart(session)) : session;
        return Next.Of(session, new LookBack(page.Row.Point.Tag));
    }

    public static Session LookedBack(Session session, LookedBack looked) => session with
    {
        Pages = session.Pages.ConvertAll(page => page is RoundPage round
            ? round with { Rows = round.Rows.ConvertAll(r => r.Point.Tag == looked.Point ? r with { Past = looked.Values } : r) }
            : page),
    };

    /// <summary>What the journal says of the rows that it has: of each value, and urgent of what is computed from several beside the last of them.</summary>
    private static RoundPage Spoken(RoundPage page)
    {
        bool IsBeside(int row, Finding finding) => finding.Point is { } tag && (tag == page.Rows[row].Point.Tag
            || (finding.Level == Level.Urgent && page.RowsOf(tag).LastOrDefault(i => page.Rows[i].Saved?.Seq == page.Rows[row].Saved!.Seq, -1) == row));
        return page with
        {
            Rows = [.. page.Rows.Select((row, i) => row.Saved is { } saved ? row with { Check = RowCheck.Of(row.Point, [.. saved.Findings.Where(f => IsBeside(i, f))]) } : row)],
        };
    }

    /// <summary>The draft's lines judged again, so that the round looks as it was left.</summary>
    private static RoundPage Judged(Session session, RoundPage page, Setting setting)
    {
        for (var i = 0; i < page.Rows.Count; i++)
        {
            page = page.MoveTo(i);
            if (page.Row.Line is { Text: not null } line && Judging.Judge(session, page, line, setting).Value is { } entry)
            {
                page = page.Put(page.Row with { Check = RowCheck.Of(page.Row.Point, Judging.Findings(page, entry)) });
                page = page with { Results = ResultRow.Merge(page.Results, session.Site, page.Links, line.Point, entry) };
            }
        }

        return page;
    }
}
