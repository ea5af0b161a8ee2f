using Logbook.Checks.Signals;

namespace Logbook.Operators;

/// <summary>How often a month of one operator is flagged, by manner.</summary>
/// <param name="Same">Share of months with a walk the same as an earlier one.</param>
/// <param name="Quiet">Share of months with a shift that varies less.</param>
/// <param name="Either">Share of months with one or the other.</param>
/// <param name="Others">Share of the three honest colleagues' months beside it that were flagged.</param>
internal sealed record Measured(Manner Manner, int Months, double Same, double Quiet, double Either, double Others)
{
    public static Measured Of(Manner manner, int months, int seed)
    {
        int same = 0, quiet = 0, either = 0, others = 0;
        for (var m = 0; m < months; m++)
        {
            var month = new SimulatedMonth(manner, seed + (1000 * m) + (int)manner);
            var copied = SameAsEarlier.Find(month.Walks, SimulatedMonth.From).Select(s => s.Walk.Shift[^1]).ToHashSet();
            var calm = VariesLess.Find(month.Walks, month.Resolutions, SimulatedMonth.From).Select(s => s.Shift[^1]).ToHashSet();
            same += copied.Contains('A') ? 1 : 0;
            quiet += calm.Contains('A') ? 1 : 0;
            either += copied.Contains('A') || calm.Contains('A') ? 1 : 0;
            others += "BCD".Count(c => copied.Contains(c) || calm.Contains(c));
        }

        return new Measured(manner, months, (double)same / months, (double)quiet / months, (double)either / months, others / (3.0 * months));
    }

    /// <summary>
    /// Share of eight weeks in which two signals came in different shifts: of the crew that is looked at, and of each honest one.
    /// That is what is shown of one person, where a site's policy lets anything be shown.
    /// </summary>
    public static (double Looked, double Honest) Twice(Manner manner, int runs, int seed)
    {
        int looked = 0, honest = 0;
        for (var m = 0; m < runs; m++)
        {
            var weeks = new SimulatedMonth(manner, seed + (1000 * m) + (int)manner, days: 56);
            var shifts = SameAsEarlier.Find(weeks.Walks, SimulatedMonth.From).Select(s => s.Walk.Shift)
                .Concat(VariesLess.Find(weeks.Walks, weeks.Resolutions, SimulatedMonth.From).Select(s => s.Shift)).Distinct(StringComparer.Ordinal).ToLookup(s => s[^1]);
            looked += shifts['A'].Count() > 1 ? 1 : 0;
            honest += "BCD".Count(c => shifts[c].Count() > 1);
        }

        return ((double)looked / runs, honest / (3.0 * runs));
    }

    /// <summary>Of the flagged, the share that is of this manner, when one operator in a hundred is and all others are honest.</summary>
    public double Worth(double honest) => Either <= 0 ? 0 : 0.01 * Either / ((0.01 * Either) + (0.99 * honest));
}
