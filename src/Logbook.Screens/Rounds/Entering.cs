using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>What Enter does in a round.</summary>
internal static class Entering
{
    // Only to learn whether one would let the value stand; never saved.
    private const string AnyReason = "any reason";

    public static Next Enter(Session session, RoundPage page, Setting setting)
    {
        if (page is { AtEnd: true, Field.Length: > 0 })
        {
            return Next.Of(session.Say($"no row is left for {page.Field}: Delete empties the field, then Enter saves the round"));
        }

        if (page.Field.Length > 0)
        {
            return Take(session, page, page.Line(session, page.Field, setting.Now), setting);
        }

        return page.AllAnswered ? Leaving.Leave(session, page) : Going.On(session, page with { Spoken = [] });
    }

    /// <summary>Takes the line into the draft and goes on; what cannot be accepted stays in the field and says why.</summary>
    public static Next Take(Session session, RoundPage page, DraftLine line, Setting setting)
    {
        var judged = Judging.Judge(session, page, line, setting);
        if (judged.Value is not { } entry)
        {
            var mayKeep = line.Why is null && line.Text is not "-" && Judging.Judge(session, page, line with { Why = AnyReason }, setting).Ok;
            return Next.Of(session.Put(page with { Live = new RowCheck(null, "not accepted", [Judging.Refusal(judged.Mistakes)]), Refused = true, MayKeep = mayKeep }));
        }

        var check = RowCheck.Of(page.Row.Point, Judging.Findings(page, entry));
        var urgent = check.Findings.Where(f => f.Level == Level.Urgent).ToList();
        page = Judging.InOrder(page.Put(page.Row with { Line = line, Check = check }), entry) with
        {
            Answered = page.Current,
            Spoken = urgent,
            // What can no more be computed with this reading does not go on standing there.
            Results = ResultRow.Merge(page.Results.RemoveRange(page.Results.Keys.Where(derived => page.Links.Makes(line.Point, derived))), session.Site, page.Links, line.Point, entry),
        };
        session = session with { Draft = Draft.Put(session.Draft, line) };
        var on = Going.On(NotAsked(page.Row.FirstStays is { } stays ? session.Say(stays) : session, page.Row), page);
        return on with { Effects = [new KeepDraft(line), .. urgent.Count > 0 ? [Urgently(session.Draft!, page)] : Array.Empty<Effect>(), .. on.Effects] };
    }

    /// <summary>The same reason for each of these rows.</summary>
    public static Next TakeAll(Session session, IReadOnlyList<int> rows, string why, Setting setting)
    {
        var effects = new List<Effect>();
        foreach (var row in rows)
        {
            var page = ((RoundPage)session.Top).MoveTo(row);
            var next = Take(session.Put(page), page, page.Line(session, "-", setting.Now) with { Why = why, Second = null }, setting);
            session = next.Session;
            effects.AddRange(next.Effects);
        }

        return Next.Of(session, effects);
    }

    /// <summary>A value that slid into the row of what stands still is seen at once, and can be taken back.</summary>
    private static Session NotAsked(Session session, RoundRow row) => row is { Rests: { } why, NotTaken: false }
        ? session.Say($"{row.Point.Tag} {row.Text} was NOT ASKED FOR: {why}. Taken all the same; if it belongs elsewhere, Up to the row and Delete take it back", Look.Watch)
        : session;

    /// <summary>Changes a line that is taken already, or keeps words for one that is still to come; the row stays.</summary>
    public static Next Amend(Session session, RoundPage page, DraftLine line)
    {
        Effect[] keep = line.IsEmpty && session.Draft?.Find(line.Point) is null ? [] : [new KeepDraft(line)];
        session = session with { Draft = Draft.Put(session.Draft, line) };
        return Next.Of(session.Put(page.Put(page.Row with { Line = line })), keep.Length > 0 && session.Draft is null ? [.. keep, new DropDraft()] : keep);
    }

    /// <summary>An urgent finding does not wait. A sample that is half typed stays in the draft: it counts only as a whole.</summary>
    private static SaveEntry Urgently(Draft draft, RoundPage page)
    {
        var half = page.Rows.Where(r => r.Point.Sample is not null).GroupBy(r => r.Point.Sample, StringComparer.Ordinal)
            .Where(s => s.Any(r => !r.Answered) && s.All(r => r.Check.Worst != Level.Urgent))
            .SelectMany(s => s.Select(r => r.Point.Tag)).ToHashSet(StringComparer.Ordinal);
        return new SaveEntry(draft.Request([.. draft.Lines.Where(l => !half.Contains(l.Point))]));
    }
}
