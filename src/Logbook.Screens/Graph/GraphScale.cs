using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>From values and times to cells.</summary>
internal sealed record GraphScale(double Low, double High, int Rows, DateTimeOffset From, TimeSpan Span, int Columns)
{
    // Limits that lie further from the values than this many times their own spread would press them flat.
    private const double Near = 1.5;

    /// <summary>The limits that are drawn; null for all. On few rows only the nearest have room for the values beside them.</summary>
    public IReadOnlySet<double>? Shown { get; init; }

    public static GraphScale Of(GraphSeries series, int rows, DateTimeOffset from, TimeSpan span, int columns)
    {
        var values = series.Values.Select(v => v.Value).OfType<double>().ToList();
        if (values.Count == 0)
        {
            values.Add(series.Point.Limits.WatchLow ?? series.Point.Limits.WatchHigh ?? 0);
        }

        var (low, high) = (values.Min(), values.Max());
        var step = series.Point.Resolution ?? Math.Pow(10, -series.Point.Decimals);
        var reach = Near * Math.Max(high - low, 4 * step);
        var isLimit = false;
        var shown = series.Limits.SelectMany(l => All(l.Limits)).Distinct().OrderBy(l => Math.Max(0, Math.Max(values.Min() - l, l - values.Max()))).Take((rows - 1) / 2).ToHashSet();
        foreach (var limit in shown)
        {
            isLimit |= (limit <= low && values.Min() - limit <= reach) || (limit >= high && limit - values.Max() <= reach);
            (low, high) = (limit < low && values.Min() - limit <= reach ? limit : low, limit > high && limit - values.Max() <= reach ? limit : high);
        }

        // Beyond a limit at the edge a row is left for what lies there: 0.6 of a row on either side.
        var margin = Math.Max((high - low) * (isLimit ? Math.Max(0.04, 0.6 / (rows - 2.2)) : 0.04), 2 * step * (high > low ? 0 : 1));
        return new GraphScale(low - margin, high + margin, rows, from, span, columns) { Shown = shown };
    }

    /// <summary>The row that a limit is drawn on; null when it is not.</summary>
    public int? LimitRow(double limit) => Shown?.Contains(limit) == false ? null : Row(limit);

    public static IEnumerable<double> All(Limits limits) => new[] { limits.UrgentLow, limits.WatchLow, limits.WatchHigh, limits.UrgentHigh }.OfType<double>();

    /// <summary>
    /// The row of a value: on its own side of each limit, and never on the limit's row, where it could not be told from it; the row
    /// beyond, unless another limit has that.
    /// </summary>
    public int? RowOf(double value, Limits limits)
    {
        var row = Row(value);
        var here = All(limits).Where(l => row is not null && LimitRow(l) == row).ToList();
        var beside = here.Count == 0 ? row
            : here.TrueForAll(l => IsAbove(value, l, limits)) ? row - 1
            : !here.Exists(l => IsAbove(value, l, limits)) ? row + 1
            : row; // between two limits of one row
        return beside >= 0 && beside < Rows && All(limits).All(l => LimitRow(l) != beside) ? beside : row;
    }

    /// <summary>A value on a limit lies on the side that the limit allows.</summary>
    private static bool IsAbove(double value, double limit, Limits limits) =>
        value > limit || (value == limit && limit != limits.WatchHigh && limit != limits.UrgentHigh);

    /// <summary>The row from the top; null when it lies outside.</summary>
    public int? Row(double value)
    {
        var row = (int)Math.Round((High - value) / (High - Low) * (Rows - 1));
        return row >= 0 && row < Rows ? row : null;
    }

    public int? Column(DateTimeOffset at)
    {
        var column = (int)Math.Floor((at - From) / Span * Columns);
        return column >= 0 && column < Columns ? column : null;
    }

    /// <summary>The middle of a column.</summary>
    public DateTimeOffset Time(int column) => From + (Span * ((column + 0.5) / Columns));
}
