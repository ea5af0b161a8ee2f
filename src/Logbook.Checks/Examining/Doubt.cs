using Logbook.Checks.CrossExamination;
using Logbook.Plant;
using Role = Logbook.Checks.CrossExamination.Role;

namespace Logbook.Checks.Examining;

/// <summary>What does not fit, and all that words about it need.</summary>
/// <param name="Kind">named, pair or group.</param>
/// <param name="Accused">The most likely first.</param>
internal sealed record Doubt(string Kind, IReadOnlyList<Accused> Accused)
{
    public const string Group = "group";

    /// <summary>More than a person can look at: then it is worth knowing, and asks for nothing.</summary>
    private const int Few = 4;

    public bool Many => Accused.Count > Few;

    /// <summary>True when one error alone does not explain it.</summary>
    public bool Several { get; private init; }

    /// <summary>The method that no reading can tell from the named one.</summary>
    public Subject? Method { get; init; }

    /// <summary>What contradicts itself most, of the rows in which an accused one speaks; null when none was compared in the last entries.</summary>
    public Contradiction? Against { get; init; }

    /// <summary>True when the newest entry compared an accused one with something; of many, when the worst contradiction is its own.</summary>
    public bool IsNews { get; private init; }

    /// <summary>Another row about the same thing without an accused one, that fits.</summary>
    public Contradiction? Agreeing { get; init; }

    /// <summary>The reading that would settle it if taken again.</summary>
    public Subject? Settles { get; init; }

    /// <summary>The reading that tells most when it is taken again: of one that is named, itself.</summary>
    public Point? Second => (Kind != Group && Accused[0].Subject is { Role: Role.Reading } named ? named : Settles)?.Point;
    /// <summary>Tags beyond their limits in this entry that are computed from the one that is named.</summary>
    public IReadOnlyList<string> Following { get; init; } = [];

    /// <summary>Where it is shown: the reading that is most likely wrong, else the point in which the accused method's estimate lands.</summary>
    public Point? Point => Accused.Select(a => a.Subject.Point).FirstOrDefault(p => p is not null) ?? Against?.Seen.Row.Ways[^1].Point;

    public static Doubt Of(Trail trail)
    {
        var result = trail.Last[^1].Result;
        var verdict = result.Verdict;
        var places = verdict.All;
        var accused = places.Select(p => Accuse(trail, result.Suspects.First(s => s.Parameter == p))).ToList();
        var speaking = Contradictions(trail).ToList();
        bool Speaks(Contradiction c) => c.Seen.Reading.Sensitivities.Any(s => s.Slope != 0 && places.Contains(s.Parameter));
        var against = speaking.Where(Speaks).MaxBy(c => Math.Abs(c.Surprise));
        var doubt = new Doubt(verdict.Named is null ? Group : verdict.WithMethod is null ? "named" : "pair", accused);
        bool Newest(Contradiction? c) => ReferenceEquals(c?.Examined, trail.Last[^1]);
        return doubt with
        {
            Several = verdict.Several,
            IsNews = doubt.Many ? Newest(against) : speaking.Exists(c => Newest(c) && Speaks(c)),
            Method = verdict.WithMethod is { } method ? trail.Line.Subjects[method] : null,
            Against = against,
            Agreeing = against is null ? null : speaking.Where(c => !Speaks(c) && Math.Abs(c.Surprise) < Fits && SameKind(c, against)).MaxBy(c => c.Examined.Frame.Sheet.At),
            Following = verdict.Named is { } wrong ? Follow(trail, trail.Line.Subjects[wrong]) : [],
            Settles = Settling.Of(trail.Fitted.Line, result.Suspects) is { } place ? trail.Line.Subjects[place] : null,
        };
    }

    private static List<string> Follow(Trail trail, Subject wrong) => wrong.Role != Role.Reading ? [] :
    [
        .. trail.Last[^1].Frame.Sheet.Findings
            .Where(f => f.Code.StartsWith("limit.", StringComparison.Ordinal) && f.Point is { } tag && trail.Graph.Behind(tag).Contains(wrong.Name))
            .Select(f => f.Point!).Distinct(StringComparer.Ordinal),
    ];

    /// <summary>Two ways agree when they are no further apart than this many of their usual spread.</summary>
    private const double Fits = 2;

    private static Accused Accuse(Trail trail, Suspect suspect)
    {
        var value = suspect.Parameter >= trail.Line.Readings ? double.NaN : trail.Last.Reverse().Select(e => e.Frame.Round.Values[suspect.Parameter]).FirstOrDefault(double.IsFinite, double.NaN);
        return new Accused(trail.Line.Subjects[suspect.Parameter], value, suspect.Bias);
    }

    /// <summary>Every row of the last entries, the newest of each, as the newest entry was judged with it.</summary>
    private static IEnumerable<Contradiction> Contradictions(Trail trail)
    {
        var rows = trail.Line.Rows;
        var scale = trail.Fitted.Scale;
        for (var k = 0; k < rows.Count; k++)
        {
            foreach (var (examined, glance) in trail.Last.Zip(trail.Last[^1].Result.Glances).Reverse())
            {
                if (examined.Frame.Rows.FirstOrDefault(r => r.Row.Name == rows[k].Name) is { } seen && double.IsFinite(glance.Surprises[k]))
                {
                    var surprise = glance.Surprises[k];
                    yield return new Contradiction(examined, seen, surprise, seen.Reading.Difference - (surprise * scale[k]));
                    break;
                }
            }
        }
    }

    private static bool SameKind(Contradiction one, Contradiction other) =>
        one.Seen.Row.Quantity == other.Seen.Row.Quantity
        || (one.Seen.Row.Unit == other.Seen.Row.Unit && one.Seen.Row.Quantity.EndsWith(other.Seen.Row.Quantity, StringComparison.Ordinal))
        || (one.Seen.Row.Unit == other.Seen.Row.Unit && other.Seen.Row.Quantity.EndsWith(one.Seen.Row.Quantity, StringComparison.Ordinal));
}

/// <summary>One that may be wrong.</summary>
/// <param name="Value">Its newest reading; NaN for a constant or a method.</param>
/// <param name="Bias">How far it would be off, above zero for too high.</param>
internal sealed record Accused(Subject Subject, double Value, double Bias);

/// <summary>A row that was compared.</summary>
/// <param name="Surprise">How far from what was expected, in its own spread.</param>
/// <param name="Usual">The difference that was expected.</param>
internal sealed record Contradiction(Examined Examined, RowSeen Seen, double Surprise, double Usual);
