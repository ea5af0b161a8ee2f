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
        if (lag > TimeSpan.Zero && Mean(point, then, lag) is { } mean)
        {
            return mean;
        }

        return day.Last(point, then) is { } last && then - last.At <= point.Stale
            ? (last.Value!.Value, U(point, last), last.Seq)
            : null;
    }

    public string WhyMissing(Point point, TimeSpan lag) =>
        lag > TimeSpan.Zero ? $"{point.Tag} has no value of {Words.Time(at - lag)}"
        : day.Last(point, at) is { } last ? $"{point.Tag} of {Words.Time(last.At)} is older than {Words.Span(point.Stale)}"
        : $"{point.Tag} has not been given";

    /// <summary>The mean over a quarter of the lag about that time. The instrument's error is one and the same in all of it.</summary>
    private (double Value, double U, long Seq)? Mean(Point point, DateTimeOffset then, TimeSpan lag)
    {
        var values = day.Series(point, then - (lag / 8), then + (lag / 8)).ToList();
        return values.Count == 0 ? null : (values.Average(v => v.Value!.Value), U(point, values[^1]), values[^1].Seq);
    }

    private double U(Point point, SeriesValue value) => point.Kind == PointKind.Read
        ? point.U?.Of(value.Value!.Value) ?? 0
        : StoredU(point, value);

    /// <summary>A derived point has no uncertainty of its own: the record that computed it has.</summary>
    private double StoredU(Point point, SeriesValue value)
    {
        var record = day.Store.Read(value.CorrectedBy ?? value.Seq).FirstOrDefault();
        IReadOnlyList<Result> results = record?.Body switch
        {
            Entry entry => entry.Results,
            Correction correction => correction.Results,
            _ => [],
        };
        return results.FirstOrDefault(r => point.Tag.Equals(r.Point, StringComparison.Ordinal))?.U ?? 0;
    }
}
