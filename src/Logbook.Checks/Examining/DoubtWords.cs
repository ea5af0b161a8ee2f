using System.Globalization;
using Logbook.Plant;
using Role = Logbook.Checks.CrossExamination.Role;

namespace Logbook.Checks.Examining;

/// <summary>
/// What does not fit, in two or three plain sentences: what it is and by how much, which second reading would tell (what is to
/// be done must not be the end that a short line cuts off), what contradicts what and who agrees, and what else would explain it. No chances are told: they are not calibrated.
/// </summary>
internal static class DoubtWords
{
    /// <summary>Of many that could explain it so many are named.</summary>
    private const int Listed = 3;

    public static string Of(Doubt doubt) => string.Join(' ', new[] { What(doubt), Settles(doubt), Contradicts(doubt), Else(doubt), HangsOn(doubt) }.Where(s => s.Length > 0));

    public static IReadOnlyList<string> Evidence(Doubt doubt) =>
    [
        .. new[] { doubt.Against, doubt.Agreeing }.OfType<Contradiction>().Select(Row),
        .. doubt.Accused.Where(a => a.Subject.Role != Role.Method).Select(a => $"{a.Subject.Name} off by {Signed(a)} would explain it"),
    ];

    /// <param name="odd">Each with its value and what was expected.</param>
    /// <param name="moved">Readings that bear each other out, when they are all that is odd.</param>
    public static string Unusual(IReadOnlyList<(Subject Subject, double Value, double Expected)> odd, IReadOnlyList<Subject> moved)
    {
        var named = odd.Take(3).Select(o => $"{o.Subject.Words} {Words.Value(o.Subject.Point!, o.Value)}, about {Words.Value(o.Subject.Point!, o.Expected)} was expected").ToList();
        var more = odd.Count > named.Count ? $", and {odd.Count - named.Count} more," : "";
        var why = moved.Count == 0 ? "the plant changed, or misread" : $"{Words.And([.. moved.Select(m => m.Name)])} bear each other out, so the plant was moved";
        return $"{string.Join("; ", named)}{more}: changed much more than usual; {why}";
    }

    private static string What(Doubt doubt)
    {
        var one = doubt.Accused[0];
        if (doubt.Kind == Doubt.Group)
        {
            var told = doubt.Accused.Where(a => a.Subject.Role != Role.Method).Select(Told).ToList();
            return told.Count == 0 ? ""
                : doubt.Several ? $"More than one reading does not fit, and which cannot be told; {Words.Or([.. told.Take(Listed)])} could be among them."
                : doubt.Many ? $"Something does not fit, but which cannot be told: {Words.And([.. told.Take(Listed)])} could explain it, and {doubt.Accused.Count - Math.Min(Listed, told.Count)} more."
                : told.Count == 1 ? $"{FirstLetter.Large(told[0])} may {(OnlyFigures(doubt) ? "no longer hold" : "not fit")}."
                : $"One of these does not fit: {Words.Or(told)}.";
        }

        return one.Subject.Role == Role.Method
            ? $"The readings may all be right: {one.Subject.WhenOff ?? one.Subject.Words + " is off"}."
            : $"{FirstLetter.Large(Told(one))} does not fit: about {Size(one)} too {(one.Bias > 0 ? "high" : "low")}.";
    }

    private static string Contradicts(Doubt doubt)
    {
        if (doubt.Against is not { } against)
        {
            return "";
        }

        var row = against.Seen.Row;
        var agrees = doubt.Agreeing is { } agreeing ? $" {FirstLetter.Large(Way(agreeing, 0))} and {Way(agreeing, 1)} agree." : "";
        return row.IsBalance
            ? $"The balance '{row.Quantity}' is off by {Number(row, against.Seen.Reading.Difference)}, usually by {Number(row, against.Usual)}.{agrees}"
            : $"{FirstLetter.Large(Way(against, 1))} against {Way(against, 0)}: {MoreOrLess(row, against.Seen.Reading.Difference, unit: true)}, usually {MoreOrLess(row, against.Usual, unit: false)}.{agrees}";
    }

    /// <summary>What would explain it with every reading right.</summary>
    private static string Else(Doubt doubt)
    {
        var methods = (doubt.Kind == Doubt.Group ? doubt.Accused.Select(a => a.Subject) : doubt.Method is { } method ? [method] : []).Where(s => s.Role == Role.Method);
        return doubt.Many ? "" : string.Join(' ', methods.Take(2).Select(m => $"Or the readings are right: {m.WhenOff ?? m.Words + " is off"}."));
    }

    /// <summary>What else the entry says that comes of the same figure: one cause, one story.</summary>
    private static string HangsOn(Doubt doubt) =>
        doubt.Following.Count == 0 ? "" : $"Computed from it, and beyond {(doubt.Following.Count == 1 ? "its limit" : "their limits")}: {Words.And(doubt.Following)}.";

    private static string Settles(Doubt doubt) => doubt.Second switch
    {
        { Sample: { } sample, Unit.Dimension: "volume" } => $"A second titration of the {sample.Replace('-', ' ')} sample would tell.",
        { Sample: { } sample } => $"A second {sample.Replace('-', ' ')} sample would tell.",
        { } point => $"Reading {point.Tag} again would show a slip; the same figure again leaves the instrument{(doubt.Method is null ? "" : ", or the other cause")}.",
        _ => doubt.Kind != Doubt.Group ? "" : OnlyFigures(doubt) ? "No second reading tells that; the laboratory or the engineer can check it." : "A second reading of none of these is sure to tell.",
    };

    /// <summary>True when what was typed once, and no reading, is named: an operator cannot read that again.</summary>
    private static bool OnlyFigures(Doubt doubt) => doubt.Accused.All(a => a.Subject.Role != Role.Reading);

    private static string Told(Accused one) => one.Subject.Role == Role.Reading
        ? $"{one.Subject.Words}{(double.IsNaN(one.Value) ? "" : " " + Words.Value(one.Subject.Point!, one.Value))}"
        : $"{one.Subject.Words}{(one.Subject.Role == Role.Constant ? $", {Words.Number(one.Subject.Typed)} {one.Subject.Unit}" : "")}";

    private static string Size(Accused one) => one.Subject.Point is { } point
        ? Words.Difference(point, Math.Abs(one.Bias))
        : $"{Figures.Two(Math.Abs(one.Bias))} {one.Subject.Unit}";

    private static string Signed(Accused one) => (one.Bias > 0 ? "+" : "-") + Size(one);

    /// <summary>A way with what it gave: <c>CaO that reacted (WL-CAO) 57.9</c>.</summary>
    private static string Way(Contradiction row, int way)
    {
        var estimate = row.Seen.Row.Ways[way];
        var given = Units.CanConvert(estimate.Unit, row.Seen.Row.Unit) ? Units.Convert(row.Seen.Gives[way], estimate.Unit, row.Seen.Row.Unit) : row.Seen.Gives[way];
        return $"{estimate.Named} {Number(row.Seen.Row, given)}";
    }

    private static string MoreOrLess(Row row, double difference, bool unit) =>
        $"{Number(row, Math.Abs(difference))}{(unit ? " " + (row.Unit.Name == "%" ? "points" : row.Unit.Name) : "")} {(difference < 0 ? "less" : "more")}";

    private static string Row(Contradiction row) => string.Create(CultureInfo.InvariantCulture,
        $"{row.Seen.Row.Name}: {string.Join(" | ", row.Seen.Gives.Select(g => Number(row.Seen.Row, g)))} at {Words.Time(row.Examined.Frame.Sheet.At)}, difference {Number(row.Seen.Row, row.Seen.Reading.Difference)}, usual {Number(row.Seen.Row, row.Usual)}, {Math.Abs(row.Surprise):0.0} times its uncertainty");

    private static string Number(Row row, double value) => row.Ways[0].Point is { Decimals: var decimals } ? value.ToString("F" + Math.Max(1, decimals), CultureInfo.InvariantCulture) : Words.Number(value);
}
