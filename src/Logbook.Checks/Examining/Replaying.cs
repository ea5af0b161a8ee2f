using Logbook.Checks.CrossExamination;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks.Examining;

/// <summary>What today's rules would have said of the past, and how much that would have asked of each crew.</summary>
public static class Replaying
{
    /// <summary>What is passed before the first entry that counts, so that it is judged like any other.</summary>
    private static readonly TimeSpan Before = TimeSpan.FromHours(72);

    /// <param name="desk">With a fit in force: see <see cref="Examine.WhyNot"/>.</param>
    /// <param name="from">The first entry that is judged.</param>
    /// <param name="to">The end, not included.</param>
    /// <param name="progress">Told the share done.</param>
    public static ReplayReport Of(Desk desk, DateTimeOffset from, DateTimeOffset to, IProgress<double>? progress = null)
    {
        var day = Day.Today(desk);
        var fitted = desk.Examinations.Fit(day)!;
        var stretch = Stretch.Of(desk.Store, desk.State, from - Before, to.AddMilliseconds(-1));
        var trail = new Trail(fitted, new Tape(desk.Examinations.Line(desk.Graph), desk.Graph, desk.Guard));
        var alarm = new Alarm(desk.Site);
        var load = new Load(desk.Graph);
        var said = new List<ReplayedFinding>();
        var (examined, flagged) = (0, 0);
        for (var i = 0; i < stretch.Sheets.Count; i++)
        {
            var sheet = Bare(stretch.Sheets[i]);
            alarm.Take(sheet);
            if (sheet.At < from)
            {
                trail.Next(sheet, stretch.Standstill, slopes: sheet.At >= from.AddHours(-12));
                continue;
            }

            IReadOnlyList<Finding> findings = [];
            if (trail.Next(sheet, stretch.Standstill) is { } one)
            {
                examined++;
                flagged += one.Result.Gate.Open ? 1 : 0;
                findings = alarm.Silent ? [] : [.. DoubtFindings.Of(trail)];
                sheet = sheet with { Findings = Moves.AsOne(sheet.Findings, trail) };
                trail.Said(findings);
                said.AddRange(findings.Select(f => new ReplayedFinding(sheet.Seq, sheet.At, f)));
            }

            load.Take(sheet, findings);
            progress?.Report((i + 1.0) / stretch.Sheets.Count);
        }

        return new ReplayReport(from, to, examined, flagged, said, load.Shifts);
    }

    /// <summary>Without what an examination said then.</summary>
    private static Sheet Bare(Sheet sheet) => sheet with { Findings = [.. sheet.Findings.Where(f => !f.Code.StartsWith(DoubtFindings.Prefix, StringComparison.Ordinal))] };

    /// <summary>While something is urgent nothing is doubted, as when an entry is saved.</summary>
    private sealed class Alarm(Site site)
    {
        private readonly HashSet<string> _slaker = new(StringComparer.OrdinalIgnoreCase);

        public bool Silent { get; private set; }

        public void Take(Sheet sheet)
        {
            _slaker.ExceptWith(sheet.Judged());
            foreach (var urgent in sheet.Findings.Where(f => f.Level == Level.Urgent && f.Code.StartsWith("limit.", StringComparison.Ordinal)))
            {
                if (urgent.Point is { } tag && site.FindPoint(tag)?.Area == "slaker")
                {
                    _slaker.Add(tag);
                }
            }

            Silent = _slaker.Count > 0 || sheet.Findings.Any(f => f.Level == Level.Urgent);
        }
    }
}

/// <summary>What the past would have been told.</summary>
/// <param name="Examined">Entries that took part.</param>
/// <param name="Flagged">Entries at which the gate was open.</param>
public sealed record ReplayReport(
    DateTimeOffset From, DateTimeOffset To, int Examined, int Flagged, IReadOnlyList<ReplayedFinding> Findings, IReadOnlyList<ShiftLoad> Shifts);

public sealed record ReplayedFinding(long Seq, DateTimeOffset At, Finding Finding);

/// <summary>What one shift would have been asked.</summary>
/// <param name="Demands">Findings that ask for something, each cause once while it lasts.</param>
/// <param name="Doubts">Those of them that the examination raised.</param>
/// <param name="Notes">Findings that ask for nothing.</param>
public sealed record ShiftLoad(string Shift, int Demands, int Doubts, int Notes)
{
    /// <summary>At most so many in a shift.</summary>
    public const int Budget = 12;

    public bool OverBudget => Demands > Budget;
}
