using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Logbook.Plant.Reading;

/// <summary>A value of a TOML file and where it stands: text, long, double, bool, date, a list of values, or a table.</summary>
internal sealed record TomlValue(object Value, Place Place);

/// <summary>A table of a TOML file: its keys in order, each with its own place and its value.</summary>
internal sealed class TomlTable(Place place)
{
    public Place Place => place;

    public Dictionary<string, (Place Key, TomlValue Value)> Items { get; } = new(StringComparer.Ordinal);
}

/// <summary>From text to tables. Dotted keys and [headers] become tables inside tables, [[headers]] lists of tables.</summary>
internal sealed class TomlFile
{
    private readonly string _file;

    private TomlFile(string file) => _file = file;

    /// <summary>The root table; null, and the mistakes, when the text is no TOML.</summary>
    public static TomlTable? Parse(string file, string text, List<Mistake> mistakes)
    {
        DocumentSyntax document;
        try
        {
            document = SyntaxParser.Parse(text.TrimStart('\uFEFF'), file, validate: true);
        }
        catch (TomlException tooDeep)
        {
            mistakes.Add(new Mistake(new(file, 1, 1), tooDeep.Message.ReplaceLineEndings(" "), "the file is TOML: key = value, text in \"...\""));
            return null;
        }

        var reader = new TomlFile(file);
        mistakes.AddRange(document.Diagnostics
            .DistinctBy(d => d.Span.Start.Line)
            .Select(d => new Mistake(reader.At(d.Span), d.Message, "the file is TOML: key = value, text in \"...\"")));
        return document.HasErrors ? null : reader.Root(document);
    }

    private TomlTable Root(DocumentSyntax document)
    {
        var root = new TomlTable(new Place(_file, 1, 1));
        AddAll(root, document.KeyValues);
        foreach (var header in document.Tables)
        {
            var table = header.Kind == SyntaxKind.TableArray ? NextOfList(root, header) : Inside(root, Keys(header.Name!));
            AddAll(table, header.Items);
        }

        return root;
    }

    private TomlTable NextOfList(TomlTable root, TableSyntaxBase header)
    {
        var keys = Keys(header.Name!);
        var parent = Inside(root, keys[..^1]);
        var (name, place) = keys[^1];
        if (!parent.Items.TryGetValue(name, out var item) || item.Value.Value is not List<TomlValue> list)
        {
            list = [];
            parent.Items[name] = (place, new TomlValue(list, place));
        }

        var table = new TomlTable(At(header.Span));
        list.Add(new TomlValue(table, table.Place));
        return table;
    }

    /// <summary>The table that the keys lead to, made on the way; through a list to its last table.</summary>
    private static TomlTable Inside(TomlTable table, IEnumerable<(string Name, Place Place)> keys)
    {
        foreach (var (name, place) in keys)
        {
            if (!table.Items.TryGetValue(name, out var item))
            {
                item = (place, new TomlValue(new TomlTable(place), place));
                table.Items[name] = item;
            }

            table = item.Value.Value switch
            {
                TomlTable inner => inner,
                List<TomlValue> list when list.Count > 0 && list[^1].Value is TomlTable last => last,
                _ => table,
            };
        }

        return table;
    }

    private void AddAll(TomlTable table, IEnumerable<KeyValueSyntax> pairs)
    {
        foreach (var pair in pairs)
        {
            var keys = Keys(pair.Key!);
            Inside(table, keys[..^1]).Items[keys[^1].Name] = (At(pair.Key!.Span), Value(pair.Value!));
        }
    }

    private TomlValue Value(ValueSyntax syntax) => new(
        syntax switch
        {
            StringValueSyntax text => text.Value ?? "",
            IntegerValueSyntax number => number.Value,
            FloatValueSyntax number => number.Value,
            BooleanValueSyntax flag => flag.Value,
            DateTimeValueSyntax { Kind: SyntaxKind.LocalDate } date => DateOnly.FromDateTime(date.Value.DateTime.Date),
            ArraySyntax array => array.Items.Select(i => Value(i.Value!)).ToList(),
            InlineTableSyntax inline => Inline(inline),
            _ => syntax,   // a time of day and the like: of no type that any key takes
        },
        At(syntax.Span));

    private TomlTable Inline(InlineTableSyntax inline)
    {
        var table = new TomlTable(At(inline.Span));
        AddAll(table, inline.Items.Select(i => i.KeyValue!));
        return table;
    }

    private List<(string Name, Place Place)> Keys(KeySyntax key) =>
        [(Name(key.Key!), At(key.Span)), .. key.DotKeys.Select(d => (Name(d.Key!), At(d.Key!.Span)))];

    private static string Name(BareKeyOrStringValueSyntax key) => key switch
    {
        BareKeySyntax bare => bare.Key?.Text ?? "",
        StringValueSyntax quoted => quoted.Value ?? "",
        _ => key.ToString().Trim(),
    };

    private Place At(SourceSpan span) => new(_file, span.Start.Line + 1, span.Start.Column + 1);
}
