using Logbook.Journal;

namespace Logbook.Checks.Examining;

/// <summary>A plant that was moved, as two readings show it that bear each other out: no reading of these is to be doubted for its step.</summary>
internal static class Moves
{
    /// <summary>The readings that moved with the newest entry.</summary>
    public static IReadOnlyList<Subject> Of(Trail trail) => [.. trail.Last[^1].Glance.Round.Moved.Select(i => trail.Line.Subjects[i])];

    /// <summary>Their steps become one finding, which says what they have in common.</summary>
    public static IReadOnlyList<Finding> AsOne(IReadOnlyList<Finding> findings, Trail trail)
    {
        var moved = Of(trail);
        var steps = findings.Where(f => f.Code == StepCheck.Code && moved.Any(m => m.Name == f.Point) && f.Text.EndsWith(StepCheck.OrMisread, StringComparison.Ordinal)).ToList();
        if (steps.Count == 0)
        {
            return findings;
        }

        var beside = moved.Where(m => steps.TrueForAll(f => f.Point != m.Name)).Select(m => m.Name).ToList();
        var together = steps.Count > 1 && beside.Count == 0 ? "they moved together" : $"{Words.And(beside)} moved with {(steps.Count > 1 ? "them" : "it")}";
        var one = steps[0] with
        {
            Text = $"{string.Join("; ", steps.Select(f => f.Text[..^StepCheck.OrMisread.Length]))}: {together}, so the plant was moved",
            Evidence = [.. steps.SelectMany(f => f.Evidence)],
        };
        return [.. findings.Where(f => !steps.Contains(f) || f == steps[0]).Select(f => f == steps[0] ? one : f)];
    }

    /// <summary>Comparisons that wait for a move to come through, in one sentence; null when none does.</summary>
    public static string? Waiting(Trail trail)
    {
        var newest = trail.Last[^1];
        var round = newest.Glance.Round;
        List<double> until = [.. round.Settled.Where(hour => hour > round.Hours)];
        if (until.Count == 0)
        {
            return null;
        }

        var last = trail.Last.LastOrDefault(e => e.Glance.Round.Moved.Count > 0);
        var which = last is null ? "" : $" ({Words.And([.. last.Glance.Round.Moved.Select(i => trail.Line.Subjects[i].Name)])} at {Words.Time(last.Frame.Sheet.At)})";
        return $"the line was moved{which}: no verdict of {until.Count} comparison{(until.Count == 1 ? "" : "s")} before {Words.Time(newest.Frame.Sheet.At.AddHours(until.Max() - round.Hours))}";
    }
}
