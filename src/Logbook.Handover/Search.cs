using Logbook.Checks;

namespace Logbook.Handover;

/// <summary>Records whose line, writer or kind holds every word that is looked for, in order.</summary>
public static class Search
{
    public static IEnumerable<LogLine> Of(Desk desk, string text, DateTimeOffset from, DateTimeOffset to)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return LogLine.Of(desk, desk.Store.Between(from, to))
            .Where(line => Array.TrueForAll(words, word => Holds(desk, line, word)));
    }

    private static bool Holds(Desk desk, LogLine line, string word) =>
        new[] { line.Words, line.Kind, line.By, line.Shift, line.Area, Say.Person(desk.Site, line.By) }.Any(part => part.Contains(word, StringComparison.OrdinalIgnoreCase));
}
