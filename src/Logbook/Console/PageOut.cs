using Logbook.Handover;

namespace Logbook;

/// <summary>A page of the handover as text.</summary>
internal static class PageOut
{
    public static void Print(TextWriter output, HandoverPage page)
    {
        output.WriteLine($"{page.Name.ToUpperInvariant()}: {page.Title}");
        foreach (var section in page.Sections)
        {
            output.WriteLine(section.Beside.Length == 0 ? section.Title : $"{section.Title}  {section.Beside}");
            foreach (var line in section.Lines)
            {
                output.WriteLine($" {line.Label,-11} {line.Text}");
            }
        }
    }
}
