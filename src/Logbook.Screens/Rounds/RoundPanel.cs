using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Under the list: the present row's limits, what is said of it, and what was answered before it. What is urgent stands whole, whatever room it takes.</summary>
internal static class RoundPanel
{
    public static IReadOnlyList<Line> Draw(Session session, RoundPage page, RoundColumns columns)
    {
        var tall = session.Height >= 34;
        List<Line> lines =
        [
            .. Point(page.Row.Point, columns, session.Width),
            .. page.Row is { Rests: { } why, Answered: false } ? Gutter.Lines("", page.Field.Length == 0 ? Look.Plain : Look.Watch, page.Field.Length == 0 ? $"not asked: {why}; Enter leaves it" : $"NOT ASKED: {why}. Enter takes {page.Field} for it all the same, Delete empties the field", session.Width) : [],
            .. page.Spoken.SelectMany(f => Gutter.Lines("URGENT", Look.Urgent, $"{FindingWords.Of(session.Site, f)}.", session.Width, rest: Look.Strong)),
            .. Said(page).SelectMany(f => Gutter.Lines(f.Code == "refused" ? "refused" : LevelWords.Of(f.Level), LevelWords.LookOf(f.Level), Words(session.Site, f), session.Width, f.Level == Level.Urgent ? int.MaxValue : tall ? 3 : 2)),
        ];
        List<Line> answered = [.. Answered(session, page)];
        var room = Math.Max(lines.Count + (Last(page)?.Check.Worst == Level.Urgent ? answered.Count : 0), tall ? 9 : page.Spoken.Count > 0 ? 5 : 4);
        lines.AddRange(answered.Take(room - lines.Count));
        return [.. lines, .. Enumerable.Repeat(Line.Empty, room - lines.Count)];
    }

    /// <summary>Of what cannot be computed the reason before all that hangs on it.</summary>
    private static string Words(Site site, Finding finding) =>
        finding.Evidence.Count > 0 && finding.Point is { } tag && site.FindPoint(tag) is { } point && Judging.IsImpossible(point, finding)
            ? $"{point.Description}: {finding.Evidence[0]}; {finding.Text}"
            : FindingWords.Of(site, finding);

    /// <summary>Every urgent finding, else one at a time: of what is being typed, else of the present row when it is answered.</summary>
    private static IEnumerable<Finding> Said(RoundPage page) => page.Spoken.Count > 0 && page.Field.Length == 0 ? []
        : Worst(page.Live.Findings.Count > 0 ? page.Live.Findings : page.Row.Answered && page.Field.Length == 0 ? page.Row.Check.Findings : []);

    private static IEnumerable<Finding> Worst(IReadOnlyList<Finding> findings) => findings.Any(f => f.Level == Level.Urgent) ? findings.Where(f => f.Level == Level.Urgent) : findings.Take(1);

    /// <summary>The value before, only beside one that was given: the present row's, else the one answered last.</summary>
    private static IEnumerable<Line> Answered(Session session, RoundPage page)
    {
        if (Last(page) is not { } row)
        {
            return [];
        }

        var before = row.Before is { } past
            ? $"{Comma(row.Change())}; before {Say.Value(row.Point, past.Value!.Value, past.Unit)} at {Say.Time(session.Site, past.At, session.Clock)}"
            : "; no value before it";
        var text = $"{row.Value(session.Site)}{before}";
        return Gutter.Lines(row.Point.Tag == page.Row.Point.Tag ? "typed" : row.Point.Tag, Look.Faint, text, session.Width, 1)
            .Concat(row.Check.Findings.Count > 0 && row != page.Row && page.Spoken.Count == 0
                ? Worst(row.Check.Findings).SelectMany(f => Gutter.Lines(LevelWords.Of(f.Level), LevelWords.LookOf(f.Level), FindingWords.Of(session.Site, f), session.Width, f.Level == Level.Urgent ? int.MaxValue : 2))
                : [])
            .Concat(Spark(row) is { Length: > 0 } spark ? Gutter.Lines("", Look.Plain, spark, session.Width, 1, Look.Faint) : []);
    }

    private static RoundRow? Last(RoundPage page) => page.Row.Answered ? page.Row : page.Answered is { } last ? page.Rows[last] : null;

    private static string Comma(string text) => text.Length == 0 ? "" : ", " + text;

    /// <summary>The point by its whole name where the row has no room for it, and what it is judged by; of choices every one.</summary>
    private static IEnumerable<Line> Point(Point point, RoundColumns columns, int width)
    {
        var judged = point.Choices.Count > 0 ? Choices(point) : Limits(point);
        return columns.Cuts(point)
            ? Gutter.Lines(point.Tag, Look.Strong, point.Description, width).Concat(Gutter.Lines("", Look.Plain, judged, width))
            : Gutter.Lines(point.Tag, Look.Strong, judged, width);
    }

    /// <summary>The last values as a row of heights, the new one last.</summary>
    private static string Spark(RoundRow row)
    {
        var values = row.Past.Where(v => v.Seq != row.Saved?.Seq).Select(v => v.Value!.Value).Concat(row.Number is { } now ? [now] : []).ToList();
        if (values.Count < 4 || row.Point.Choices.Count > 0 || row.NotTaken)
        {
            return "";
        }

        var (low, high) = (values.Min(), values.Max());
        return FormattableString.Invariant($"the last {values.Count}, _ lowest, ^ highest: ") + (high == low ? new string('-', values.Count) : string.Concat(values.Select(v => "_.-'^"[(int)Math.Round((v - low) / (high - low) * 4)])));
    }

    private static string Choices(Point point) => string.Join(", ", point.Choices.Select(c => $"{c.Digit} {c.Text}{(c.Level is null ? "" : $" ({c.Level})")}"));

    /// <summary><c>degC, watch outside 95 to 102, urgent above 103.2; possible 0 to 115</c>.</summary>
    private static string Limits(Point point)
    {
        var possible = point is { Lowest: { } low, Highest: { } high } ? $"; possible {LimitText.Number(low)} to {LimitText.Number(high)}" : "";
        return string.Join(", ", new[] { point.Unit.ToString(), LimitText.Of(point.Limits) }.Where(t => t.Length > 0)) + possible;
    }
}
