using Logbook.Handover;
using System.Globalization;
using System.Text.Json.Nodes;

namespace Logbook;

/// <summary>One column of a listing: its JSON key, and the value in a row.</summary>
/// <param name="InText">False for what only machines want.</param>
/// <param name="WhenAny">True for what stands in text only where some row has it.</param>
internal sealed record Column<T>(string Key, Func<T, object?> Value, bool InText = true, bool WhenAny = false);

/// <summary>A listing, as aligned text or as an array of flat objects under the command's name. One definition serves both, and the help.</summary>
internal sealed record Rows<T>(string Name, params Column<T>[] Columns)
{
    /// <summary>For the command's help: the keys of its JSON.</summary>
    public string Keys => $"With --json, \"{Name}\": an array of objects with {string.Join(", ", Columns.Select(c => c.Key))}.";

    public int Print(Shell shell, bool json, IEnumerable<T> items, string whenEmpty)
    {
        var rows = items.ToList();
        if (json)
        {
            shell.Out.WriteLine(Json.Text(new JsonObject { [Name] = new JsonArray([.. rows.Select(Row)]) }));
        }
        else if (rows.Count == 0)
        {
            shell.Out.WriteLine(whenEmpty);
        }
        else
        {
            Text(shell.Out, rows);
        }

        return ExitCode.Done;
    }

    private JsonNode Row(T item)
    {
        var row = new JsonObject();
        foreach (var column in Columns)
        {
            row.AddIfPresent(column.Key, column.Value(item));
        }

        return row;
    }

    private void Text(TextWriter output, List<T> rows)
    {
        var shown = Columns.Where(c => c.InText && (!c.WhenAny || rows.Exists(r => c.Value(r) is not null))).ToArray();
        var cells = rows.ConvertAll(r => shown.Select(c => Cell(c.Value(r))).ToArray());
        var widths = shown.Select((c, i) => Math.Max(c.Key.Length, cells.Max(r => r[i].Length))).ToArray();
        foreach (var line in cells.Prepend(shown.Select(c => c.Key.Replace('_', ' ')).ToArray()))
        {
            output.WriteLine(string.Join("  ", line.Select((cell, i) => cell.PadRight(widths[i]))).TrimEnd());
        }
    }

    private static string Cell(object? value) => value switch
    {
        null => "",
        DateTimeOffset t => t.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
        double d => d.ToString("0.######", CultureInfo.InvariantCulture),
        bool b => b ? "yes" : "no",
        IReadOnlyList<string> many => Say.Visible(string.Join(", ", many)),
        _ => Say.Visible(Convert.ToString(value, CultureInfo.InvariantCulture) ?? ""),
    };
}
