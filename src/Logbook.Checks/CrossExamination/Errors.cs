using System.Runtime.InteropServices;

namespace Logbook.Checks.CrossExamination;

/// <summary>
/// What the rows so far let expect of the error of each reading. A row that looks back takes a reading again that another row
/// took when it was new: its error is in both, and what the first one showed of it is no surprise in the second.
/// </summary>
internal sealed class Errors
{
    private readonly Dictionary<Taken, double> _expected = [];

    public Errors Copy()
    {
        var copy = new Errors();
        foreach (var (taken, error) in _expected)
        {
            copy._expected[taken] = error;
        }

        return copy;
    }

    /// <summary>What is expected of a row, by the errors of what it takes.</summary>
    public double In(RowReading row, double hours)
    {
        if (_expected.Count == 0)
        {
            return 0;
        }

        var sum = 0.0;
        foreach (var s in row.Sensitivities)
        {
            sum += _expected.TryGetValue(Taken.Of(s, hours), out var error) ? s.Slope * error : 0;
        }

        return sum;
    }

    /// <param name="lessons">Of one entry.</param>
    /// <param name="surprises">How far each row was from what was expected, scaled.</param>
    /// <param name="round">The entry.</param>
    /// <returns>For each reading the error that its value in this entry is expected to have; zero for one that was not taken.</returns>
    public double[] Learn(IReadOnlyList<Lesson> lessons, ReadOnlySpan<double> surprises, Round round)
    {
        var now = new double[round.Values.Count];
        foreach (var lesson in lessons)
        {
            var by = 0.0;
            foreach (var (place, weight) in lesson.Weights)
            {
                by += weight * surprises[place];
            }

            if (lesson.Taken.Second == Taken.SecondOf(round.Hours))
            {
                now[lesson.Taken.Reading] += by;
            }

            if (lesson.Again && by != 0)
            {
                _expected[lesson.Taken] = by + _expected.GetValueOrDefault(lesson.Taken);
            }
        }

        return now;
    }

    /// <summary>Drops what was taken before an hour.</summary>
    public void Forget(double hours)
    {
        foreach (var taken in _expected.Keys.Where(t => t.Second < Taken.SecondOf(hours)).ToList())
        {
            _expected.Remove(taken);
        }
    }
}

/// <summary>One reading, as it was taken at a time.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Taken(int Reading, long Second)
{
    public static Taken Of(Sensitivity s, double hours) => new(s.Parameter, SecondOf(hours - s.HoursBack));

    public static long SecondOf(double hours) => (long)Math.Round(hours * 3600);
}

/// <summary>What an entry tells of the error of one reading.</summary>
/// <param name="Weights">For each place that speaks of it or with it, the error that one unit of surprise lets expect.</param>
/// <param name="Again">True when rows take it again later.</param>
internal sealed record Lesson(Taken Taken, IReadOnlyList<(int Place, double Weight)> Weights, bool Again);
