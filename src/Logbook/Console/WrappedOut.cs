using System.Text;

namespace Logbook;

/// <summary>
/// A terminal's output: a line longer than the terminal is wide goes on in the next one, at a space, below where its text
/// begins. What is redirected never comes here, and JSON is left as it is.
/// </summary>
internal sealed class WrappedOut(TextWriter terminal, Func<int> width) : TextWriter
{
    // On less than this an indent would leave no room for words.
    private const int Least = 40;

    private readonly StringBuilder _line = new();

    public override Encoding Encoding => terminal.Encoding;

    public override void Write(char value)
    {
        if (value == '\n')
        {
            foreach (var row in Rows(_line.ToString().TrimEnd('\r'), width()))
            {
                terminal.WriteLine(row);
            }

            _line.Clear();
            return;
        }

        _line.Append(value);
    }

    /// <summary>What waits for its end is a question: it is shown as it is.</summary>
    public override void Flush()
    {
        terminal.Write(_line);
        _line.Clear();
        terminal.Flush();
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            Flush();
        }

        base.Dispose(disposing);
    }

    /// <summary>The line in rows of at most that width. A word that is longer stays whole.</summary>
    internal static IEnumerable<string> Rows(string line, int width)
    {
        if (line.Length <= width || width < Least || line.TrimStart() is ['{' or '[', ..])
        {
            yield return line;
            yield break;
        }

        var indent = Indent(line, width);
        var (rest, hanging) = (line, "");
        while (hanging.Length + rest.Length > width)
        {
            var room = width - hanging.Length;
            // In the first row not before the text begins: the label stays beside it.
            var from = hanging.Length == 0 ? Math.Min(indent, rest.Length - 1) : 0;
            var cut = rest.LastIndexOf(' ', room, room - from + 1) is > 0 and var at && rest[..at].Trim().Length > 0 ? at : rest.IndexOf(' ', Math.Min(room, rest.Length - 1));
            if (cut < 0)
            {
                break;
            }

            yield return hanging + rest[..cut].TrimEnd();
            (rest, hanging) = (rest[cut..].TrimStart(), new string(' ', indent));
        }

        if (rest.Length > 0)
        {
            yield return hanging + rest;
        }
    }

    /// <summary>Where the text begins: behind the first gap of two spaces, as behind a label, else two further than the line.</summary>
    private static int Indent(string line, int width)
    {
        var begins = line.Length - line.TrimStart().Length;
        var gap = line.IndexOf("  ", begins, StringComparison.Ordinal);
        var text = gap < 0 ? -1 : gap + line[gap..].Length - line[gap..].TrimStart().Length;
        return text > 0 && text <= Math.Min(24, width / 3) ? text : Math.Min(begins + 2, width / 3);
    }
}
