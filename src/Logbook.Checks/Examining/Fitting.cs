using Logbook.Checks.CrossExamination;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks.Examining;

/// <summary>Learns from the journal what to expect of the line, so that its entries can be cross-examined.</summary>
public static class Fitting
{
    /// <summary>
    /// Learns from the entries of [<paramref name="from"/>, <paramref name="to"/>) and puts it in force. Only an engineer may, and only
    /// on enough entries: what is learned decides what is later called wrong.
    /// </summary>
    public static Written Adopt(Desk desk, DateTimeOffset from, DateTimeOffset to, string why, string by)
    {
        FitAdopted? learned = null;
        return Writing.Write(desk, by, site =>
        {
            List<Mistake> mistakes = [.. Given.Text(why, "the reason for fitting"), .. Given.Engineer(site, by, "puts a fit in force")];
            if (mistakes.Count == 0)
            {
                (learned, var mistake) = Learn(desk, from, to, why.Trim());
                mistakes.AddRange(mistake is null ? [] : [mistake]);
            }

            return mistakes;
        },
        _ => (learned!, desk.Now));
    }

    /// <summary>What the entries of a span teach, put in force by nobody; or why they teach nothing.</summary>
    public static (FitAdopted? Learned, Mistake? Mistake) Learn(Desk desk, DateTimeOffset from, DateTimeOffset to, string why = "")
    {
        var line = SiteLine.Of(desk.Graph);
        if (line.Rows.Count == 0)
        {
            return (null, Mistake.Typed("no two estimates of this site know one thing", "outputs that estimate one quantity, points with `estimates`, or a [[balance]]"));
        }

        var frames = Frames(desk, line, from, to);
        if (frames.Count < Fit.FewestEntries)
        {
            return (null, Mistake.Typed($"{frames.Count} entries in this span have readings that are compared", $"{Fit.FewestEntries} at least"));
        }

        var engine = line.With(Usual(line, frames));
        var rounds = frames.ConvertAll(f => f.Round);
        var learned = Thresholds.Learn(engine, rounds);
        var fitted = learned with { Hypotheses = [.. learned.Hypotheses, .. learned.Hypotheses.Where(h => IsFigure(line, h)).Select(Slip)] };
        return (FitForm.Of(line, fitted, frames, Flagged(fitted, rounds), why), null);
    }

    /// <summary>A single figure that a person reads off glass or writes down.</summary>
    private static bool IsFigure(SiteLine line, Hypothesis hypothesis) => line.Subjects[hypothesis.Parameter].Point?.Sample is not null;

    /// <summary>
    /// A figure misread or two digits swapped is wrong by far more than its uncertainty tells of: a second, wider thought of the
    /// same error, or a method would have to take the blame.
    /// </summary>
    private static Hypothesis Slip(Hypothesis figure) => figure with { Prior = figure.Prior * RareSlip, Reach = figure.Reach * WideSlip };

    private const double RareSlip = 0.3;

    private const double WideSlip = 10;

    private static List<Frame> Frames(Desk desk, SiteLine line, DateTimeOffset from, DateTimeOffset to)
    {
        var stretch = Stretch.Of(desk.Store, desk.State, from, to.AddMilliseconds(-1));
        var tape = new Tape(line, desk.Graph, desk.Guard);
        return [.. stretch.Sheets.Select(s => tape.Read(s, stretch.Standstill, slopes: true)).OfType<Frame>()];
    }

    /// <summary>The middle of each reading; zero for one that was never taken.</summary>
    private static double[] Usual(SiteLine line, List<Frame> frames) =>
        [.. Enumerable.Range(0, line.Readings).Select(i => frames.Select(f => f.Round.Values[i]).Where(double.IsFinite).Order().ToList() is { Count: > 0 } v ? v[v.Count / 2] : 0)];

    private static double Flagged(Fitted fitted, List<CrossExamination.Round> rounds)
    {
        var examiner = new Examiner(fitted);
        return rounds.Count(r => examiner.Next(r).Gate.Open) / (double)rounds.Count;
    }
}
