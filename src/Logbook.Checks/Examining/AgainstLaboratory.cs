using Logbook.Checks.Charts;
using Logbook.Checks.CrossExamination;
using Logbook.Plant;
using MathNet.Numerics.Statistics;

namespace Logbook.Checks.Examining;

/// <summary>
/// Instruments that have left the laboratory since the fit. An entry's examination takes a slow drift for the plant; over days
/// it shows, because the samples do not follow: the median of each shift goes into a cumulated sum against what was learned, in
/// the comparison's own uncertainty.
/// </summary>
public static class AgainstLaboratory
{
    /// <summary>So long before the stretch a departure may have begun.</summary>
    private static readonly TimeSpan Back = TimeSpan.FromDays(14);

    /// <summary>No more than the uncertainty itself is a departure; one bad sample is none. Judgement, no source.</summary>
    private const double Allowance = 1, Threshold = 4, Bound = 3;

    private const int FewestShifts = 3;

    /// <summary>The slopes are taken from the newest of so many comparisons that was not stale.</summary>
    private const int Newest = 8;

    private const int Shown = 3;

    /// <summary>Those that stand at the end of [from, to); none without a fit.</summary>
    public static IReadOnlyList<Departure> Find(Desk desk, DateTimeOffset from, DateTimeOffset to)
    {
        var line = desk.Examinations.Line(desk.Graph);
        if (desk.Examinations.Fit(Day.Today(desk)) is not { } fitted)
        {
            return [];
        }

        var stretch = Stretch.Of(desk.Store, desk.State, from - Back, to.AddMilliseconds(-1));
        List<Frame> Read(Func<Sheet, bool> slopes)
        {
            var tape = new Tape(line, desk.Graph, desk.Guard);
            return [.. stretch.Sheets.Select(s => tape.Read(s, stretch.Standstill, slopes(s))).OfType<Frame>()];
        }

        // Slopes are slow to take: of what was compared last alone, and only where something has left.
        var frames = Read(_ => false);
        var left = Enumerable.Range(0, line.Rows.Count).Select(k => Since(desk.Site, line, fitted, k, frames)).OfType<Left>().ToList();
        var last = left.SelectMany(l => l.Apart.TakeLast(Newest)).Select(c => c.Sheet.Seq).ToHashSet();
        var sloped = left.Count == 0 ? [] : Read(s => last.Contains(s.Seq)).FindAll(f => last.Contains(f.Sheet.Seq));
        return [.. left.Select(l => Told(line, fitted, l, sloped)).OfType<Departure>()];
    }

    /// <summary>A row that has left what was learned.</summary>
    /// <param name="Instrument">Which of its ways is not the laboratory's.</param>
    /// <param name="Apart">What was compared since.</param>
    private sealed record Left(Row Row, int Instrument, double Usual, DateTimeOffset Since, List<(Sheet Sheet, RowSeen Seen)> Apart);

    private static Left? Since(Site site, SiteLine line, Fitted fitted, int place, List<Frame> frames)
    {
        var row = line.Rows[place];
        var laboratory = row.IsBalance ? [] : Enumerable.Range(0, row.Ways.Count).Where(w => Of(row, w).Any(p => line.Subjects[p].Point?.Sample is not null)).ToList();
        if (row.Ways.Count != 2 || laboratory.Count != 1)
        {
            return null;
        }

        var (usual, scale) = (fitted.Forecasts[place].Mean, fitted.Scale[place]);
        var compared = frames.SelectMany(f => f.Rows.Where(r => r.Row.Name == row.Name).Select(r => (f.Sheet, Seen: r))).ToList();
        var shifts = compared.GroupBy(c => Calendar.ShiftAt(site, c.Sheet.At).Id, StringComparer.Ordinal)
            .Select(g => (g.First().Sheet.At, Off: (g.Select(c => c.Seen.Reading.Difference).Median() - usual) / scale)).ToList();
        if (shifts.Count < FewestShifts)
        {
            return null;
        }

        var sums = Cusum.Of([.. shifts.Select(s => Math.Clamp(s.Off, -Bound, Bound))], 0, Allowance, Threshold);
        var side = sums.High[^1] > Threshold ? sums.High : sums.Low[^1] > Threshold ? sums.Low : null;
        if (side is null)
        {
            return null;
        }

        var since = shifts[Enumerable.Range(0, side.Count).Reverse().TakeWhile(i => side[i] > 0).Last()].At;
        return new Left(row, 1 - laboratory[0], usual, since, [.. compared.Where(c => c.Sheet.At >= since)]);
    }

    /// <param name="sloped">What was compared last, with its slopes: what the instrument reads now. A row that was stale then is not in it.</param>
    private static Departure? Told(SiteLine line, Fitted fitted, Left left, List<Frame> sloped)
    {
        var (row, instrument, usual, since, apart) = left;
        if (sloped.SelectMany(f => f.Rows).LastOrDefault(r => r.Row.Name == row.Name) is not { } now)
        {
            return null;
        }

        var last = apart[^Math.Min(Shown, apart.Count)..];
        var slopes = now.Reading.Sensitivities.GroupBy(s => s.Parameter).ToDictionary(g => g.Key, g => g.Sum(s => s.Slope));
        var readings = Of(row, instrument).Where(p => p < line.Readings && slopes.GetValueOrDefault(p) != 0)
            .OrderByDescending(p => Math.Abs(slopes[p]) * fitted.Line.Parameters[p].U).ToList();
        return readings.Count == 0 ? null : new Departure
        {
            Point = line.Subjects[readings[0]].Point!, By = (last.Select(c => c.Seen.Reading.Difference).Median() - usual) / slopes[readings[0]],
            Since = since, Quantity = row.Ways[1 - instrument].Named, Unit = row.Unit.Name, Usual = usual, Comparisons = apart.Count,
            Last = [.. last.Select(c => (c.Sheet.At, Value(c.Seen, row, instrument), Value(c.Seen, row, 1 - instrument)))],
            Beside = [.. readings.Skip(1).Select(p => line.Subjects[p].Name)],
            WhenOff = Of(row, instrument).Select(p => line.Subjects[p].WhenOff).FirstOrDefault(w => w is not null),
        };
    }

    private static double Value(RowSeen seen, Row row, int way) =>
        Units.CanConvert(row.Ways[way].Unit, row.Unit) ? Units.Convert(seen.Gives[way], row.Ways[way].Unit, row.Unit) : seen.Gives[way];

    /// <summary>The places of what a way takes.</summary>
    private static IEnumerable<int> Of(Row row, int way) => row.Feeds[way].Select(i => row.Takes[i].Input.Parameter).Distinct();
}

/// <summary>An instrument that reads otherwise than the laboratory.</summary>
public sealed record Departure
{
    /// <summary>The instrument on which its estimate hangs most.</summary>
    public required Point Point { get; init; }

    /// <summary>By how much it would be off, in its unit; above zero for too high.</summary>
    public required double By { get; init; }

    public required DateTimeOffset Since { get; init; }

    /// <summary>What both tell of, as the laboratory names it inside a sentence.</summary>
    public required string Quantity { get; init; }

    public required string Unit { get; init; }

    /// <summary>The difference when it was learned.</summary>
    public required double Usual { get; init; }

    /// <summary>Comparisons since then.</summary>
    public required int Comparisons { get; init; }

    /// <summary>The last comparisons: by the instrument, by the laboratory.</summary>
    public required IReadOnlyList<(DateTimeOffset At, double Instrument, double Laboratory)> Last { get; init; }

    /// <summary>What else stands in the instrument's estimate.</summary>
    public required IReadOnlyList<string> Beside { get; init; }

    /// <summary>What it means when its method is off though it reads right.</summary>
    public required string? WhenOff { get; init; }
}
