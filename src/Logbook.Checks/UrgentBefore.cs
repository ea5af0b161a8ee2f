using Logbook.Journal;
using Logbook.Plant;
using CultureInfo = System.Globalization.CultureInfo;

namespace Logbook.Checks;

/// <summary>
/// A reading that was urgent, or gas above its watch limit, leaves a trace when it is put right to a lesser one or taken back: until the point is
/// read again, everybody who looks sees what it was, what it is now, and by whom. A slip of a key may be one; so may a real one be.
/// </summary>
public static class UrgentBefore
{
    private const string Code = "corrected.urgent";

    /// <param name="record">The entry.</param>
    /// <param name="right">What is put right in it.</param>
    /// <param name="found">What is found of it now.</param>
    internal static IEnumerable<Finding> Of(Desk desk, Site site, JournalRecord record, IReadOnlyList<PointReading> right, IReadOnlyList<Finding> found, string why, string by)
    {
        var entry = (Entry)record.Body;
        List<Run> runs = [new(entry.Readings, entry.Findings)];
        foreach (var correction in desk.Store.Corrections(record.Seq, record.Seq).OrderBy(r => r.Seq).Select(r => (Correction)r.Body))
        {
            runs.Add(new(correction.PutInto(runs[^1].Readings), correction.Findings));
        }

        return
            from one in right
            let tag = one.Point.Tag
            let worst = runs.Select(r => Worst(site, r.Findings, tag)).Max()
            where worst > Worst(site, found, tag)
            let was = runs.Where(r => Worst(site, r.Findings, tag) == worst).Select(r => r.Readings.FirstOrDefault(x => Same(x.Point, tag))).LastOrDefault(r => r is { NotTaken: false })
            where was is not null
            let now = one.Reading.NotTaken ? "taken back" : $"put right to {Words.Value(one.Point, one.Reading.Value!.Value)}"
            select new Finding(
                Level.Watch, Code, tag,
                $"{one.Point.Description} was {Words.Value(one.Point, was.Value!.Value)}, {now} by {site.FindPerson(by)?.Name ?? by} at {Clock(Calendar.ToSite(desk.Site, desk.Now), was.At)}: {why}",
                [$"first in record {record.Seq}"]);
    }

    /// <summary>True for such a trace.</summary>
    public static bool Is(Finding finding) => finding.Code == Code;

    private static string Clock(DateTimeOffset at, DateTimeOffset read) => at - read < TimeSpan.FromHours(12) ? at.ToString("HH:mm", CultureInfo.InvariantCulture) : Words.Time(at);

    /// <summary>How bad it is by what can hurt; a note where nothing of it does.</summary>
    private static Level Worst(Site site, IReadOnlyList<Finding> findings, string tag) => findings.Where(f => CanHurt(site, f, tag)).Select(f => f.Level).DefaultIfEmpty(Level.Note).Max();

    private static bool CanHurt(Site site, Finding finding, string tag) => Same(finding.Point, tag) && finding.Again is not true && finding.Code != Code
        && (finding.Level == Level.Urgent || (finding.Level == Level.Watch && finding.Code.StartsWith("limit.", StringComparison.Ordinal) && site.FindPoint(tag)?.Unit.Name == "ppm"));

    private static bool Same(string? one, string? other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    /// <summary>An entry as it stood at one time.</summary>
    private sealed record Run(IReadOnlyList<Reading> Readings, IReadOnlyList<Finding> Findings);
}
