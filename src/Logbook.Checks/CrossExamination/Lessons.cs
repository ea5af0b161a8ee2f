namespace Logbook.Checks.CrossExamination;

/// <summary>
/// What the rows of each entry tell of the errors of the readings that they take: an error's covariance with the rows, weighed by
/// how these go together. The more was told before, the less is left to tell.
/// </summary>
internal sealed class Lessons(Fitted fitted)
{
    private readonly Dictionary<Taken, double> _variances = [];

    // The readings that some row was seen to take again: of any other its error is of use only while it is new.
    private readonly HashSet<int> _again = [];

    public Lessons Copy()
    {
        var copy = new Lessons(fitted);
        copy._again.UnionWith(_again);
        foreach (var (taken, variance) in _variances)
        {
            copy._variances[taken] = variance;
        }

        return copy;
    }

    public Heard Of(Round round, Factors factors)
    {
        var rows = Places.Speaking(fitted.Line, round, readingsToo: false);
        var all = Places.Speaking(fitted.Line, round, readingsToo: true);
        _again.UnionWith(rows.SelectMany(k => round.Rows[k]!.Sensitivities).Where(s => s.HoursBack > 0).Select(s => s.Parameter));
        return new Heard(rows, all, rows.Length > 0 && factors.Of(rows) is { } factor ? [.. Shared(round, rows).Select(s => Of(s.Key, s.Value, rows, factor))] : []);
    }

    private Lesson Of(Taken taken, double[] moves, int[] rows, Factor factor)
    {
        var u = fitted.Line.Parameters[taken.Reading].U;
        var variance = _variances.TryGetValue(taken, out var known) ? known : u * u;
        var weights = factor.Weigh(moves);
        var again = _again.Contains(taken.Reading);
        if (again)
        {
            _variances[taken] = Math.Max(0, variance - (variance * variance * Factor.Dot(moves, weights)));
        }

        return new Lesson(taken, [.. rows.Select((row, i) => (row, variance * weights[i])).Where(w => w.Item2 != 0)], again);
    }

    /// <summary>For each reading that a row takes, how far its error moves each row, scaled.</summary>
    private Dictionary<Taken, double[]> Shared(Round round, int[] rows)
    {
        var shared = new Dictionary<Taken, double[]>();
        for (var i = 0; i < rows.Length; i++)
        {
            foreach (var s in round.Rows[rows[i]]!.Sensitivities.Where(s => s.Parameter < fitted.Line.Readings && s.Slope != 0 && (s.HoursBack == 0 || _again.Contains(s.Parameter))))
            {
                var taken = Taken.Of(s, round.Hours);
                if (!shared.TryGetValue(taken, out var moves))
                {
                    shared[taken] = moves = new double[rows.Length];
                }

                moves[i] += s.Slope / fitted.Scale[rows[i]];
            }
        }

        return shared;
    }

    /// <summary>Drops what was taken before an hour.</summary>
    public void Forget(double hours)
    {
        foreach (var taken in _variances.Keys.Where(t => t.Second < Taken.SecondOf(hours)).ToList())
        {
            _variances.Remove(taken);
        }
    }
}
