namespace Logbook.Checks.CrossExamination;

/// <summary>
/// What the rows of each entry tell of the errors of the readings that they take: an error's covariance with the rows, weighed by
/// how these go together. The more was told before, the less is left to tell.
/// </summary>
internal sealed class Lessons(Fitted fitted)
{
    // Of each reading that is taken again: the number under which its error is remembered, and the variance that is left of it.
    private readonly Dictionary<Taken, (int Number, double Variance)> _known = [];
    private int _next;

    // The readings that some row was seen to take again: of any other its error is of use only while it is new.
    private readonly HashSet<int> _again = [];

    public Lessons Copy()
    {
        var copy = new Lessons(fitted) { _next = _next };
        copy._again.UnionWith(_again);
        foreach (var (taken, known) in _known)
        {
            copy._known[taken] = known;
        }

        return copy;
    }

    public Heard Of(Round round, Factors factors)
    {
        var rows = Places.Rows(fitted.Line, round);
        var readings = Places.Readings(fitted.Line, round);
        _again.UnionWith(rows.SelectMany(k => round.Rows[k]!.Sensitivities).Where(s => s.HoursBack > 0).Select(s => s.Parameter));
        Again[][] takes = [.. rows.Select(k => Again(round.Rows[k]!, round.Hours))];
        Lesson[] lessons = rows.Length > 0 && factors.Of(rows) is { } factor
            ? [.. Shared(round, rows).Select(s => Of(s.Key, s.Value, rows, factor, round.Hours))]
            : [];
        return new Heard(rows, readings, takes, lessons, (_known.Count > 0 ? _known.Values.Min(k => k.Number) : _next, _next));
    }

    /// <summary>What a row takes of which entries before told the error.</summary>
    public Again[] Again(RowReading row, double hours)
    {
        var again = new List<Again>();
        foreach (var s in row.Sensitivities)
        {
            if (_known.TryGetValue(Taken.Of(s, hours), out var known))
            {
                again.Add(new Again(known.Number, s.Slope));
            }
        }

        return [.. again];
    }

    private Lesson Of(Taken taken, double[] moves, int[] rows, Factor factor, double hours)
    {
        var u = fitted.Line.Parameters[taken.Reading].U;
        var told = _known.TryGetValue(taken, out var known);
        var variance = told ? known.Variance : u * u;
        var weights = factor.Weigh(moves);
        int? number = _again.Contains(taken.Reading) ? told ? known.Number : _next++ : null;
        if (number is { } kept)
        {
            _known[taken] = (kept, Math.Max(0, variance - (variance * variance * Factor.Dot(moves, weights))));
        }

        return new Lesson(taken.Reading, taken.Second == Taken.SecondOf(hours), number, [.. rows.Select((row, i) => (row, variance * weights[i])).Where(w => w.Item2 != 0)]);
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
        foreach (var taken in _known.Keys.Where(t => t.Second < Taken.SecondOf(hours)).ToList())
        {
            _known.Remove(taken);
        }
    }
}
