using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>Numbers that an entry takes from the journal: none later than the entry's own time, none staler than the point allows.</summary>
internal sealed class PastValues(Day day, DateTimeOffset at)
{
    /// <summary>The value with its standard uncertainty and the record that it stands in.</summary>
    public (double Value, double U, long Seq)? Find(Point point, TimeSpan lag)
    {
        var then = at - lag;
        if (lag > TimeSpan.Zero && Mean(point, lag) is { } mean)
        {
            return mean;
        }

        return day.Last(point, then) is { } last && then - last.At <= point.Stale
            ? (last.Value!.Value, day.UOf(point, last), last.Seq)
            : null;
    }

    public MissingInput WhyMissing(LinkedCalculation calculation, Point point, TimeSpan lag)
    {
        if (lag > TimeSpan.Zero)
        {
            return new MissingInput(calculation, point.Tag, $"{point.Tag} of {Words.Time(at - lag)}", NotYet: true);
        }

        return day.Last(point, at) is { } last
            ? new MissingInput(calculation, point.Tag, $"{point.Tag} of {Words.Time(last.At)} is older than {Words.Span(point.Stale)}")
            : new MissingInput(calculation, point.Tag, point.Tag, NotYet: true);
    }

    /// <summary>The instrument's error is one and the same in all of the window.</summary>
    private (double Value, double U, long Seq)? Mean(Point point, TimeSpan lag)
    {
        var (from, to) = LagWindow.Of(at, lag);
        var values = day.Series(point, from, to).ToList();
        return values.Count == 0 ? null : (values.Average(v => v.Value!.Value), day.UOf(point, values[^1]), values[^1].Seq);
    }
}
