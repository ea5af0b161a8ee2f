using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>The columns of a round: tag, description, value, unit, what is said of it.</summary>
internal sealed class RoundColumns
{
    private const int Value = 9;
    private readonly int _tag;
    private readonly int _description;
    private readonly int _unit;
    private readonly int _said;

    public RoundColumns(int width, RoundPage page)
    {
        _tag = Math.Min(12, page.Rows.Max(r => r.Point.Tag.Length));
        var points = page.Rows.Select(r => r.Point).Concat(RoundResults.ByRow(page).Where(g => g.Key >= 0).SelectMany(g => g).Select(r => r.Point)).ToList();
        _unit = Math.Min(10, points.Max(p => Unit(p).Length));
        var rest = width - 3 - _tag - 2 - Value - 1 - _unit - 2;
        _description = Math.Max(8, Math.Min(rest * 58 / 100, points.Max(p => TextWidth.Of(p.Description))));
        _said = Math.Max(0, width - 3 - _tag - 2 - _description - Value - 1 - _unit - 2);
    }

    /// <summary>The description has no room in its row.</summary>
    public bool Cuts(Point point) => TextWidth.Of(point.Description) > _description;

    public Line Row(Session session, RoundRow row)
    {
        var look = LevelWords.LookOf(row.Check.Worst);
        var said = row.NotTaken ? $"not taken: {row.Why}"
            : !row.Answered ? Pending(row)
            : row.Check.Words.Length > 0 ? row.Check.Words
            : row.Point.Choices.Count > 0 ? row.Value(session.Site)
            : row.Change();
        // Before all else: at 80 columns nothing behind it has room.
        said = row.Line?.Second is { } second ? $"second {second}{(said.Length > 0 ? ", " : "")}{said}" : said;
        // What is said gives way: it stands in the panel too, a time of its own does not.
        var marks = Marks(row);
        said = TextWidth.Cut(said, Math.Max(0, _said - TextWidth.Of(marks)));
        return Line.Of(new Span("   " + Name(row.Point)), new Span(TextWidth.Right(Shown(row), Value) + " " + TextWidth.Fit(Unit(row.Point), _unit) + " "), new Span(" " + said, row.Answered ? look : Look.Faint), new Span(marks, Look.Faint));
    }

    /// <summary>The row with the field: what is typed stands left of a caret, so that the place is seen without colour.</summary>
    public Line Field(Session session, RoundPage page)
    {
        var row = page.Row;
        var field = page.Field.Length == 0 && row.Answered ? Shown(row) : page.Field + "_";
        var check = page.Live.Findings.Count > 0 ? page.Live : RowCheck.None;
        IEnumerable<Span> said = page.Field.Length == 0 ? Row(session, row).Spans.Skip(2) : [new Span(" " + check.Words, LevelWords.LookOf(check.Worst))];
        return Line.Of([new Span(" > " + Name(row.Point), Look.Strong), new Span(TextWidth.Right(field, Value), Look.Field), new Span(" " + TextWidth.Fit(Unit(row.Point), _unit) + " "), .. said]);
    }

    /// <summary>The field behind the last row.</summary>
    public Line End(RoundPage page) => Line.Of(
        new Span(" > " + TextWidth.Fit("end of the round", _tag + 2 + _description), Look.Strong), new Span(TextWidth.Right(page.Field + "_", Value), Look.Field), new Span("  Enter saves it"));

    public Line Result(ResultRow result)
    {
        var (point, number) = (result.Point, result.Result);
        var u = number.U is > 0 ? $"plus or minus {Figures.Two(2 * number.U.Value)}" : "";
        var basis = Says(point) ? "" : $"{point.UnitInWords}; ";
        var level = result.Worst is { } worst ? LevelWords.Of(worst) + (u.Length > 0 ? "; " : "") : "";
        var look = result.Worst is null ? Look.Faint : LevelWords.LookOf(result.Worst);
        var said = basis + level + u;
        // What it covers is a sentence of its own: whole, or left to the record.
        var covers = u.Length > 0 && !string.IsNullOrEmpty(number.Covers) ? $", {number.Covers}" : "";
        said += TextWidth.Of(said + covers) <= _said ? covers : "";
        return Line.Of(new Span("   = " + TextWidth.Fit(point.Description, _tag + 2 + _description - 3), Look.Faint),
            new Span(" " + TextWidth.Right(Say.Number(number.Value, point.Decimals), Value) + " " + TextWidth.Fit(Unit(point), _unit) + " "), new Span(" " + said, look));
    }

    /// <summary>The unit's column or the description tells the basis of a strength and the temperature of its litre.</summary>
    private static bool Says(Point point) => point.UnitInWords.Equals(point.Unit.Name, StringComparison.Ordinal)
        || (point.UnitInWords.Split(' ', 2) is [_, var basis] && point.Description.Contains(basis, StringComparison.Ordinal));

    private string Name(Point point) => TextWidth.Fit(point.Tag, _tag) + "  " + TextWidth.Fit(point.Description, _description);

    private static string Unit(Point point) => point.Choices.Count > 0 ? "" : point.Unit.Name;

    private static string Shown(RoundRow row) => row.Text ?? "";

    private static string Pending(RoundRow row) => row.Line is not null ? "open" : row.Rests is { } why ? $"not asked: {why}" : "";

    /// <summary>What stands behind all else: a remark, a time of its own.</summary>
    private static string Marks(RoundRow row)
    {
        string[] marks =
        [
            row.Line?.AtGiven == true ? FormattableString.Invariant($"at {row.Line.At:HH:mm}") : "",
            row.Line?.Remark is not null ? "remark" : "",
            row is { Rests: not null, Answered: true, NotTaken: false } ? "not asked" : "",
            row is { Line: null, Saved: not null } ? "saved" : "",
        ];
        var text = string.Join(", ", marks.Where(m => m.Length > 0));
        return text.Length == 0 ? "" : $" ({text})";
    }
}
