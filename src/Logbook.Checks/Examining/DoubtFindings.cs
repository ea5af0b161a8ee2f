using Logbook.Checks.CrossExamination;
using Logbook.Journal;
using Role = Logbook.Checks.CrossExamination.Role;

namespace Logbook.Checks.Examining;

/// <summary>From a verdict to a finding: one for each cause, said when it is new, and again only where its reading is taken again and still does not fit.</summary>
internal static class DoubtFindings
{
    public const string Prefix = "examine.";
    public const string Unusual = Prefix + "unusual";

    /// <summary>A change that history alone finds odd is noted from so many usual surprises on.</summary>
    private const double Odd = 6;

    /// <param name="trail">The entry last, with those before it.</param>
    public static IEnumerable<Finding> Of(Trail trail)
    {
        var examined = trail.Last[^1];
        var verdict = examined.Result!.Verdict;
        if (examined.Result.Gate.Open && (verdict.Named is not null || verdict.Group.Count > 0))
        {
            var doubt = Doubt.Of(trail);
            return Said(trail, doubt) ? [] : [new Finding(doubt.Many ? Level.Note : Level.Watch, Prefix + doubt.Kind, doubt.Point?.Tag, DoubtWords.Of(doubt), DoubtWords.Evidence(doubt)) { Settles = doubt.Second?.Tag }];
        }

        return Strange(trail, examined) is { } odd ? [odd] : [];
    }

    /// <summary>The same was said in one of the last entries, and its reading has not been taken anew since.</summary>
    private static bool Said(Trail trail, Doubt doubt) =>
        !trail.Last[^1].Frame.Sheet.Readings.Any(r => r.Value is not null && r.Point == doubt.Point?.Tag)
        && trail.Last.Take(trail.Last.Count - 1).Any(e => e.Frame.Sheet.Findings.Any(f =>
            f.Code.StartsWith(Prefix, StringComparison.Ordinal) && f.Code != Unusual && f.Point == doubt.Point?.Tag));

    /// <summary>What changed far more than it usually does, in one line; a point that was found to step already is not told twice.</summary>
    private static Finding? Strange(Trail trail, Examined examined)
    {
        if (!trail.Fitted.UsesHistory)
        {
            return null;
        }

        var told = examined.Frame.Sheet.Findings.Where(f => f.Code.Split('.')[0] is "step" or "range" or "slip").Select(f => f.Point).ToHashSet(StringComparer.Ordinal);
        var odd = Enumerable.Range(0, trail.Line.Readings)
            .Select(i => (Subject: trail.Line.Subjects[i], Value: examined.Frame.Round.Values[i], Surprise: examined.Glance.Surprises[trail.Line.Rows.Count + i], Scale: trail.Fitted.Scale[trail.Line.Rows.Count + i]))
            .Where(o => Math.Abs(o.Surprise) > Odd && !told.Contains(o.Subject.Name))
            .OrderByDescending(o => Math.Abs(o.Surprise)).ToList();
        return odd.Count == 0 ? null : new Finding(Level.Note, Unusual, odd[0].Subject.Name,
            DoubtWords.Unusual([.. odd.Select(o => (o.Subject, o.Value, o.Value - (o.Surprise * o.Scale)))]), []);
    }
}
