namespace Logbook.Plant.Reading;

/// <summary>points.csv: the rows to points.</summary>
internal static class PointsFile
{
    private static readonly string[] Columns =
    [
        "tag", "description", "area", "unit", "kind", "decimals", "resolution", "u", "lowest", "highest",
        "urgent_low", "watch_low", "watch_high", "urgent_high", "step", "stale", "equipment", "sample", "estimates", "choices", "always",
    ];

    public static IReadOnlyList<Point> Read(string text, IReadOnlyCollection<string>? equipment, KnownPoints known, List<Mistake> mistakes)
    {
        var table = CsvTable.Read(SiteFiles.PointsCsv, text, Columns, ["tag", "description", "area", "unit", "kind"]);
        mistakes.AddRange(table.Mistakes);
        var points = new List<Point>();
        foreach (var row in table.Value?.Rows ?? [])
        {
            var before = mistakes.Count;
            var point = new PointRow(row, equipment, mistakes).Read(known);
            if (mistakes.Count == before)
            {
                points.Add(point);
            }
        }

        return points;
    }
}
