namespace Logbook.Checks.CrossExamination;

/// <summary>How one hypothesis that began at one entry matches all entries since.</summary>
/// <param name="Hypothesis">What would have happened.</param>
/// <param name="Onset">In how many entries a row has spoken of it since it began.</param>
/// <param name="Entries">The entries since then.</param>
/// <param name="Physics">On the rows alone.</param>
/// <param name="Quiet">On rows and readings, the plant as usual.</param>
/// <param name="Changed">The same, the plant being moved.</param>
internal sealed record Trace(Hypothesis Hypothesis, int Onset, int Entries, Tried Physics, Tried Quiet, Tried Changed)
{
    /// <param name="fitted">What was learned.</param>
    /// <param name="since">The entries since it began, oldest first.</param>
    /// <param name="hypothesis">What would have happened.</param>
    /// <param name="onset">In how many entries a row has spoken of it since.</param>
    public static Trace Of(Fitted fitted, IReadOnlyList<Glance> since, Hypothesis hypothesis, int onset)
    {
        var standing = since[0].Before.Blank();
        var (physics, quiet, changed) = (default(Tried), default(Tried), default(Tried));
        foreach (var glance in since)
        {
            var effect = Effect(fitted, glance.Round, hypothesis, since[0].Round.Hours, standing);
            physics = Add(physics, glance.Physics, effect);
            quiet = Add(quiet, glance.Quiet, effect);
            changed = Add(changed, glance.Changed, effect);
        }

        return new Trace(hypothesis, onset, since.Count, physics, quiet, changed);
    }

    private static double[] Effect(Fitted fitted, Round round, Hypothesis hypothesis, double began, Standing standing)
    {
        var effect = new double[fitted.Line.Width];
        foreach (var p in Places.Speaking(fitted.Line, round, readingsToo: true))
        {
            effect[p] = standing.Take(p, Places.Effect(fitted.Line, round, p, hypothesis, began), round.Hours) / fitted.Scale[p];
        }

        return effect;
    }

    private static Tried Add(Tried sum, View? view, double[] effect)
    {
        if (view is null)
        {
            return sum;
        }

        var tried = view.Try(effect);
        return new Tried(sum.Match + tried.Match, sum.Strength + tried.Strength);
    }
}
