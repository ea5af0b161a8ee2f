using Logbook.Handover;

namespace Logbook.Notes;

public enum NoteFormat { Text, Markdown, Html }

/// <summary>From the note's model to text, Markdown or HTML by a Scriban template.</summary>
public static class NoteWriter
{
    /// <summary>Renders with the site's own template when there is one and it is sound, else with the shipped one (and says so in the note).</summary>
    /// <param name="templates">Folders that may hold <c>handover.FORMAT.scriban</c>, first found wins; the last is the shipped one.</param>
    public static string Write(HandoverNote note, NoteFormat format, IReadOnlyList<string> templates) => throw new NotImplementedException();
}
