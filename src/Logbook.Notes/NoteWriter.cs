using Logbook.Handover;

namespace Logbook.Notes;

public enum NoteFormat { Text, Markdown, Html }

/// <summary>From the note's model to text, Markdown or HTML by a Scriban template.</summary>
public static class NoteWriter
{
    /// <summary>Renders with the site's own template when there is one and it is sound, else with the shipped one (and says so in the note).</summary>
    /// <param name="templates">Folders that may hold <c>handover.FORMAT.scriban</c>, first found wins; the last is the shipped one.</param>
    public static string Write(HandoverNote note, NoteFormat format, IReadOnlyList<string> templates)
    {
        var name = $"handover.{Extension(format)}.scriban";
        var shipped = Path.Combine(templates[^1], name);
        var chosen = templates.Select(folder => Path.Combine(folder, name)).FirstOrDefault(File.Exists) ?? shipped;

        var own = NoteTemplate.Render(chosen, NoteModel.Of(note, format, fault: ""), format);
        if (own.Text is not null)
        {
            return own.Text;
        }

        // A note must come out: without the site's template the shipped one speaks, and says whose place it takes.
        var fault = chosen == shipped ? "" : $"{own.Fault}; the shipped template was used";
        var safe = NoteTemplate.Render(shipped, NoteModel.Of(note, format, fault), format);
        return safe.Text ?? throw new InvalidOperationException($"the shipped template is not usable: {safe.Fault}");
    }

    private static string Extension(NoteFormat format) => format switch
    {
        NoteFormat.Text => "text",
        NoteFormat.Markdown => "md",
        _ => "html",
    };
}
