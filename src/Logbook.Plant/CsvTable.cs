using System.Text;
using CsvHelper;

namespace Logbook.Plant;

/// <summary>One row of a CSV file: its fields by column, each with its place. An absent column is empty.</summary>
public sealed record CsvRow(string File, int Line, IReadOnlyDictionary<string, (string Text, int Column)> Fields)
{
    public string this[string column] => Fields.TryGetValue(column, out var field) ? field.Text : "";

    public Place PlaceOf(string column) => new(File, Line, Fields.TryGetValue(column, out var field) ? field.Column : 1);
}

/// <summary>The rows of a CSV text with a header in any order; lines that start with '#' are comments.</summary>
public sealed record CsvTable(IReadOnlyList<CsvRow> Rows)
{
    /// <summary>Reads the rows; those that are whole are given beside the mistakes of the others.</summary>
    /// <param name="columns">Every column that is known.</param>
    /// <param name="required">The columns that must be there.</param>
    public static Parsed<CsvTable> Read(string file, string text, IReadOnlyList<string> columns, IReadOnlyList<string> required)
    {
        var mistakes = new List<Mistake>();
        using var reader = Open(file, text.TrimStart('\uFEFF'), mistakes);
        if (!reader.Read())
        {
            return new(null, [new Mistake(new(file, 1, 1), "the file is empty", $"the first line names the columns: {string.Join(", ", columns)}")]);
        }

        var header = Header(reader, file, columns, required, mistakes);
        var rows = new List<CsvRow>();
        while (header.Count > 0 && reader.Read())
        {
            AddRow(reader, file, header, rows, mistakes);
        }

        return new(new CsvTable(rows), mistakes);
    }

    private static CsvReader Open(string file, string text, List<Mistake> mistakes) => CsvReader.FromText(text, new CsvReaderOptions
    {
        Separator = ',',
        HasHeader = false,
        CommentPrefix = '#',
        TrimWhitespace = true,
        TrackLineNumbers = true,
        AllowLineBreaksInQuotes = false,   // one forgotten quote must not swallow the rest of the file
        OnMalformedRecord = bad => mistakes.Add(new Mistake(
            new(file, (int)bad.LineNumber, 1), "a quotation mark does not match another", "a field with a comma stands in \"...\", a mark inside it is doubled")),
    });

    private static List<string> Header(CsvReader reader, string file, IReadOnlyList<string> columns, IReadOnlyList<string> required, List<Mistake> mistakes)
    {
        var header = new List<string>();
        var fields = Fields(reader);
        if (!fields.Exists(f => columns.Contains(f.Text, StringComparer.OrdinalIgnoreCase)))
        {
            mistakes.Add(NoHeader(new(file, (int)reader.LineNumber, 1), string.Join(',', fields.Select(f => f.Text)), columns));
            return [];
        }

        foreach (var (name, column) in fields)
        {
            var place = new Place(file, (int)reader.LineNumber, column);
            if (!columns.Contains(name, StringComparer.OrdinalIgnoreCase))
            {
                mistakes.Add(new Mistake(place, $"column '{name}' is unknown", Spelling.Accepted(name, columns)));
            }
            else if (header.Contains(name, StringComparer.OrdinalIgnoreCase))
            {
                mistakes.Add(new Mistake(place, $"column '{name}' comes twice"));
            }

            header.Add(name);
        }

        mistakes.AddRange(required.Except(header, StringComparer.OrdinalIgnoreCase)
            .Select(c => new Mistake(new(file, (int)reader.LineNumber, 1), $"column '{c}' is missing", "the first line names the columns, separated by commas")));
        return required.Except(header, StringComparer.OrdinalIgnoreCase).Any() ? [] : header;
    }

    private static Mistake NoHeader(Place place, string line, IReadOnlyList<string> columns) =>
        Array.Find([(Mark: ';', Name: "semicolons"), (Mark: '\t', Name: "tabs"), (Mark: '|', Name: "bars")], o => line.Contains(o.Mark, StringComparison.Ordinal)
            && line.Split(o.Mark).Any(name => columns.Contains(name.Trim(), StringComparer.OrdinalIgnoreCase))) is { Name: not null } other
            ? new Mistake(place, $"the columns are separated by {other.Name}", "commas between the columns; a value with a comma in it stands in \"...\"")
            : new Mistake(place, "the first line is not a header", $"the first line names the columns: {string.Join(", ", columns)}");

    private static void AddRow(CsvReader reader, string file, List<string> header, List<CsvRow> rows, List<Mistake> mistakes)
    {
        var line = (int)reader.LineNumber;
        var fields = Fields(reader);
        if (fields.Count != header.Count)
        {
            mistakes.Add(new Mistake(new(file, line, 1), $"the row has {fields.Count} fields, the first line names {header.Count} columns", "every row has a field for each column, empty or not"));
            return;
        }

        var named = new Dictionary<string, (string, int)>(StringComparer.OrdinalIgnoreCase);
        for (var i = 0; i < fields.Count; i++)
        {
            named[header[i]] = fields[i];
        }

        rows.Add(new CsvRow(file, line, named));
    }

    /// <summary>The fields of the current record, each with the column (from 1, in characters) at which it starts.</summary>
    private static List<(string Text, int Column)> Fields(CsvReader reader)
    {
        var fields = new List<(string, int)>();
        var column = 1;
        for (var i = 0; i < reader.FieldCount; i++)
        {
            fields.Add((reader.GetString(i), column));
            column += Encoding.UTF8.GetCharCount(reader.GetRawSpan(i)) + 1;
        }

        return fields;
    }
}
