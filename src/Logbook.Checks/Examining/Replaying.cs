using Logbook.Checks.CrossExamination;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks.Examining;

/// <summary>What today's rules would have said of the past, and how much that would have asked of each crew.</summary>
public static class Replaying
{
    /// <summary>What is passed before the first entry that counts, so that it is judged like any other.</summary>
    private static readonly TimeSpan Before = TimeSpan.FromHours(72);

    /// <param name="desk">With a fit in force, unless one is tried: see <see cref="Examine.WhyNot"/>.</param>
    /// <param name="from">The first entry that is judged.</param>
    /// <param name="to">The end, not included.</param>
    /// <param name="tried">What is tried in place of what is in force.</param>
    public static ReplayReport Of(Desk desk, DateTimeOffset from, DateTimeOffset to, ToTry? tried = null)
    {
        var line = desk.Examinations.Line(desk.Graph);
        var fitted = tried?.Fit is { } fit ? FitForm.Read(line, fit)! : desk.Examinations.Fit(Day.Today(desk))!;
        var stretch = Stretch.Of(desk.Store, desk.State, from - Before, to.AddMilliseconds(-1));
        var trail = new Trail(fitted, new Tape(line, desk.Graph, desk.Guard));
        var limits = tried?.Limits is { } site ? new TriedLimits(desk.Site, site) : null;
        var alarm = new Alarm(desk.Site);
        var load = new Load(desk.Graph);
        var said = new List<ReplayedFinding>();
        var (examined, flagged) = (0, 0);
        foreach (var then in stretch.Sheets.Select(Bare))
        {
            var sheet = limits?.Judge(then, stretch.Standstill) ?? then;
            alarm.Take(sheet);
            if (sheet.At < from)
            {
                trail.Next(sheet, stretch.Standstill, slopes: sheet.At >= from.AddHours(-12));
                continue;
            }

            limits?.Count(then, sheet);
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
        }

        return new ReplayReport(from, to, examined, flagged, said, load.Shifts) { Limits = limits?.Changed ?? [] };
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
    DateTimeOffset From, DateTimeOffset To, int Examined, int Flagged, IReadOnlyList<ReplayedFinding> Findings, IReadOnlyList<ShiftLoad> Shifts)
{
    /// <summary>The limits that were tried and are others than those in force.</summary>
    public IReadOnlyList<TriedLimit> Limits { get; init; } = [];
}

/// <summary>What a replay tries before anybody puts it in force.</summary>
/// <param name="Limits">The site whose limits count; null for those of each entry's day.</param>
/// <param name="Fit">What was learned, of this line; null for what is in force.</param>
public sealed record ToTry(Site? Limits = null, FitAdopted? Fit = null);

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
