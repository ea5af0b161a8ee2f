namespace Logbook.Notes;

/// <summary>What a template makes of an example that holds something of everything.</summary>
/// <param name="Text">The note, what the template leaves out above it; null when it cannot be rendered.</param>
/// <param name="Fault">One line with file, line and column when it cannot; else null.</param>
/// <param name="LeftOut">What must stand on such a note and does not.</param>
public sealed record TemplateTrial(string? Text, string? Fault, IReadOnlyList<string> LeftOut)
{
    public static TemplateTrial Of(string path, TemplateName name)
    {
        var (model, must) = name.Kind == NoteKind.Week
            ? (NoteModel.Of(ExampleNote.Week, name.Format, ""), MustStand.Of(ExampleNote.Week))
            : (NoteModel.Of(ExampleNote.Shift, name.Format, ""), MustStand.Of(ExampleNote.Shift));
        var (text, fault) = NoteTemplate.Render(path, shipped: null, model, name.Format);
        return text is null ? new TemplateTrial(null, fault, []) : new TemplateTrial(must.Marked(text, name.Format), null, must.MissingIn(text, name.Format));
    }
}
