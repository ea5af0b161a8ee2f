namespace Logbook.Checks.CrossExamination;

/// <summary>
/// Whether the line has been moved of late. Liquor at the filter was dosed hours before: after a move that two readings show, a
/// row that looks back says nothing until twice its lag has passed. One reading alone is no move: it may be wrong. Only what some
/// row takes as it was before tells of a move: what comes out at the end follows.
/// </summary>
internal sealed class Steadiness(Line line, UsualChanges usual)
{
    /// <summary>A move is larger than so many usual changes.</summary>
    private const double Large = 3;

    /// <summary>Two readings show one move when they show it within so many hours.</summary>
    private const double Together = 2.5;

    /// <summary>The correlation of their changes from which on one reading is a witness of the other's.</summary>
    private const double Related = 0.25;

    private readonly double[] _last = [.. Enumerable.Repeat(double.NaN, line.Readings)];
    private readonly double[] _movedAt = [.. Enumerable.Repeat(double.NegativeInfinity, line.Readings)];
    private readonly double[] _movedBy = new double[line.Readings];
    private readonly bool[] _upstream = new bool[line.Readings];
    private double _confirmedAt = double.NegativeInfinity;

    public Steadiness Copy()
    {
        var copy = new Steadiness(line, usual) { _confirmedAt = _confirmedAt };
        _last.CopyTo(copy._last, 0);
        _movedAt.CopyTo(copy._movedAt, 0);
        _movedBy.CopyTo(copy._movedBy, 0);
        _upstream.CopyTo(copy._upstream, 0);
        return copy;
    }

    /// <summary>The entry, with those rows silent that look back to before the line settled.</summary>
    public Round Heard(Round round)
    {
        for (var i = 0; i < line.Readings; i++)
        {
            if (double.IsFinite(round.Values[i]))
            {
                var by = (round.Values[i] - _last[i]) / usual.Sizes[i];
                (_movedAt[i], _movedBy[i]) = Math.Abs(by) > Large ? (round.Hours, by) : (_movedAt[i], _movedBy[i]);
                _last[i] = round.Values[i];
            }
        }

        foreach (var s in round.Rows.OfType<RowReading>().SelectMany(r => r.Sensitivities).Where(s => s.Parameter < line.Readings && s.Lag > 0))
        {
            _upstream[s.Parameter] = true;
        }

        int[] moved = [.. Enumerable.Range(0, line.Readings).Where(i => _upstream[i] && _movedAt[i] >= round.Hours - Together)];
        _confirmedAt = moved.Any(i => moved.Any(j => j < i && Agree(i, j))) ? round.Hours : _confirmedAt;
        return round with { Rows = [.. round.Rows.Select(r => r is not null && Moving(r, round.Hours) ? null : r)] };
    }

    /// <summary>Two readings that usually move together, and did so in their usual way.</summary>
    private bool Agree(int i, int j) => (line.Parameters[i].Sample is not { } sample || line.Parameters[j].Sample != sample) && usual.Together[i, j] * Math.Sign(_movedBy[i]) * Math.Sign(_movedBy[j]) > Related;

    private bool Moving(RowReading row, double hours)
    {
        var lag = row.Sensitivities.Max(s => s.Lag);
        return lag > 0 && hours - _confirmedAt < 2 * lag;
    }
}
