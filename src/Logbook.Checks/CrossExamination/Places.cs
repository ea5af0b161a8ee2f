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

    /// <summary>How far a hypothesis that began at an hour moves a place in this entry, for each unit of its size.</summary>
    public static double Effect(Line line, Round round, int place, Hypothesis hypothesis, double since)
    {
        var effect = 0.0;
        foreach (var (parameter, by) in hypothesis.Effects)
        {
            if (place >= line.Rows.Count)
            {
                effect += parameter == place - line.Rows.Count ? by : 0;
                continue;
            }

            foreach (var s in round.Rows[place]!.Sensitivities)
            {
                effect += s.Parameter == parameter && round.Hours - s.HoursBack >= since - 1e-6 ? s.Slope * by : 0;
            }
        }

        return effect;
    }
}
