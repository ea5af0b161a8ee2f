using Logbook.Checks.CrossExamination;
using Logbook.Journal;
using Logbook.Plant;
using MathNet.Numerics.LinearAlgebra;
using Role = Logbook.Checks.CrossExamination.Role;

namespace Logbook.Checks.Examining;

/// <summary>The cross-examination on demand: of an entry that is in the journal, by the fit in force.</summary>
public static class Examine
{
    /// <summary>Why nothing is examined here, in one plain sentence; null when entries are.</summary>
    public static string? WhyNot(Desk desk)
    {
        var day = Day.Today(desk);
        var line = desk.Examinations.Line(desk.Graph);
        return line.Rows.Count == 0 ? "no two estimates of this site know one thing: nothing can be compared"
            : day.State.Fit is not { } seq ? $"not fitted yet: {Fit.FewestEntries} entries with readings that are compared are needed, then `logbook examine --fit --why TEXT --by CODE`"
            : desk.Examinations.Fit(day) is null ? $"the fit of record {seq} belongs to other site files or another program: `logbook examine --fit --why TEXT --by CODE`"
            : null;
    }

    /// <summary>Why some estimate is no witness, each in words.</summary>
    public static IReadOnlyList<string> NoWitness(Desk desk) => desk.Examinations.Line(desk.Graph).NoWitness;

    /// <summary>The newest entry that takes part; null when none does.</summary>
    public static ExaminationReport? Newest(Desk desk)
    {
        var line = desk.Examinations.Line(desk.Graph);
        var newest = Stretch.Of(desk.Store, desk.State, desk.Now.AddDays(-3), desk.Now.AddDays(1)).Sheets
            .LastOrDefault(s => s.Readings.Any(r => r.Value is not null && line.PlaceOf(r.Point) is not null));
        return newest is null ? null : Of(desk, newest);
    }

    /// <summary>True when the entry was read during an upset: then nothing is compared.</summary>
    public static bool WasInUpset(Desk desk, long seq) => desk.Store.Read(seq).FirstOrDefault() is { Body: Entry } record && record.Seq == seq
        && Stretch.Of(desk.Store, desk.State, record.At.AddDays(-1), record.At.AddDays(3)).Standstill.Upset(record.At);

    /// <summary>An entry of the journal; null when it takes no part, or there is no such entry.</summary>
    public static ExaminationReport? Of(Desk desk, long seq)
    {
        if (desk.Store.Read(seq).FirstOrDefault() is not { Body: Entry entry } record || record.Seq != seq)
        {
            return null;
        }

        var sheet = desk.Store.Corrections(seq, seq).Select(r => (Correction)r.Body).Aggregate(Sheet.Of(record, entry), (s, c) => s.Corrected(c));
        return Of(desk, sheet);
    }

    private static ExaminationReport? Of(Desk desk, Sheet sheet)
    {
        var day = Day.Today(desk) with { Before = sheet.Seq };
        var bare = sheet with { Findings = [.. sheet.Findings.Where(f => !f.Code.StartsWith(DoubtFindings.Prefix, StringComparison.Ordinal))] };
        return desk.Examinations.Of(day, bare) is { } trail ? Report(desk, trail, CrossExamined.Silent(day, bare) ? null : [.. CrossExamined.Doubts(day, bare, trail)]) : null;
    }

    /// <param name="doubts">Null beside something urgent, where nothing is doubted: the evidence stands, and nothing is named or asked for.</param>
    private static ExaminationReport Report(Desk desk, Trail trail, IReadOnlyList<Finding>? doubts)
    {
        var (silent, findings) = (doubts is null, doubts ?? []);
        var (line, examined) = (trail.Line, trail.Last[^1]);
        var result = examined.Result;
        var verdict = silent ? Verdict.Nothing : result.Verdict;
        var reconciled = Reconciled(trail, examined);
        string Name(int place) => line.Subjects[place].Name;
        return new ExaminationReport
        {
            Seq = examined.Frame.Sheet.Seq,
            At = examined.Frame.Sheet.At,
            Fit = desk.State.Fit!.Value,
            Global = reconciled is { Degrees: > 0 } r ? new GlobalTest(r.Statistic, r.Degrees, r.Critical, r.P) : null,
            Readings = Tested(trail, result, reconciled),
            Gate = new GateTest(result.Gate.Statistic, result.Gate.Threshold, result.Gate.Onset, result.Gate.Open),
            Named = verdict.Named is { } named ? Name(named) : null,
            WithMethod = verdict.WithMethod is { } method ? Name(method) : null,
            Group = [.. verdict.Group.Select(Name)],
            Text = silent ? "something is urgent and counts as true: beside it nothing is doubted"
                : findings.Count > 0 ? findings[0].Text
                : result.Gate.Open ? "still as told before" + (result.Staying.Count > 0 ? $": {string.Join(", ", result.Staying.Select(Name))}" : "")
                : examined.Frame.Rows.Any() ? "nothing contradicts itself more than usual"
                : "whether its readings fit each other is not known",
            Waiting = Moves.Waiting(trail),
            Findings = findings,
            Compared = [.. examined.Frame.Rows.Select(s => Compared(trail, examined, s))],
            Unchecked = [.. examined.Frame.Sheet.Readings.Where(x => x.Value is not null && line.PlaceOf(x.Point) is null && desk.Site.FindPoint(x.Point)?.Choices.Count == 0).Select(x => x.Point)],
        };
    }

    private static ComparedRow Compared(Trail trail, Examined examined, RowSeen seen)
    {
        var place = trail.Line.Rows.ToList().FindIndex(r => r.Name == seen.Row.Name);
        var surprise = examined.Glance.Surprises[place];
        string Way(int i) => seen.Row.Ways[i].Point?.Tag ?? seen.Row.Ways[i].Words;
        double Value(int i) => Units.CanConvert(seen.Row.Ways[i].Unit, seen.Row.Unit) ? Units.Convert(seen.Gives[i], seen.Row.Ways[i].Unit, seen.Row.Unit) : seen.Gives[i];
        var last = seen.Row.Ways.Count == 1 ? 0 : 1;
        return new ComparedRow(seen.Row.Quantity, Way(0), Way(last), Value(0), Value(last), seen.Row.Unit.Name, seen.Reading.Difference,
            double.IsFinite(surprise) ? seen.Reading.Difference - (surprise * trail.Fitted.Scale[place]) : null, double.IsFinite(surprise) ? surprise : null)
        {
            Until = examined.Glance.Round.Settled[place] is var hour && hour > examined.Glance.Round.Hours ? examined.Frame.Sheet.At.AddHours(hour - examined.Glance.Round.Hours) : null,
        };
    }

    /// <summary>The entry's rows as balances about what is usual, every parameter with its uncertainty.</summary>
    private static Reconciled? Reconciled(Trail trail, Examined examined)
    {
        var (fitted, count) = (trail.Fitted, trail.Line.Subjects.Count);
        List<int> heard = [.. Enumerable.Range(0, trail.Line.Rows.Count).Where(k => double.IsFinite(examined.Glance.Surprises[k]))];
        if (heard.Count == 0)
        {
            return null;
        }

        var a = Matrix<double>.Build.Dense(heard.Count, count);
        var b = Vector<double>.Build.Dense(heard.Count);
        var y = Vector<double>.Build.Dense([.. Enumerable.Range(0, count).Select(i => i < trail.Line.Readings ? Newest(trail, i) : trail.Line.Typed[i])]);
        for (var r = 0; r < heard.Count; r++)
        {
            foreach (var s in examined.Glance.Round.Rows[heard[r]]!.Sensitivities.Where(s => double.IsFinite(y[s.Parameter])))
            {
                a[r, s.Parameter] += s.Slope;
            }

            b[r] = a.Row(r).PointwiseMultiply(y.Map(v => double.IsFinite(v) ? v : 0)).Sum() - (examined.Glance.Surprises[heard[r]] * fitted.Scale[heard[r]]);
        }

        return Reconciliation.Of(a, b, y, Vector<double>.Build.Dense([.. fitted.Line.Parameters.Select(p => p.U)]));
    }

    private static double Newest(Trail trail, int place) => trail.Last.Reverse().Select(e => e.Frame.Round.Values[place]).FirstOrDefault(double.IsFinite, double.NaN);

    private static List<TestedReading> Tested(Trail trail, Examination result, Reconciled? reconciled)
    {
        var shares = result.Suspects.GroupBy(s => s.Parameter).ToDictionary(g => g.Key, g => g.Sum(s => s.Share));
        var tested = new List<TestedReading>();
        for (var i = 0; i < trail.Line.Subjects.Count; i++)
        {
            var test = reconciled?.Readings[i] is { Checked: true } t ? t : null;
            if (test is null && !shares.ContainsKey(i))
            {
                continue;
            }

            var subject = trail.Line.Subjects[i];
            var value = subject.Role == Role.Reading ? Newest(trail, i) : subject.Typed;
            tested.Add(new TestedReading(
                subject.Role.ToString().ToLowerInvariant(), subject.Name, test?.Z, test?.Glr, result.Gate.Open ? shares.GetValueOrDefault(i) : null,
                test is null || !double.IsFinite(value) ? null : value - test.Bias, test?.Bias));
        }

        return [.. tested.OrderByDescending(t => t.Share ?? 0).ThenByDescending(t => t.Glr ?? 0)];
    }
}
