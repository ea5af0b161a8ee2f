using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks.Examining;

/// <summary>
/// Counts what each shift is asked. One excursion is one demand: what stands at a point is asked once, until the point is read
/// without it. Watch and urgent of one kind at one point are one story; what is computed from a point that stands out is part of
/// that point's story, unless it is urgent and a point of safety; beside an urgent one the lesser wait; notes ask for nothing.
/// </summary>
internal sealed class Load(CalculationGraph graph)
{
    private readonly HashSet<(string Point, string Family)> _standing = [];
    private readonly Dictionary<string, ShiftLoad> _shifts = new(StringComparer.Ordinal);

    /// <summary>In the order of their time.</summary>
    public IReadOnlyList<ShiftLoad> Shifts => [.. _shifts.Values];

    /// <param name="sheet">With what other checks found.</param>
    /// <param name="doubts">What the examination adds.</param>
    public void Take(Sheet sheet, IReadOnlyList<Finding> doubts)
    {
        var shift = Calendar.ShiftAt(graph.Site, sheet.At).Id;
        var load = _shifts.GetValueOrDefault(shift) ?? new ShiftLoad(shift, 0, 0, 0);
        var judged = sheet.Judged();
        var least = sheet.Findings.Any(f => f.Level == Level.Urgent) ? Level.Urgent : Level.Watch;
        List<Finding> asking = [.. sheet.Findings.Concat(doubts).Where(f => f.Level >= least)];
        HashSet<(string Point, string Family)> here = [.. asking.Select(Story)];
        _standing.RemoveWhere(s => judged.Contains(s.Point) && !here.Contains(s));
        HashSet<string> standOut = [.. here.Concat(_standing).Where(s => s.Family != "stuck").Select(s => s.Point)]; // what stands still may be right
        bool New(Finding finding) => !_standing.Contains(Story(finding)) && (IsSafety(finding) || !graph.Behind(finding.Point ?? "").Overlaps(standOut));
        _shifts[shift] = load with
        {
            Demands = load.Demands + asking.Where(New).Select(Story).Distinct().Count(),
            Doubts = load.Doubts + doubts.Where(f => f.Level >= Level.Watch && New(f)).Select(Story).Distinct().Count(),
            Notes = load.Notes + sheet.Findings.Concat(doubts).Count(f => f.Level == Level.Note),
        };
        _standing.UnionWith(here);
    }

    private bool IsSafety(Finding finding) => finding.Level == Level.Urgent && graph.Site.FindPoint(finding.Point ?? "")?.Always == true;

    /// <summary>Too high and too low are two stories.</summary>
    private static (string Point, string Family) Story(Finding finding)
    {
        var family = finding.Code.Split('.')[0];
        return (finding.Point ?? "", family == "limit" ? family + finding.Code[(finding.Code.LastIndexOf('-') + 1)..] : family);
    }
}
