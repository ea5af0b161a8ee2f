using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>The three levels in words and looks.</summary>
internal static class LevelWords
{
    public static string Of(Level level) => level switch { Level.Urgent => "urgent", Level.Watch => "watch", _ => "note" };

    public static Look LookOf(Level? level) => level switch
    {
        Level.Urgent => Look.Urgent,
        Level.Watch => Look.Watch,
        Level.Note => Look.Note,
        _ => Look.Plain,
    };

    /// <summary><c>1 urgent, 2 watch</c>; empty when there is neither.</summary>
    public static string Count(IEnumerable<Level> levels)
    {
        var known = levels.ToList();
        return string.Join(", ", new[] { Level.Urgent, Level.Watch }
            .Select(level => (level, count: known.Count(l => l == level)))
            .Where(x => x.count > 0)
            .Select(x => FormattableString.Invariant($"{x.count} {Of(x.level)}")));
    }
}
