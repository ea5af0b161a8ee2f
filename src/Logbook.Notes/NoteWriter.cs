using Logbook.Handover;
using Scriban.Runtime;

namespace Logbook.Notes;

public enum NoteFormat { Text, Markdown, Html }

/// <summary>The three notes: what is handed over, the long one of a shift, and the supervisor's week.</summary>
public enum NoteKind { Handover, Long, Week }

/// <summary>From a note's model to text, Markdown or HTML by a Scriban template.</summary>
public static class NoteWriter
{
    /// <summary>Renders with the site's own template when there is one and it is sound, else with the shipped one (and says so in the note).</summary>
    /// <param name="kind">Handover, or Long for a note with the sections of the long one.</param>
    /// <param name="templates">Folders that may hold <c>KIND.FORMAT.scriban</c>, first found wins; the last is the shipped one.</param>
    public static string Write(HandoverNote note, NoteKind kind, NoteFormat format, IReadOnlyList<string> templates) =>
        Write(TemplateName.Of(kind, format), fault => NoteModel.Of(note, format, fault), MustStand.Of(note), templates);

    /// <inheritdoc cref="Write(HandoverNote, NoteKind, NoteFormat, IReadOnlyList{string})"/>
    public static string Write(WeekNote note, NoteFormat format, IReadOnlyList<string> templates) =>
        Write(TemplateName.Of(NoteKind.Week, format), fault => NoteModel.Of(note, format, fault), MustStand.Of(note), templates);

    private static string Write(TemplateName name, Func<string, ScriptObject> model, MustStand must, IReadOnlyList<string> templates)
    {
        var shipped = Path.Combine(templates[^1], name.File);
        var chosen = templates.Select(folder => Path.Combine(folder, name.File)).FirstOrDefault(File.Exists) ?? shipped;

        var own = NoteTemplate.Render(chosen, chosen == shipped ? name : null, model(""), name.Format);
        if (own.Text is not null)
        {
            return must.Marked(own.Text, name.Format);
        }

        // A note must come out: without the site's template the shipped one speaks, and says whose place it takes.
        var fault = chosen == shipped ? "" : $"{own.Fault}; the shipped template was used";
        var safe = NoteTemplate.Render(shipped, name, model(fault), name.Format);
        return safe.Text ?? throw new InvalidOperationException($"the shipped template is not usable: {safe.Fault}");
    }
}
