namespace Logbook.Screens;

/// <summary>Where computed numbers stand: under the last of the readings that they need, as soon as all of them are there. What hangs mostly on other rounds is left to those.</summary>
internal static class RoundResults
{
    public static IEnumerable<ResultRow> Under(RoundPage page, int row) => page.Results.Values
        .Where(r => Place(page, r) == row)
        .OrderBy(r => r.Point.Tag, StringComparer.Ordinal);

    private static int Place(RoundPage page, ResultRow result)
    {
        var rows = page.RowsOf(result.Point.Tag);
        return page.Links.IsMostly(result.Point.Tag, rows.Count) && rows.All(i => page.Rows[i].Answered) ? rows[^1] : -1;
    }
}
