using Logbook.Contracts;
using Logbook.Journal;

namespace Logbook.Checks;

/// <summary>What the calculations of an entry have to say beside their results.</summary>
internal static class CalculationFindings
{
    public const string Order = "calculation.order";

    /// <param name="older">See <see cref="OlderInputs"/>.</param>
    public static IEnumerable<Finding> Of(Attempt attempt, Func<LinkedCalculation, string> older) => attempt switch
    {
        { Outside: { } outside } => [OutOfRange(attempt.Calculation, outside.Input, outside.Value)],
        { Outcome: Refused } => [], // see NotPossible
        { Outcome: Failed failed } => [Failed(attempt.Calculation, failed)],
        { Values: { } values } => Notes(attempt.Calculation, values, older),
        _ => [],
    };

    /// <summary>One for each pair, with all that could not be computed for it.</summary>
    public static IEnumerable<Finding> OutOfOrder(IEnumerable<OutOfOrder> found) =>
        from one in found
        group one by (one.Reading, one.Before) into same
        let point = same.Key.Reading.Point
        select new Finding(Level.Watch, Order, point.Tag,
            $"{point.Description} {Words.Value(point, same.Key.Reading.Number!.Value)}, below {same.Key.Before.Point.Tag} {Words.Value(same.Key.Before.Point, same.Key.Before.Number!.Value)}: "
            + $"it counts on from there, so one of the two is wrong; not computed: {Words.And([.. same.Select(o => o.Calculation.Title)])}", []);

    /// <summary>One for each number that is refused, with all that could not be computed of it: a lost flow is one cause, not six.</summary>
    public static IEnumerable<Finding> NotPossible(IEnumerable<Attempt> attempts)
    {
        var refusals = attempts.Where(a => a is { Outside: null, Outcome: Refused }).Select(a => (a.Calculation, Refused: (Refused)a.Outcome!)).ToList();
        foreach (var same in refusals.GroupBy(r => r.Calculation.Inputs.FirstOrDefault(i => i.Info.Role.Equals(r.Refused.Role, StringComparison.Ordinal))?.Point?.Tag ?? r.Calculation.Name, StringComparer.Ordinal))
        {
            var point = same.First().Calculation.Inputs.FirstOrDefault(i => i.Point?.Tag == same.Key)?.Point;
            var sentences = same.Select(r => r.Refused.Sentence).Distinct(StringComparer.Ordinal).ToList();
            yield return new Finding(Level.Watch, "calculation.refused", point?.Tag,
                same.Count() == 1 ? $"{same.First().Calculation.Title} not computed: {sentences[0]}" : $"not computed with this {point!.Tag}: {Words.And([.. same.Select(r => r.Calculation.Name)])}",
                same.Count() == 1 ? [] : sentences);
        }
    }

    /// <summary>One note for each number that is missing, with all that could not be computed for it; one for all that was never given.</summary>
    public static IEnumerable<Finding> Missing(IEnumerable<MissingInput> missing) =>
    [
        .. from one in missing
           where !one.NotYet
           group one by (one.Point, one.Why) into same
           select new Finding(LevelOf(same), "calculation.missing", same.Key.Point,
               $"{same.Key.Why}; not computed: {Words.And([.. same.Select(m => m.Calculation.Title)])}", []),
        .. from one in missing
           where one.NotYet
           group one by one.Calculation.IsSafety into same
           select new Finding(LevelOf(same), "calculation.missing", null,
               $"not given yet: {Words.And([.. same.Select(m => m.Why).Distinct(StringComparer.Ordinal)])}; not computed: {Words.And([.. same.Select(m => same.Key ? m.Calculation.Title : m.Calculation.Name)])}", []),
    ];

    /// <summary>That a figure which guards people is missing must be seen.</summary>
    private static Level LevelOf(IEnumerable<MissingInput> missing) => missing.Any(m => m.Calculation.IsSafety) ? Level.Watch : Level.Note;

    /// <summary>One note for each piece of equipment that stands, with all that was not computed for it.</summary>
    public static IEnumerable<Finding> Resting(Day day, IEnumerable<RestingCalculation> resting) =>
        from same in resting.GroupBy(r => r.Equipment, StringComparer.OrdinalIgnoreCase)
        select new Finding(Level.Note, "calculation.resting", null,
            $"{day.Site.FindEquipment(same.Key)?.Name ?? same.Key} is {day.State.StateOf(same.Key)}; not computed: {Words.And([.. same.Select(r => r.Calculation.Title)])}", []);

    private static Finding OutOfRange(LinkedCalculation calculation, LinkedInput input, double value) => new(
        Level.Watch, "calculation.range", input.Point?.Tag,
        $"{calculation.Title} not computed: {input.Info.Role} {Words.Number(value)}{Words.Behind(input.Unit.Name)} is outside the {Words.Number(input.Info.Lowest)} to {Words.Number(input.Info.Highest)} that it covers", []);

    private static Finding Failed(LinkedCalculation calculation, Failed failed) => new(
        Level.Note, "plugin.failed", null, $"plug-in {calculation.Loaded.PlugIn} failed in {calculation.Title}: {failed.Sentence}", []);

    /// <summary>What there is to say of an earlier hour was said in that hour: told again with each entry it would look new.</summary>
    private static IEnumerable<Finding> Notes(LinkedCalculation calculation, Values values, Func<LinkedCalculation, string> older)
    {
        if (calculation.LooksBack)
        {
            return [];
        }

        var point = calculation.Outputs.FirstOrDefault(o => o.Point is not null)?.Point?.Tag;
        return values.Notes.Select(note => new Finding(Level.Note, $"calc.{calculation.Info.Id}.note", point, note + older(calculation), values.Steps));
    }
}
