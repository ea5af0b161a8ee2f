namespace Logbook.Screens;

/// <summary>Where computed numbers stand: under the last of the readings that they need, as soon as all of them are there. What hangs mostly on other rounds is left to those.</summary>
internal static class RoundResults
{
    /// <summary>Row to the results under it.</summary>
    public static ILookup<int, ResultRow> ByRow(RoundPage page) => page.Results.Values
        .OrderBy(r => r.Point.Tag, StringComparer.Ordinal)
        .ToLookup(r => Place(page, r));

    private static int Place(RoundPage page, ResultRow result)
    {
        var rows = page.RowsOf(result.Point.Tag);
        return page.Links.IsMostly(result.Point.Tag, rows.Count) && rows.All(i => page.Rows[i].Answered) ? rows[^1] : -1;
    }
}
