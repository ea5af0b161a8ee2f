namespace Logbook.Checks.CrossExamination;

/// <summary>How one hypothesis that began at one entry matches all entries since.</summary>
/// <param name="Hypothesis">What would have happened.</param>
/// <param name="Onset">In how many entries a row has compared it with something since it began; zero when none has.</param>
/// <param name="Entries">All entries since then.</param>
/// <param name="Physics">On the rows alone.</param>
/// <param name="Quiet">On rows and readings, the plant as usual.</param>
/// <param name="Changed">The same, the plant being moved.</param>
/// <param name="Evidence">The physics statistic, less what the entries disagree about its size.</param>
internal sealed record Trace(Hypothesis Hypothesis, int Onset, int Entries, Tried Physics, Tried Quiet, Tried Changed, double Evidence)
{
    /// <summary>An entry that could hardly see the error has no say on whether it stayed the same.</summary>
    private const double Weak = 0.2;

    /// <param name="fitted">What was learned.</param>
    /// <param name="since">The entries since it began, oldest first.</param>
    /// <param name="hypothesis">What would have happened.</param>
    public static Trace Of(Fitted fitted, IReadOnlyList<Glance> since, Hypothesis hypothesis)
    {
        var standing = since[0].Before.Blank();
        var (quiet, changed) = (default(Tried), default(Tried));
        var physics = new List<Tried>(since.Count);
        foreach (var glance in since)
        {
            var effect = Effect(fitted, glance, hypothesis, since[0].Round.Hours, standing, out var compared);
            quiet = Sum(quiet, Try(glance.Quiet, effect));
            changed = Sum(changed, Try(glance.Changed, effect));
            if (compared)
            {
                physics.Add(Try(glance.Physics, effect));
            }
        }

        var all = physics.Aggregate(default(Tried), Sum);
        return new Trace(hypothesis, physics.Count, since.Count, all, quiet, changed, all.Statistic - Disagreement(physics, all));
    }

    /// <summary>An error that stays is the same in every entry; one wild value is not, and is left to the entry that had it.</summary>
    private static double Disagreement(List<Tried> physics, Tried all) =>
        physics.Where(t => t.Strength > Weak * all.Strength / physics.Count).Sum(t => Math.Pow(t.Match - (all.Size * t.Strength), 2) / t.Strength);

    private static double[] Effect(Fitted fitted, Glance glance, Hypothesis hypothesis, double began, Standing standing, out bool compared)
    {
        var effect = new double[fitted.Line.Width];
        compared = false;
        foreach (var p in glance.Speaking)
        {
            var raw = Places.Effect(fitted.Line, glance.Round, p, hypothesis, began);
            compared |= raw != 0 && p < fitted.Line.Rows.Count;
            effect[p] = standing.Take(p, raw, glance.Round.Hours) / fitted.Scale[p];
        }

        return effect;
    }

    private static Tried Try(View? view, double[] effect) => view?.Try(effect) ?? default;

    private static Tried Sum(Tried a, Tried b) => new(a.Match + b.Match, a.Strength + b.Strength);
}
