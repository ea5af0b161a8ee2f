using Logbook.Handover;

namespace Logbook;

/// <summary>A page of the handover as text.</summary>
internal static class PageOut
{
    public static void Print(TextWriter output, HandoverPage page)
    {
        output.WriteLine($"{page.Name.ToUpperInvariant()}: {page.Title}");
        Sections(output, page.Sections);
    }

    public static void Sections(TextWriter output, IReadOnlyList<NoteSection> sections)
    {
        foreach (var section in sections)
        {
            output.WriteLine(section.Beside.Length == 0 ? section.Title : $"{section.Title}  {section.Beside}");
            Lines(output, section.Lines);
        }
    }

    public static void Lines(TextWriter output, IReadOnlyList<NoteLine> lines)
    {
        foreach (var line in lines)
        {
            output.WriteLine($" {line.Label,-11} {line.Text}");
        }
    }
}
