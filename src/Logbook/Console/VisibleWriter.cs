using System.Text;
using Logbook.Handover;

namespace Logbook;

/// <summary>Everything the program says passes here: what could steer a terminal is made visible, whoever wrote it.</summary>
internal sealed class VisibleWriter(TextWriter inner) : TextWriter
{
    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value) => inner.Write(value is '\n' or '\r' ? value.ToString() : Say.Visible(value.ToString()));

    public override void Write(string? value)
    {
        var lines = (value ?? "").Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            inner.Write(i == 0 ? Say.Visible(lines[i]) : "\n" + Say.Visible(lines[i]));
        }
    }

    public override void WriteLine(string? value)
    {
        Write(value);
        inner.WriteLine();
    }

    public override void Flush() => inner.Flush();
}
