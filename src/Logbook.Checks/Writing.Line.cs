using System.Globalization;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>Upsets, answers to findings, who works when, and the clock.</summary>
public static partial class Writing
{
    public static Written BeginUpset(Desk desk, DateTimeOffset? since, string? why, string by) => Write(desk, by, _ =>
    [
        .. Given.NotInFuture(since, "the begin", desk.Now, Place.Unknown),
        .. desk.State.Upset is { } upset ? Of($"an upset is declared already, since {Words.Time(upset.Began)}", "upset end, when it is over") : [],
    ],
    site => (new UpsetDeclared(Given.Instant(site, since ?? desk.Now), null, Blank(why)), since ?? desk.Now));

    public static Written EndUpset(Desk desk, DateTimeOffset? at, string? why, string by) => Write(desk, by, _ => desk.State.Upset is not { } upset
        ? Of("no upset is declared", "upset begin")
        :
        [
            .. Given.NotInFuture(at, "the end", desk.Now, Place.Unknown),
            .. at < upset.Began ? Of("the end lies before the begin", $"after {Words.Time(upset.Began)}") : [],
        ],
    site => (new UpsetDeclared(desk.State.Upset!.Began, Given.Instant(site, at ?? desk.Now), Blank(why) ?? desk.State.Upset.Why), at ?? desk.Now));

    /// <summary>What was done about a finding: cause, action, who was told.</summary>
    /// <param name="finding"><c>SEQ.N</c>, as the log and the now view show it.</param>
    public static Written Answer(Desk desk, string finding, string text, string by)
    {
        var parts = finding.Split('.');
        return parts.Length != 2 || !long.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var seq)
            || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? Written.Nothing(Mistake.Typed($"'{finding}' is no finding", "SEQ.N: record 812, finding 1 is 812.1"))
            : Write(desk, by, _ => [.. Given.Text(text, "the answer"), .. NoFinding(desk, seq, number)], _ => (Standing(desk, seq, number) with { Text = text.Trim() }, desk.Now));
    }

    /// <summary>A correction finds anew what its entry found: who answers by the number that stood before answers what stands for it now.</summary>
    private static FindingAnswered Standing(Desk desk, long seq, int number)
    {
        var (entry, findings) = desk.Store.Read(seq).First().Body switch { Correction c => (c.Target, c.Findings), Entry e => (seq, e.Findings), _ => (seq, []) };
        var given = findings[number - 1];
        var now = desk.State.Unanswered.Find(f => f.Corrects == entry && f.Seq > seq && f.Finding.Point == given.Point && f.Finding.Code == given.Code);
        return now is null ? new(seq, number, "") : new(now.Seq, now.Number, "");
    }

    private static IEnumerable<Mistake> NoFinding(Desk desk, long seq, int number)
    {
        var body = seq < 1 ? null : desk.Store.Read(seq).FirstOrDefault() is { } record && record.Seq == seq ? record.Body : null;
        var count = body switch { Entry e => e.Findings.Count, Correction c => c.Findings.Count, _ => 0 };
        return number >= 1 && number <= count ? [] : Of($"there is no finding {seq}.{number}", count == 0 ? $"record {seq} has none" : $"record {seq} has 1 to {count}");
    }

    private static readonly string[] RosterWords = ["swap", "holdover", "holiday"];

    public static Written ChangeRoster(Desk desk, RosterChange change, string by) => Write(desk, by, site =>
    [
        .. RosterWords.Contains(change.What, StringComparer.OrdinalIgnoreCase) ? [] : Of($"'{change.What}' is no change of the roster", string.Join(", ", RosterWords)),
        .. Given.Person(site, change.Person),
        .. (IsSwap(change), change.For) switch
        {
            (true, null) => Of("a swap needs the person who is replaced", "--for CODE"),
            (true, { } replaced) => Given.Person(site, replaced),
            (false, not null) => Of("only a swap replaces somebody", "without --for"),
            _ => [],
        },
        .. change.To > change.From ? [] : Of("the end does not lie after the begin", "--from T --to T"),
    ],
    site => (change with
    {
        What = change.What.ToLowerInvariant(), Person = site.FindPerson(change.Person)!.Code, For = change.For is null ? null : site.FindPerson(change.For)!.Code,
        From = Given.Instant(site, change.From), To = Given.Instant(site, change.To), Why = Blank(change.Why),
    }, desk.Now));

    private static bool IsSwap(RosterChange change) => change.What.Equals("swap", StringComparison.OrdinalIgnoreCase);

    /// <summary>Somebody has looked at a jump of the clock; the times of the records stay as they are.</summary>
    public static Written AcknowledgeClock(Desk desk, long? id, string why, string by)
    {
        desk.Follow();
        var jump = id ?? (desk.State.ClockJumps is [var only] ? only.Id : null);
        return Write(desk, by, _ =>
        [
            .. Given.Text(why, "what was found about the clock"),
            .. desk.State.ClockJumps.Exists(j => j.Id == jump) ? [] : Of(
                id is null ? "say which jump of the clock" : $"no jump {id} of the clock is open",
                desk.State.ClockJumps.IsEmpty ? "none is open" : "open: " + string.Join(", ", desk.State.ClockJumps.Select(j => j.Id))),
        ],
        _ => (new ClockJumped(null, null, jump, why.Trim()), desk.Now));
    }

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
