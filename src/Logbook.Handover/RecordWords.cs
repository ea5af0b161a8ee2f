using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Each kind of record in plain words.</summary>
internal static class RecordWords
{
    // More readings than this are counted, not listed: the line stays a line.
    private const int Listed = 6;

    // And of the results as many as are judged by limits, the rest is counted.
    private const int ListedResults = 4;

    public static string Of(Desk desk, JournalRecord record, PutRightLater later) => record.Body switch
    {
        SiteAdopted adopted => $"Site files put in force: {Say.Visible(adopted.Why)}{Changed(adopted)}{By(desk.Site, adopted.Signed)}",
        Entry entry => OfEntry(desk.Site, entry, later.Itself(record), later.Words(record, entry)),
        Remark remark => OfRemark(desk.Site, remark),
        Correction correction => OfCorrection(desk, record, correction),
        EquipmentStateChanged change => $"{Say.Equipment(desk.Site, change.Equipment)} {Say.Visible(change.State)} since "
            + Say.Time(desk.Site, change.Since, record.At) + Because(change.Why),
        Carry carry => $"Opened: {Carried.Words(desk.Site, carry, record.At)}",
        CarryConfirmed or CarryClosed or OrderGiven or OrderSeen or OrderWithdrawn or DepartmentNote or UpsetDeclared or RosterChange or ClockJumped or FindingAnswered
            => OpenWords.Of(desk, record),
        _ when SincePrepared.IsStep(record.Body) => StepWords.Of(desk.Site, record),
        PluginTrusted trusted => $"Plug-in {Say.Visible(trusted.Name)} trusted, {Say.Count(trusted.Files.Count, "file")}: {Say.Visible(trusted.Why)}{By(desk.Site, trusted.Signed)}",
        FitAdopted fit => $"What the cross-examination expects, learned from {fit.Entries} entries from {Say.Time(desk.Site, fit.From, record.At)} to {Say.Time(desk.Site, fit.To, record.At)}: {Say.Visible(fit.Why)}",
        UnknownBody unknown => $"{Say.Visible(unknown.RawKind)}, not known to this version, as stored: {Say.Visible(unknown.Raw.GetRawText())}",
        _ => Say.Visible(record.Kind),
    };

    private static string Changed(SiteAdopted adopted) => adopted.Changes is not { Count: > 0 } changes ? ""
        : $"; {string.Join("; ", changes.Take(Listed).Select(Say.Visible))}{(changes.Count > Listed ? $"; and {changes.Count - Listed} more" : "")}";

    /// <summary>The areas that the record is about, by what was read or stands out there; of an answer, a look or an end those of what it belongs to.</summary>
    public static IReadOnlyList<string> Areas(Desk desk, RecordBody body)
    {
        string? Of(string? tag) => tag is null ? null : desk.Site.FindPoint(tag)?.Area;
        IReadOnlyList<string> Behind(long seq) => desk.Store.Read(seq).First().Body is { } one && one.GetType() != body.GetType() ? Areas(desk, one) : [];
        IEnumerable<string?> areas = body switch
        {
            Entry entry => entry.Readings.Select(r => Of(r.Point)).Concat(entry.Findings.New().Select(f => Of(f.Point))),
            Correction correction => correction.Readings.Select(r => Of(r.Point)),
            Remark remark => [AreaOf(desk.Site, remark.On)],
            EquipmentStateChanged change => [AreaOf(desk.Site, change.Equipment)],
            Carry carry => [AreaOf(desk.Site, carry.On)],
            CarryConfirmed seen => Behind(seen.Id),
            CarryClosed closed => Behind(closed.Id),
            FindingAnswered answered => Behind(answered.Seq),
            _ => [],
        };
        return [.. areas.OfType<string>().Distinct(StringComparer.Ordinal)];
    }

    private static string? AreaOf(Site site, string? on) =>
        on is null ? null : site.FindEquipment(on)?.Area ?? Plant.Area.All.FirstOrDefault(a => a.Equals(on, StringComparison.OrdinalIgnoreCase));

    /// <param name="right">That the entry itself was put right.</param>
    /// <param name="later">Which results rest on a value that was put right since.</param>
    private static string OfEntry(Site site, Entry entry, string right, string later)
    {
        var parts = new List<string>();
        var taken = entry.Readings.Count(r => !r.NotTaken);
        var title = entry.Round is null ? null : site.FindRound(entry.Round)?.Title ?? entry.Round;
        if (entry.Readings.Count > Listed || (title is not null && entry.Readings.Count > 0))
        {
            parts.Add($"{(title is null ? "" : Say.Visible(title) + ": ")}{Say.Count(taken, "reading")}");
            parts.AddRange(entry.Readings.Where(r => r.NotTaken).GroupBy(r => r.Why ?? "no reason given", StringComparer.Ordinal)
                .Select(g => $"not taken, {Say.Visible(g.Key)}: {string.Join(", ", g.Select(r => Say.Visible(r.Point)))}"));
        }
        else
        {
            parts.Add(string.Join(", ", entry.Readings.Select(r => $"{Say.Visible(r.Point)} {Say.Reading(site, r)}")));
        }

        parts.Add(right);
        parts.Add(entry.SecondOf is { } first ? $"second reading, the first {Say.Ref(first)}" : "");
        var told = entry.Findings.New().OrderByDescending(f => f.Level).ToList();
        parts.AddRange(told.Take(1).Select(f => Level(f) + Say.Visible(f.Text)));
        parts.Add(told.Count > 1 ? Say.Count(told.Count - 1, "more finding") : "");
        parts.Add(OfResults(site, [.. entry.Results.Where(r => r.Point is not null)]));
        parts.Add(later);
        parts.Add(entry.Imported is null ? "" : $"imported from {Say.Visible(entry.Imported)}");
        parts.Add(Say.Visible(entry.Remark ?? ""));
        parts.AddRange(entry.Readings.Where(r => !string.IsNullOrEmpty(r.Remark)).Select(r => $"{Say.Visible(r.Point)}: {Say.Visible(r.Remark!)}"));
        return string.Join("; ", parts.Where(p => p.Length > 0));
    }

    private static string OfResults(Site site, IReadOnlyList<Result> results)
    {
        Result[] listed = results.Count <= ListedResults ? [.. results]
            : [.. results.Where(r => site.FindPoint(r.Point!)?.Limits is { } limits && limits != Limits.None).Take(ListedResults)];
        var rest = results.Count - listed.Length;
        return string.Join(", ", listed.Select(r => $"{Say.Visible(r.Point!)} {OfResult(site, r)}").Append(rest == 0 ? "" : Say.Count(rest, "more result")).Where(w => w.Length > 0));
    }

    private static string OfResult(Site site, Result result) => Say.Value(site.FindPoint(result.Point!), result.Value, result.Unit);

    private static string Level(Finding finding) => finding.Level switch
    {
        Journal.Level.Urgent => "urgent: ",
        Journal.Level.Watch => "watch: ",
        _ => "note: ",
    };

    private static string OfRemark(Site site, Remark remark) =>
        (remark.On is null ? "" : Say.Equipment(site, remark.On) + ": ") + Say.Visible(remark.Text)
        + (remark.Related is { } seq ? " " + Say.Ref(seq) : "");

    private static string OfCorrection(Desk desk, JournalRecord record, Correction correction)
    {
        var entry = desk.Store.Read(correction.Target).FirstOrDefault()?.Body as Entry;
        // A value may be put right more than once, and back to what was typed first.
        var between = desk.Store.Corrections(correction.Target, correction.Target).Where(r => r.Seq < record.Seq).OrderBy(r => r.Seq).Select(r => (Correction)r.Body).ToList();
        string One(Reading right)
        {
            var first = entry?.Readings.FirstOrDefault(r => r.Point.Equals(right.Point, StringComparison.OrdinalIgnoreCase));
            var then = string.Concat(between.Select(c => c.Of(right.Point)).OfType<Reading>().Select(r => $"then {(r.NotTaken ? "taken back" : Say.Reading(desk.Site, r))}, "));
            return $"{Say.Visible(right.Point)} of {Say.Time(desk.Site, right.At, record.At)}: first {(first is null ? "not in that entry" : Say.Reading(desk.Site, first))}, {then}"
                + (right.NotTaken ? $"TAKEN BACK{(right.Why is null || right.Why.StartsWith("taken back", StringComparison.Ordinal) ? "" : $" ({Say.Visible(right.Why)})")}" : $"put right to {Say.Reading(desk.Site, right)}");
        }

        return $"{string.Join("; ", correction.Readings.Select(One))} {Say.Ref(correction.Target)}{Because(correction.Why)}";
    }

    private static string By(Site site, Signed? signed) => signed is null ? "" : StepWords.By(site, signed);

    private static string Because(string? why) => string.IsNullOrWhiteSpace(why) ? "" : $": {Say.Visible(why)}";
}
