using Logbook.Checks.CrossExamination;
using Logbook.Journal;
using Role = Logbook.Checks.CrossExamination.Role;

namespace Logbook.Checks.Examining;

/// <summary>
/// From a verdict to a finding: one for each cause, told when a comparison speaks of it that is new with this entry. Where its
/// reading is taken again and still does not fit it is kept with that; told it is only to who read it again on purpose.
/// </summary>
internal static class DoubtFindings
{
    public const string Prefix = "examine.";
    public const string Unusual = Prefix + "unusual";
    public const string Moved = Prefix + "moved";

    /// <summary>A change that history alone finds odd is noted from so many usual surprises on.</summary>
    private const double Odd = 6;

    /// <param name="trail">The entry last, with those before it.</param>
    public static IEnumerable<Finding> Of(Trail trail)
    {
        var examined = trail.Last[^1];
        var verdict = examined.Result.Verdict;
        if (examined.Result.Gate.Open && verdict.All.Count > 0)
        {
            var doubt = Doubt.Of(trail);
            var finding = new Finding(doubt.Many ? Level.Note : Level.Watch, Prefix + doubt.Kind, doubt.Point?.Tag, DoubtWords.Of(doubt), DoubtWords.Evidence(doubt)) { Settles = doubt.Second?.Tag };
            var told = Told(trail, finding);
            var taken = examined.Frame.Sheet.Readings.Any(r => r.Value is not null && r.Point == finding.Point);
            return !doubt.IsNews || (told && !taken) ? [] : [finding with { Again = told && examined.Frame.Sheet.Routine ? true : null }];
        }

        return Strange(trail, examined) is { } odd ? [odd] : [];
    }

    /// <summary>As much was told of the point in one of the last entries, and none since compared a reading of it and found it sound.</summary>
    private static bool Told(Trail trail, Finding finding)
    {
        var place = finding.Point is { } tag ? trail.Line.PlaceOf(tag) : null;
        bool Tells(Examined e) => e.Frame.Sheet.Findings.Any(f => f.Point == finding.Point && Says(f) >= Says(finding));
        bool Compared(Examined e) => place is { } p && e.Compared(p, e.Frame.Sheet.At);
        return trail.Last.Take(trail.Last.Count - 1).Reverse().TakeWhile(e => Tells(e) || !Compared(e)).Any(Tells);
    }

    /// <summary>From nothing to one that is named.</summary>
    private static int Says(Finding finding) => finding.Code switch
    {
        Unusual or Moved => 0,
        Prefix + Doubt.Group => finding.Level == Level.Note ? 1 : 2,
        var code => code.StartsWith(Prefix, StringComparison.Ordinal) ? 3 : 0,
    };

    /// <summary>Most of what is odd came with this reading: where the one before had it already, it was told of then.</summary>
    private static bool Changed(Trail trail, Subject subject, double value, double odd)
    {
        var before = trail.Last.Take(trail.Last.Count - 1).Select(e => e.Frame.Round.Values[trail.Line.PlaceOf(subject.Name)!.Value]).LastOrDefault(double.IsFinite, double.NaN);
        return !(Math.Abs(value - before) < Math.Abs(odd) / 2);
    }

    /// <summary>What changed far more than it usually does, in one line; a point that was found to step already, or whose two readings are apart, is not told of again.</summary>
    private static Finding? Strange(Trail trail, Examined examined)
    {
        if (!trail.Fitted.UsesHistory)
        {
            return null;
        }

        var told = examined.Frame.Sheet.Findings.Where(f => f.Code.Split('.')[0] is StepCheck.Code or ReadTwice.Code or "range" or "slip").Select(f => f.Point).ToHashSet(StringComparer.Ordinal);
        var odd = Enumerable.Range(0, trail.Line.Readings)
            .Select(i => (Subject: trail.Line.Subjects[i], Value: examined.Frame.Round.Values[i], Surprise: examined.Glance.Surprises[trail.Line.Rows.Count + i], Scale: trail.Fitted.Scale[trail.Line.Rows.Count + i]))
            .Where(o => Math.Abs(o.Surprise) > Odd && !told.Contains(o.Subject.Name) && Changed(trail, o.Subject, o.Value, o.Surprise * o.Scale))
            .OrderByDescending(o => Math.Abs(o.Surprise)).ToList();
        var moved = Moves.Of(trail);
        var borneOut = odd.Count > 0 && odd.TrueForAll(o => moved.Contains(o.Subject));
        return odd.Count == 0 ? null : new Finding(Level.Note, borneOut ? Moved : Unusual, odd[0].Subject.Name,
            DoubtWords.Unusual([.. odd.Select(o => (o.Subject, o.Value, o.Value - (o.Surprise * o.Scale)))], borneOut ? moved : []), []);
    }
}
