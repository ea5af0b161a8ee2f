using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A round as it stands on the screen.</summary>
internal static class RoundDrawing
{
    public static Layout Draw(Session session, RoundPage page)
    {
        var columns = new RoundColumns(session.Width, page);
        var results = RoundResults.ByRow(page);
        var carried = CarriedInRound.Due(session, page);
        var body = new List<Line>();
        var (from, to) = (0, 0);
        string? area = null;
        for (var i = 0; i < page.Rows.Count; i++)
        {
            var row = page.Rows[i];
            var top = body.Count;
            if (row.Point.Area != area)
            {
                area = row.Point.Area;
                body.Add(Line.Of(" " + AreaWords.Of(area), Look.Strong));
            }

            body.AddRange(carried[i].Select(item => CarriedInRound.Draw(session, item)));
            if (i == page.Current)
            {
                (from, to) = (top, body.Count);
            }

            body.Add(i == page.Current && !page.AtEnd ? columns.Field(session, page) : columns.Row(session, row));
            body.AddRange(results[i].Select(columns.Result));
        }

        if (page.AtEnd)
        {
            (from, to) = (body.Count, body.Count);
            body.Add(columns.End(page));
        }

        return new Layout([Head(session, page), .. HazardLines.InShort(session), .. Cautions(session, page), Rule(session)], body, from, to, [Rule(session), .. RoundPanel.Draw(session, page, columns)]);
    }

    /// <summary>What the samples of this round ask to be careful with: whoever titrates reads it before the first drop.</summary>
    private static IEnumerable<Line> Cautions(Session session, RoundPage page)
    {
        var samples = page.Rows.Select(r => r.Point.Sample).OfType<string>().Select(s => "sample:" + s).ToHashSet(StringComparer.Ordinal);
        return session.Site.Cautions.Where(c => c.Triggers.Any(samples.Contains))
            .SelectMany(c => TextWidth.Wrap(Handover.Say.Visible($"CAUTION {c.Text} {c.Ppe}"), session.Width - 2)).Select(l => Line.Of(" " + l, Look.Strong));
    }

    private static Line Head(Session session, RoundPage page)
    {
        string Time(DateTimeOffset at) => Handover.Say.Time(session.Site, at, session.Clock);
        // What is typed counts from the walk, not from now: that stands in sight for as long as it does.
        var walked = page is { WalkStart: { } start, WalkEnd: { } end } ? $", walked {Time(start)} to {Time(end)}" : null;
        var strays = page.Slot is { } of && page.WalkEnd is { } ended && (ended < of.Opens || ended > of.Closes);
        var when = strays ? $"{walked}: not the one of {Time(page.Slot!.DueAt)}"
            : page.Slot is { } slot
            ? $" {Time(slot.DueAt)}{walked ?? (session.Clock < slot.Closes ? $", closes in {RoundWords.Span(slot.Closes - session.Clock)}" : ", closed")}"
            : page.SecondOf is { } first ? $", second reading, the first {Handover.Say.Ref(first)}" : walked ?? "";
        var counts = LevelWords.Count(page.Rows.Select(r => r.Check.Worst).OfType<Level>());
        var open = FormattableString.Invariant($"{page.Rows.Count(r => r.Applies && !r.Answered)} open");
        var kept = session is { Draft: not null, DraftKeptAt: { } at } ? $" on disk {at:HH:mm}" : "";
        return Line.Of(new Span($" {page.Round.Title.ToUpperInvariant()}{when}", Look.Strong), new Span($"   {session.By}   {open}{(counts.Length > 0 ? "   " : "")}{counts}"))
            .With(new Span(kept + " ", Look.Faint), session.Width);
    }

    private static Line Rule(Session session) => Line.Of(" " + new string('-', Math.Max(0, session.Width - 2)), Look.Faint);
}
