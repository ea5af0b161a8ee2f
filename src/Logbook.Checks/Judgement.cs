using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>From parsed readings to results and findings.</summary>
internal static class Judgement
{
    public static (IReadOnlyList<Result> Results, IReadOnlyList<Finding> Findings) Of(Day day, IReadOnlyList<PointReading> readings, DateTimeOffset at)
    {
        var ofReadings = readings.Where(r => !r.Reading.NotTaken).SelectMany(r => OfReading(day, r));
        var (results, ofCalculations) = EntryCalculations.Run(day, readings, at);
        return (results, InOrder(day, Judged(readings, results), [.. ofReadings, .. ofCalculations]));
    }

    /// <summary>Alarm first: doubt about a reading that is urgent stands behind it, as an "also".</summary>
    private static IEnumerable<Finding> OfReading(Day day, PointReading judged)
    {
        Finding[] limits = [.. LimitCheck.Findings(day, judged.Point, judged.Reading.Value!.Value, judged.Reading.At)];
        var urgent = limits.Any(f => f.Level == Level.Urgent);
        var also = urgent ? "also: " : "";
        Finding[] doubts = [.. PossibleRange.Findings(judged), .. StepCheck.Findings(day, judged, urgent), .. ReadTwice.Findings(day, judged), .. StuckCheck.Findings(day, judged), .. UnitSlip.Findings(day, judged)];
        return [.. limits, .. doubts.Select(d => d with { Text = also + d.Text })];
    }

    private static HashSet<string> Judged(IReadOnlyList<PointReading> readings, IReadOnlyList<Result> results) =>
        [.. readings.Where(r => !r.Reading.NotTaken).Select(r => r.Point.Tag), .. results.Select(r => r.Point).OfType<string>()];

    /// <summary>
    /// Worst first, what could not be computed last, then in the order of the points. While the slaker is urgent advice is kept silent: it might ask to
    /// wait, to repeat or to sample.
    /// </summary>
    private static IReadOnlyList<Finding> InOrder(Day day, HashSet<string> judged, IReadOnlyList<Finding> findings)
    {
        var silent = SlakerIsUrgent(day, judged, findings);
        var order = day.Site.Points.Select((p, i) => (p.Tag, i)).ToDictionary(p => p.Tag, p => p.i, StringComparer.Ordinal);
        return [.. findings
            .Where(f => !silent || !IsAdvice(f))
            .Select(f => silent ? ReadTwice.Silent(f) : f)
            .OrderByDescending(f => f.Level)
            .ThenBy(IsOfAbsence)
            .ThenBy(f => f.Point is null ? int.MaxValue : order[f.Point])
            .ThenBy(f => f.Code, StringComparer.Ordinal)
            .ThenBy(f => f.Text, StringComparer.Ordinal)];
    }

    /// <summary>What could not be computed tells nothing of the line: it stands behind what does.</summary>
    private static bool IsOfAbsence(Finding finding) => finding.Code is "calculation.missing" or "calculation.resting";

    private static bool IsAdvice(Finding finding) => finding.Code.StartsWith("calc.", StringComparison.Ordinal);

    /// <summary>Here, or a limit still broken since an earlier entry at a point that was not judged again here.</summary>
    public static bool SlakerIsUrgent(Day day, HashSet<string> judged, IReadOnlyList<Finding> findings)
    {
        var open = day.State.Findings.Where(f => !judged.Contains(f.Key)).SelectMany(f => f.Value).Select(f => f.Finding)
            .Where(f => f.Code.StartsWith("limit.", StringComparison.Ordinal));
        return findings.Concat(open).Any(f => f.Level == Level.Urgent && f.Point is { } tag && day.Site.FindPoint(tag)?.Area == "slaker");
    }
}
