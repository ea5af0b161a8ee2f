using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Where computed numbers stand: under the last of the readings that they need, as soon as all of them are there. What hangs mostly on other rounds is left to those.</summary>
internal static class RoundResults
{
    private const int Few = 6;

    /// <summary>Row to the results under it.</summary>
    public static ILookup<int, ResultRow> ByRow(RoundPage page) => page.Results.Values
        .Where(r => Matters(page, r))
        .OrderBy(r => r.Point.Tag, StringComparer.Ordinal)
        .ToLookup(r => Place(page, r));

    /// <summary>Of many results those are shown that limits judge or that say something; the rest stands in the record.</summary>
    private static bool Matters(RoundPage page, ResultRow result) =>
        page.Results.Count <= Few || result.Worst is not null || result.Point.Limits != Limits.None;

    private static int Place(RoundPage page, ResultRow result)
    {
        var rows = page.RowsOf(result.Point.Tag);
        return page.Mostly.Contains(result.Point.Tag) && rows.All(i => page.Rows[i].Answered) ? rows[^1] : -1;
    }
}
