using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>What an entry would be judged to be with one more line: the live check, and the check at Enter.</summary>
internal static class Judging
{
    // A reading of a sample is below the one from which it counts on.
    private const string Order = "calculation.order";

    // Readings that cannot be true together, so that nothing is computed of them.
    private const string NotPossible = "calculation.refused";

    /// <summary>The line judged together with those typed before that some calculation needs beside it.</summary>
    public static Parsed<Entry> Judge(Session session, RoundPage page, DraftLine line, Setting setting)
    {
        if (IsNoNumber(page.Row.Point, line.Text) is { } mistyped)
        {
            return new Parsed<Entry>(null, [mistyped]);
        }

        var draft = session.Draft ?? new Draft(line.Round, line.By, []);
        var beside = draft.Lines.Where(l => l.Text is not null && l.Point != line.Point && page.Links.Together(l.Point, line.Point));
        return setting.Judge(draft.Request([.. beside, line]));
    }

    /// <summary>In a round a value is a number in the point's own unit: a letter that was hit beside a digit is no unit.</summary>
    private static Mistake? IsNoNumber(Point point, string? text)
    {
        Mistake? mistake = null;
        _ = text is null or "-" || point.Choices.Count > 0 ? null : Typed.Number(text, Place.Unknown, out mistake);
        return mistake;
    }

    /// <summary>
    /// While a value is being typed only limits speak, and that the readings of a sample cannot be true together: what compares
    /// it with earlier ones would tell them before the new one is given.
    /// </summary>
    public static RowCheck Live(Session session, RoundPage page, Setting setting)
    {
        var point = page.Row.Point;
        if (page.Field.Length == 0 || page.AtEnd || MayGrow(point, page.Field))
        {
            return RowCheck.None;
        }

        var judged = Judge(session, page, page.Line(session, page.Field, setting.Now), setting);
        return judged.Value is { } entry
            ? RowCheck.Of(point, [.. Findings(page, entry).Where(f => f.Code.StartsWith("limit.", StringComparison.Ordinal) || f.Code.StartsWith("choice.", StringComparison.Ordinal)
                || (IsOfSample(page, f) && !OneDigitMends(session, page, setting)))])
            : new RowCheck(null, "not accepted", [Refusal(judged.Mistakes)]);
    }

    /// <summary><c>34</c> on the way to 34.90: what the largest next digit puts in order is not said yet.</summary>
    private static bool OneDigitMends(Session session, RoundPage page, Setting setting)
    {
        var more = page.Field.Contains('.', StringComparison.Ordinal) || page.Field.Contains(',', StringComparison.Ordinal) ? "9" : ".9";
        return Judge(session, page, page.Line(session, page.Field + more, setting.Now), setting).Value is { } entry && !Findings(page, entry).Any(f => IsOfSample(page, f));
    }

    /// <summary>The readings of one sample cannot all be true: out of order, or beyond what one portion can give.</summary>
    public static bool IsImpossible(Point point, Finding finding) => finding.Code == Order || (finding.Code == NotPossible && point.Sample is not null);

    private static bool IsOfSample(RoundPage page, Finding finding) =>
        finding.Point is { } tag && (page.Rows.Find(r => r.Point.Tag == tag)?.Point ?? page.Row.Point) is var point && IsImpossible(point, finding);

    /// <summary>The page with the other rows of this sample saying, or no more saying, that they cannot be true together.</summary>
    public static RoundPage InOrder(RoundPage page, Entry entry) => page.Row.Point.Sample is not { } sample ? page : page with
    {
        Rows = page.Rows.ConvertAll(row => row.Point.Sample != sample || row.Point.Tag == page.Row.Point.Tag || entry.Readings.All(r => r.Point != row.Point.Tag) ? row
            : row with { Check = RowCheck.Of(row.Point, [.. row.Check.Findings.Where(f => !IsImpossible(row.Point, f)), .. entry.Findings.Where(f => IsImpossible(row.Point, f) && f.Point == row.Point.Tag)]) }),
    };

    /// <summary>The page with no row of this sample saying that it cannot be: one of them is open again.</summary>
    public static RoundPage WithoutOrder(RoundPage page) => page.Row.Point.Sample is not { } sample ? page : page with
    {
        Rows = page.Rows.ConvertAll(row => row.Point.Sample == sample ? row with { Check = RowCheck.Of(row.Point, [.. row.Check.Findings.Where(f => !IsImpossible(row.Point, f))]) } : row),
    };

    /// <summary>
    /// What the entry has to say of the page's present row: of its value, and of what is computed from it once the last
    /// reading for that is there. Urgent does not wait for the others.
    /// </summary>
    public static IReadOnlyList<Finding> Findings(RoundPage page, Entry entry)
    {
        var tag = page.Row.Point.Tag;
        var own = SaidAtOnce.Of(page.Links, entry.Findings).Where(f => f.Point is { } point && f.Code != "calculation.missing"
            && (point.Equals(tag, StringComparison.OrdinalIgnoreCase) || IsBroughtAbout(page, entry, f) || (page.Links.Makes(tag, point) && (f.Level == Level.Urgent || IsLast(page, point)))));
        return [.. own.OrderByDescending(f => f.Level)];
    }

    /// <summary>Another row was possible until this one was typed, or typed anew.</summary>
    private static bool IsBroughtAbout(RoundPage page, Entry entry, Finding finding)
    {
        DateTimeOffset? At(string tag) => entry.Readings.FirstOrDefault(r => r.Point == tag)?.At;
        return IsOfSample(page, finding) && page.Links.Together(page.Row.Point.Tag, finding.Point!) && At(page.Row.Point.Tag) >= At(finding.Point!)
            && page.Rows.Find(r => r.Point.Tag == finding.Point) is { Check: var check } && !check.Findings.Any(f => IsOfSample(page, f));
    }

    private static bool IsLast(RoundPage page, string derived) =>
        page.RowsOf(derived) is var rows && page.Mostly.Contains(derived) && rows.All(i => i == page.Current || page.Rows[i].Answered);

    public static Finding Refusal(IReadOnlyList<Mistake> mistakes) =>
        new(Level.Watch, "refused", null, string.Join("; ", mistakes), []);

    /// <summary>
    /// True while more digits may follow: <c>10</c> on the way to 103.4. A value is judged when it has a decimal mark or
    /// when one more digit would carry it beyond everything this point shows.
    /// </summary>
    private static bool MayGrow(Point point, string text)
    {
        var most = point.Limits.UrgentHigh ?? point.Limits.WatchHigh ?? point.Highest;
        return point.Choices.Count == 0
            && text.All(char.IsAsciiDigit)
            && Typed.Number(text, Place.Unknown, out _) is { } value
            && value * 10 <= most;
    }
}
