namespace Logbook.Screens;

/// <summary>Where computed numbers stand: under the last of the readings that they need, as soon as all of them are there.</summary>
internal static class RoundResults
{
    public static IEnumerable<ResultRow> Under(RoundPage page, int row) => page.Results.Values
        .Where(r => Place(page, r) == row)
        .OrderBy(r => r.Point.Tag, StringComparer.Ordinal);

    private static int Place(RoundPage page, ResultRow result)
    {
        var rows = Enumerable.Range(0, page.Rows.Count).Where(i => page.Links.Makes(page.Rows[i].Point.Tag, result.Point.Tag)).ToList();
        return rows.Count > 0 && rows.TrueForAll(i => page.Rows[i].Answered) ? rows[^1] : -1;
    }
}
