namespace Logbook.Checks.CrossExamination;

/// <summary>The places of one vector: rows first, then readings.</summary>
internal static class Places
{
    /// <summary>What an entry has at a place; NaN when nothing.</summary>
    public static double Value(Line line, Round round, int place) =>
        place < line.Rows.Count ? round.Rows[place]?.Difference ?? double.NaN : round.Values[place - line.Rows.Count];

    /// <summary>The places at which an entry has a finite number, and so has something to say.</summary>
    public static int[] Speaking(Line line, Round round, bool readingsToo) =>
        [.. Enumerable.Range(0, readingsToo ? line.Width : line.Rows.Count).Where(p => double.IsFinite(Value(line, round, p)))];
}
