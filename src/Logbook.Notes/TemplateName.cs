namespace Logbook.Notes;

/// <summary>Which note a template draws, and in which format: both stand in its file's name.</summary>
public sealed record TemplateName(NoteKind Kind, NoteFormat Format)
{
    /// <summary>What a template's file may be called.</summary>
    public const string Accepted = "handover, long or week, then .text, .md or .html, then .scriban: handover.text.scriban";

    /// <summary><c>handover.text.scriban</c>.</summary>
    public string File => $"{Kind.ToString().ToLowerInvariant()}.{Word(Format)}.scriban";

    public static TemplateName Of(NoteKind kind, NoteFormat format) => new(kind, format);

    /// <summary>From a path's last part; null when it names no note.</summary>
    public static TemplateName? Of(string path) =>
        (from kind in Enum.GetValues<NoteKind>()
         from format in Enum.GetValues<NoteFormat>()
         let name = new TemplateName(kind, format)
         where name.File.Equals(Path.GetFileName(path), StringComparison.OrdinalIgnoreCase)
         select name).FirstOrDefault();

    private static string Word(NoteFormat format) => format switch
    {
        NoteFormat.Text => "text",
        NoteFormat.Markdown => "md",
        _ => "html",
    };
}
