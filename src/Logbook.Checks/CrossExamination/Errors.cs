using System.Runtime.InteropServices;

namespace Logbook.Checks.CrossExamination;

/// <summary>
/// What the rows so far let expect of the error of each reading. A row that looks back takes a reading again that another row
/// took when it was new: its error is in both, and what the first one showed of it is no surprise in the second.
/// </summary>
internal sealed class Errors
{
    // By number, from _first on: this is kept for every suspicion, so it is an array and no dictionary.
    private double[] _expected = [];
    private int _first;

    public Errors Copy() => new() { _expected = [.. _expected], _first = _first };

    /// <summary>What is expected of a row, by the errors of what it takes again.</summary>
    public double In(Again[] takes)
    {
        var sum = 0.0;
        foreach (var (number, slope) in takes)
        {
            var at = number - _first;
            sum += at >= 0 && at < _expected.Length ? slope * _expected[at] : 0;
        }

        return sum;
    }

    /// <param name="heard">Of one entry.</param>
    /// <param name="surprises">How far each row was from what was expected, scaled.</param>
    /// <param name="now">Takes for each reading the error that its value in this entry is expected to have; zero for one that was not taken.</param>
    public void Learn(Heard heard, ReadOnlySpan<double> surprises, Span<double> now)
    {
        now.Clear();
        foreach (var lesson in heard.Lessons)
        {
            var by = 0.0;
            foreach (var (place, weight) in lesson.Weights)
            {
                by += weight * surprises[place];
            }

            if (lesson.IsNew)
            {
                now[lesson.Reading] += by;
            }

            if (lesson.Number is { } number && by != 0)
            {
                Reach(heard.Numbers);
                _expected[number - _first] += by;
            }
        }
    }

    /// <summary>Makes room for the numbers that are in use, and drops those that are not any more.</summary>
    private void Reach((int First, int Next) numbers)
    {
        if (_expected.Length > 0 && numbers.Next <= _first + _expected.Length)
        {
            return;
        }

        var from = Math.Max(_first, numbers.First);
        var wider = new double[2 * (numbers.Next - numbers.First)];
        if (from < _first + _expected.Length)
        {
            _expected.AsSpan(from - _first).CopyTo(wider.AsSpan(from - numbers.First));
        }

        (_expected, _first) = (wider, numbers.First);
    }
}

/// <summary>One reading, as it was taken at a time.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Taken(int Reading, long Second)
{
    public static Taken Of(Sensitivity s, double hours) => new(s.Parameter, SecondOf(hours - s.HoursBack));

    public static long SecondOf(double hours) => (long)Math.Round(hours * 3600);
}

/// <summary>A reading that a row takes again, by the number that it got when its error was first told of.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Again(int Number, double Slope);

/// <summary>What an entry tells of the error of one reading.</summary>
/// <param name="IsNew">True when it was taken in this entry.</param>
/// <param name="Number">Under which its error is remembered; null when no row takes it again.</param>
/// <param name="Weights">For each place that speaks of it or with it, the error that one unit of surprise lets expect.</param>
internal sealed record Lesson(int Reading, bool IsNew, int? Number, (int Place, double Weight)[] Weights);
