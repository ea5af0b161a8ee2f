namespace Logbook.Checks.CrossExamination;

/// <summary>
/// Whether the line has been moved of late. Liquor at the filter was dosed hours before, and a vessel's heat follows the dose by
/// its own time: after a move that two readings show, a row that takes what moved says nothing until it has come through. One
/// reading alone is no move: it may be wrong. Only what some row takes as it was before, or waits for, tells of a move, and what
/// is compared with that in the same hour: what comes out at the end follows.
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
    private readonly double[] _readAt = Never(line);
    private readonly double[] _stoodAt = Never(line);
    private readonly double[] _movedAt = Never(line);
    private readonly double[] _movedBy = new double[line.Readings];
    private readonly double[] _confirmedAt = Never(line);
    private readonly bool[] _upstream = new bool[line.Readings];

    public Steadiness Copy()
    {
        var copy = new Steadiness(line, usual);
        _last.CopyTo(copy._last, 0);
        _readAt.CopyTo(copy._readAt, 0);
        _stoodAt.CopyTo(copy._stoodAt, 0);
        _movedAt.CopyTo(copy._movedAt, 0);
        _movedBy.CopyTo(copy._movedBy, 0);
        _confirmedAt.CopyTo(copy._confirmedAt, 0);
        _upstream.CopyTo(copy._upstream, 0);
        return copy;
    }

    /// <summary>The entry, with those rows silent in which a move has not come through yet.</summary>
    public Round Heard(Round round)
    {
        See(round);
        foreach (var row in round.Rows.OfType<RowReading>())
        {
            Place(row);
            Confirm(row, round.Hours);
        }

        Confirm(round.Hours);
        return round with
        {
            Rows = [.. round.Rows.Select(r => r is not null && round.Hours < Settled(r) ? null : r)],
            Moved = [.. Enumerable.Range(0, line.Readings).Where(i => _confirmedAt[i] == round.Hours)],
            Settled = [.. round.Rows.Select(r => r is null ? double.NegativeInfinity : Settled(r))],
        };
    }

    private void See(Round round)
    {
        for (var i = 0; i < line.Readings; i++)
        {
            if (double.IsFinite(round.Values[i]))
            {
                var by = (round.Values[i] - _last[i]) / usual.Sizes[i];
                if (Math.Abs(by) > Large)
                {
                    (_stoodAt[i], _movedAt[i], _movedBy[i]) = (_readAt[i], round.Hours, by);
                }

                (_last[i], _readAt[i]) = (round.Values[i], round.Hours);
            }
        }
    }

    private void Place(RowReading row)
    {
        var sameHour = row.Sensitivities.All(s => s.Lag == 0);
        var stands = sameHour && (row.Settles > 0 || row.Sensitivities.Any(s => s.Parameter < line.Readings && _upstream[s.Parameter]));
        foreach (var s in row.Sensitivities.Where(s => s.Parameter < line.Readings && (s.Lag > 0 || stands)))
        {
            _upstream[s.Parameter] = true;
        }
    }

    private void Confirm(double hours)
    {
        int[] moved = [.. Enumerable.Range(0, line.Readings).Where(i => _upstream[i] && _movedAt[i] >= hours - Together)];
        foreach (var i in moved)
        {
            foreach (var j in moved.Where(j => j < i && AtOnce(i, j) && Agree(i, j)))
            {
                Confirm(i, j);
            }
        }
    }

    /// <summary>Two readings that a row compares in one hour, each moved so far that it alone would have broken the row, and the row holds.</summary>
    private void Confirm(RowReading row, double hours)
    {
        if (row.Sensitivities.Any(s => s.Lag > 0))
        {
            return;
        }

        var spread = Large * Math.Sqrt(row.Sensitivities.Sum(s => Math.Pow(s.Slope * line.Parameters[s.Parameter].U, 2)));
        var moved = row.Sensitivities.Where(s => s.Parameter < line.Readings && _movedAt[s.Parameter] == hours)
            .Select(s => (Reading: s.Parameter, By: s.Slope * _movedBy[s.Parameter] * usual.Sizes[s.Parameter])).ToList();
        if (Math.Abs(moved.Sum(m => m.By)) < spread
            && moved.Where(m => m.By > spread).Select(m => (int?)m.Reading).FirstOrDefault() is { } up
            && moved.Where(m => m.By < -spread).Select(m => (int?)m.Reading).FirstOrDefault() is { } down)
        {
            Confirm(up, down);
        }
    }

    private void Confirm(int i, int j)
    {
        var at = Math.Max(_movedAt[i], _movedAt[j]);
        (_confirmedAt[i], _confirmedAt[j]) = (Math.Max(_confirmedAt[i], at), Math.Max(_confirmedAt[j], at));
    }

    /// <summary>Neither was read after the other had moved and stood still itself: a move bears out no later one.</summary>
    private bool AtOnce(int i, int j) => _stoodAt[i] < _movedAt[j] && _stoodAt[j] < _movedAt[i];

    /// <summary>Two readings that usually move together, and did so in their usual way. Where the line is steady only chance moves them: then rows tell.</summary>
    private bool Agree(int i, int j) => (line.Parameters[i].Sample is not { } sample || line.Parameters[j].Sample != sample) && usual.Together[i, j] * Math.Sign(_movedBy[i]) * Math.Sign(_movedBy[j]) > Related;

    /// <summary>The hour from which on what moved in a row has come through: twice its lag, and what the row waits for.</summary>
    private double Settled(RowReading row) => row.Sensitivities.Where(s => s.Parameter < line.Readings && (s.Lag > 0 || row.Settles > 0))
        .Select(s => _confirmedAt[s.Parameter] + (2 * s.Lag) + row.Settles).DefaultIfEmpty(double.NegativeInfinity).Max();

    private static double[] Never(Line line) => [.. Enumerable.Repeat(double.NegativeInfinity, line.Readings)];
}
