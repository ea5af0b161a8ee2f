using System.Globalization;
using Logbook.Handover;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Screens;

/// <summary>The graph as it stands on the screen: a chart for each point, the shifts below, and in words what is under the cursor.</summary>
internal static class GraphDrawing
{
    private const int Axis = 11;
    private const int FewestRows = 2;

    // From so many rows on the middle of the axis has its number too.
    private const int Tall = 9;

    // On fewer lines the help alone explains the marks, and the record tells the rest of a value: the chart keeps its place.
    private const int Small = 16;
    private const string Marks = "o value ^ above v below c corrected n not taken  - w watch = u urgent : shift";

    public static Layout Draw(Session session, GraphPage page)
    {
        IReadOnlyList<Line> head = [Head(session, page), .. HazardLines.InShort(session)];
        var words = Words(session, page).ToList();
        var room = session.Height - head.Count - words.Count - View.Bottom(session).Count - 3;
        var columns = Math.Max(1, session.Width - Axis - 1);
        var each = Math.Max(1, page.Series.Count);
        int Rows(int series) => Math.Max(FewestRows, (room / each) - (series < room % each ? 0 : 1));
        var (from, span) = (page.Window.From(session.Clock), page.Window.Span);
        var starts = Starts(session.Site, [.. Calendar.Shifts(session.Site, from, from + span).Where(s => s.Start > from)], columns);
        List<Line> body = [.. page.Series.SelectMany((series, i) => Chart(session, page, series, GraphScale.Of(series, Rows(i), from, span, columns), starts))];
        return page.Series.IsEmpty
            ? new Layout(head, [Line.Of(" reading ...", Look.Faint)], 0, 0, words)
            : new Layout(head, body, 0, body.Count - 1, [.. TimeAxis(session, page, from, span, columns, starts), .. session.Height < Small ? [] : new[] { Line.Of(TextWidth.Right(Marks, session.Width - 1), Look.Faint) }, .. words]);
    }

    /// <summary>The shifts whose begin has room to be marked: on a long stretch the first of each day, or of each Monday.</summary>
    private static List<ShiftInstance> Starts(Site site, List<ShiftInstance> shifts, int columns)
    {
        const int Apart = 4;
        var days = shifts.FindAll(s => s.Code == site.Shifts[0].Code);
        return shifts.Count * Apart <= columns ? shifts
            : days.Count * Apart <= columns ? days
            : days.FindAll(s => Calendar.ToSite(site, s.Start).DayOfWeek == DayOfWeek.Monday);
    }

    private static Line Head(Session session, GraphPage page)
    {
        var (from, to) = (page.Window.From(session.Clock), page.Window.To(session.Clock));
        var span = page.Window.Span.TotalDays >= 3 ? Say.Count((int)page.Window.Span.TotalDays, "day") : Say.Count((int)page.Window.Span.TotalHours, "hour");
        return Line.Of(new Span(" Graph", Look.Strong), new Span($"   {span}, {Say.Day(session.Site, from)} to {(page.Window.Ends is null ? "now" : Say.Day(session.Site, to))}"));
    }

    private static IEnumerable<Line> Chart(Session session, GraphPage page, GraphSeries series, GraphScale scale, List<ShiftInstance> starts)
    {
        yield return Line.Of($" {series.Point.Tag} {series.Point.Description}{(series.Point.Choices.Count > 0 ? "" : $", {series.Point.UnitInWords}")}", Look.Strong);
        var cells = new (char Mark, Look Look)[scale.Rows, scale.Columns];
        Background(series, scale, starts, cells);
        foreach (var value in series.Values)
        {
            if (scale.Column(value.At) is { } column && (value.Value is { } number ? scale.RowOf(number, series.LimitsAt(value.At)) : scale.Rows - 1) is { } row)
            {
                cells[row, column] = series.Mark(value);
            }
        }

        var cursor = page.Cursor is { } at ? scale.Column(at) : null;
        for (var row = 0; row < scale.Rows; row++)
        {
            yield return Row(Label(series, scale, row), cells, row, cursor);
        }
    }

    /// <summary>Limits as they were at each time, and where shifts begin.</summary>
    private static void Background(GraphSeries series, GraphScale scale, List<ShiftInstance> starts, (char Mark, Look Look)[,] cells)
    {
        foreach (var column in starts.Select(s => scale.Column(s.Start)).OfType<int>())
        {
            for (var row = 0; row < scale.Rows; row++)
            {
                cells[row, column] = (':', Look.Faint);
            }
        }

        for (var column = 0; column < scale.Columns; column++)
        {
            var limits = series.LimitsAt(scale.Time(column));
            foreach (var (limit, mark) in new[] { (limits.WatchLow, '-'), (limits.WatchHigh, '-'), (limits.UrgentLow, '='), (limits.UrgentHigh, '=') })
            {
                if (limit is { } at && scale.LimitRow(at) is { } row)
                {
                    cells[row, column] = (mark, Look.Faint);
                }
            }
        }
    }

    /// <summary>A limit by its value and its word, else the ends of the axis.</summary>
    private static string Label(GraphSeries series, GraphScale scale, int row)
    {
        var limits = series.Limits.Count > 0 ? series.Limits[^1].Limits : Limits.None;
        var named = new[] { (limits.UrgentLow, "u"), (limits.UrgentHigh, "u"), (limits.WatchLow, "w"), (limits.WatchHigh, "w") }
            .FirstOrDefault(l => l.Item1 is { } at && scale.LimitRow(at) == row);
        var choice = series.Point.Choices.FirstOrDefault(c => scale.Row(c.Digit) == row);
        var text = choice is not null ? choice.Text
            : series.Point.Choices.Count > 0 ? ""
            : named.Item1 is { } limit ? $"{named.Item2} {LimitText.Number(limit)}"
            : row == 0 ? Say.Number(scale.High, series.Point.Decimals)
            : row == scale.Rows - 1 ? Say.Number(scale.Low, series.Point.Decimals)
            : row == scale.Rows / 2 && scale.Rows >= Tall ? Say.Number(scale.High - (row * (scale.High - scale.Low) / (scale.Rows - 1)), series.Point.Decimals)
            : "";
        return TextWidth.Right(text, Axis - 2) + " |";
    }

    private static Line Row(string label, (char Mark, Look Look)[,] cells, int row, int? cursor)
    {
        List<Span> spans = [new(label, Look.Faint)];
        for (var column = 0; column < cells.GetLength(1);)
        {
            var from = column;
            var look = LookOf(cells, row, column, cursor);
            while (column < cells.GetLength(1) && LookOf(cells, row, column, cursor) == look)
            {
                column++;
            }

            spans.Add(new Span(string.Concat(Enumerable.Range(from, column - from).Select(c => cells[row, c].Mark is '\0' ? c == cursor ? '|' : ' ' : cells[row, c].Mark)), look));
        }

        return new Line(spans);
    }

    private static Look LookOf((char Mark, Look Look)[,] cells, int row, int column, int? cursor) =>
        column == cursor ? Look.Chosen : cells[row, column].Mark is '\0' ? Look.Plain : cells[row, column].Look;

    /// <summary>Where shifts begin, by letter and day; on a short stretch the clock and its hours too.</summary>
    private static IEnumerable<Line> TimeAxis(Session session, GraphPage page, DateTimeOffset from, TimeSpan span, int columns, List<ShiftInstance> starts)
    {
        int Column(DateTimeOffset at) => Math.Clamp((int)Math.Floor((at - from) / span * columns), 0, columns - 1);
        var rule = new StringOfCells(columns, '-');
        var text = new StringOfCells(columns, ' ');
        var first = Calendar.ToSite(session.Site, from).ToString("HH:mm", CultureInfo.InvariantCulture);
        foreach (var shift in starts)
        {
            rule.Put(Column(shift.Start), "+");
            var local = Calendar.ToSite(session.Site, shift.Start);
            var label = span.TotalDays > 8
                ? shift.Code == session.Site.Shifts[0].Code ? local.ToString("d MMM", CultureInfo.InvariantCulture) : ""
                : local.ToString($"'{shift.Code}' {(span.TotalDays > 2 ? "d MMM" : "d MMM HH:mm")}", CultureInfo.InvariantCulture);
            _ = text.PutIfFree(Column(shift.Start), label) || text.PutIfFree(Column(shift.Start), shift.Code);
        }

        foreach (var hour in Hours(session, from, span))
        {
            rule.Put(Column(hour), rule.At(Column(hour)) == '-' ? "'" : "+");
            _ = text.PutIfFree(Column(hour), Calendar.ToSite(session.Site, hour).ToString("HH:mm", CultureInfo.InvariantCulture));
        }

        if (page.Cursor is { } cursor && cursor >= from && cursor < from + span)
        {
            rule.Put(Column(cursor), "^");
        }

        _ = text.PutIfFree(0, first);
        yield return Line.Of(new string(' ', Axis - 1) + "+" + rule, Look.Faint);
        yield return Line.Of(new string(' ', Axis) + text, Look.Faint);
    }

    /// <summary>Full hours on the clock of a stretch of up to a day, so many apart that their labels have room.</summary>
    private static IEnumerable<DateTimeOffset> Hours(Session session, DateTimeOffset from, TimeSpan span)
    {
        var apart = span.TotalHours switch { <= 4 => 1, <= 12 => 2, <= 24 => 4, _ => 0 };
        for (var hour = from.AddMinutes(60 - from.Minute).AddSeconds(-from.Second); apart > 0 && hour < from + span; hour = hour.AddHours(1))
        {
            if (Calendar.ToSite(session.Site, hour).Hour % apart == 0)
            {
                yield return hour;
            }
        }
    }

    /// <summary>Each point's value under the cursor, and what its trend comes to.</summary>
    private static IEnumerable<Line> Words(Session session, GraphPage page)
    {
        var under = page.Under(session);
        foreach (var series in page.Series)
        {
            var value = under.FirstOrDefault(u => u.Of == series).Value;
            foreach (var line in Gutter.Lines(series.Point.Tag, Look.Strong, value is null ? "no value in this stretch" : series.Words(session, value), session.Width, page.Series.Count > 2 || session.Height < Small ? 1 : 2))
            {
                yield return line;
            }

            if (series.Trend.Count > 0 && session.Height >= (page.Series.Count < 3 ? Small : 34))
            {
                foreach (var line in Gutter.Lines("", Look.Plain, string.Join("; ", series.Trend), session.Width, page.Series.Count > 2 ? 1 : 2, Look.Faint))
                {
                    yield return line;
                }
            }
        }
    }
}

/// <summary>A row of characters that labels are put into.</summary>
internal sealed class StringOfCells(int count, char fill)
{
    private readonly char[] _cells = [.. Enumerable.Repeat(fill, count)];

    public char At(int at) => _cells[at];

    public void Put(int at, string text)
    {
        for (var i = 0; i < text.Length && at + i < _cells.Length; i++)
        {
            _cells[at + i] = text[i];
        }
    }

    /// <summary>Puts the text where nothing else stands, with a blank on either side; else leaves it out and says so.</summary>
    public bool PutIfFree(int at, string text)
    {
        var free = at + text.Length <= _cells.Length && Enumerable.Range(Math.Max(0, at - 1), Math.Min(_cells.Length, at + text.Length + 1) - Math.Max(0, at - 1)).All(i => _cells[i] == fill);
        if (free)
        {
            Put(at, text);
        }

        return free;
    }

    public override string ToString() => new(_cells);
}
