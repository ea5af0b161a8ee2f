namespace Logbook.Checks.CrossExamination;

/// <summary>The places of one vector: rows first, then readings.</summary>
internal static class Places
{
    /// <summary>What an entry has at a place; NaN when nothing.</summary>
    public static double Value(Line line, Round round, int place) =>
        place < line.Rows.Count ? round.Rows[place]?.Difference ?? double.NaN : round.Values[place - line.Rows.Count];

    /// <summary>The rows that have a finite number in an entry, and so have something to say.</summary>
    public static int[] Rows(Line line, Round round) => Speaking(line, round, 0, line.Rows.Count);

    /// <summary>The readings that have one.</summary>
    public static int[] Readings(Line line, Round round) => Speaking(line, round, line.Rows.Count, line.Readings);

    private static int[] Speaking(Line line, Round round, int first, int count) =>
        [.. Enumerable.Range(first, count).Where(p => double.IsFinite(Value(line, round, p)))];
}
