using System.Globalization;

namespace Logbook.Plant.Reading;

/// <summary>
/// A table as its reader asks for it: every question notes the key as known, a wrong type becomes a mistake, and
/// <see cref="RefuseOthers"/> refuses what nobody asked for.
/// </summary>
/// <param name="table">What is read.</param>
/// <param name="title">How the table is called in messages: <c>[[round]]</c>.</param>
/// <param name="mistakes">Where mistakes go.</param>
internal sealed class Fields(TomlTable table, string title, List<Mistake> mistakes)
{
    private readonly List<string> _known = [];

    public Place Place => table.Place;

    public string Title => title;

    /// <summary>Where the key's value stands, or the table when it is absent.</summary>
    public Place PlaceOf(string key) => table.Items.TryGetValue(key, out var item) ? item.Value.Place : table.Place;

    public void Wrong(string key, string wrong, string accepted = "") => mistakes.Add(new Mistake(PlaceOf(key), wrong, accepted));

    public bool Has(string key)
    {
        Know(key);
        return table.Items.ContainsKey(key);
    }

    /// <summary>Text that must be there and not be empty; "" and a mistake when it is not.</summary>
    public string Text(string key)
    {
        var text = OptionalText(key);
        if (!table.Items.ContainsKey(key))
        {
            Wrong(key, $"{title} has no {key}", $"{key} = \"...\" is needed");
        }
        else if (text is not null && text.Trim().Length == 0)
        {
            Wrong(key, $"{key} is empty", "text is needed");
        }

        return text ?? "";
    }

    public string? OptionalText(string key) => Get<string>(key, "text in \"...\"");

    /// <summary>Letters, digits and '-': what names a thing.</summary>
    public string Code(string key)
    {
        var code = Text(key);
        if (code.Length > 0 && !code.All(c => char.IsAsciiLetterOrDigit(c) || c == '-'))
        {
            Wrong(key, $"{key} '{code}' has other signs", "letters, digits and '-'");
        }

        return code;
    }

    public string? OneOf(string key, IReadOnlyCollection<string> accepted, bool required = true)
    {
        var text = required ? Text(key) : OptionalText(key);
        if (string.IsNullOrEmpty(text) || accepted.Contains(text, StringComparer.Ordinal))
        {
            return string.IsNullOrEmpty(text) ? null : text;
        }

        Wrong(key, $"{key} '{text}' is unknown", Spelling.Accepted(text, accepted));
        return null;
    }

    /// <summary>A number, or a number written as text (which may then have a unit of its own kind of reader).</summary>
    public double? Number(string key)
    {
        Know(key);
        return !table.Items.TryGetValue(key, out var item) ? null : item.Value.Value switch
        {
            long whole => whole,
            double number when double.IsFinite(number) => number,
            string text => Keep(Typed.Number(text, item.Value.Place, out var mistake), mistake),
            _ => WrongType<double?>(key, "a number"),
        };
    }

    public TimeSpan? Duration(string key)
    {
        var text = OptionalText(key);
        return text is null ? null : Keep(Typed.Duration(text, PlaceOf(key), out var mistake), mistake);
    }

    public DateOnly? Date(string key)
    {
        var date = GetValue<DateOnly>(key, "a date as in 2026-01-31, without marks");
        if (date is { Year: < 1970 or > 2199 })
        {
            Wrong(key, $"{key} is out of range", "1970 to 2199");
            return null;
        }

        return date;
    }

    public int? Whole(string key, int least, int most)
    {
        var whole = GetValue<long>(key, "a whole number");
        if (whole < least || whole > most)
        {
            Wrong(key, $"{key} is out of range", $"{least.ToString(CultureInfo.InvariantCulture)} to {most.ToString(CultureInfo.InvariantCulture)}");
            return null;
        }

        return (int?)whole;
    }

    /// <summary>The texts of a list, each with its place.</summary>
    public IReadOnlyList<(string Text, Place Place)> Texts(string key)
    {
        var list = Get<List<TomlValue>>(key, "a list of texts: [\"...\", \"...\"]") ?? [];
        foreach (var other in list.Where(v => v.Value is not string))
        {
            mistakes.Add(new Mistake(other.Place, $"{key} holds something that is no text", "text in \"...\""));
        }

        return [.. list.Where(v => v.Value is string).Select(v => ((string)v.Value, v.Place))];
    }

    /// <summary>The table under the key, or null.</summary>
    public Fields? Table(string key) =>
        Get<TomlTable>(key, $"a table: [{key}]") is { } inner ? new Fields(inner, $"[{key}]", mistakes) : null;

    /// <summary>Every table of a list: <c>[[key]]</c>.</summary>
    public IEnumerable<Fields> Tables(string key)
    {
        foreach (var one in Get<List<TomlValue>>(key, $"a list of tables: [[{key}]]") ?? [])
        {
            if (one.Value is TomlTable inner)
            {
                yield return new Fields(inner, $"[[{key}]]", mistakes);
            }
            else
            {
                mistakes.Add(new Mistake(one.Place, $"{key} holds something that is no table", $"[[{key}]]"));
            }
        }
    }

    /// <summary>Every key of this table, for tables whose keys are roles or outputs.</summary>
    public IReadOnlyList<string> Keys => [.. table.Items.Keys];

    public object? Raw(string key)
    {
        Know(key);
        return table.Items.TryGetValue(key, out var item) ? item.Value.Value : null;
    }

    /// <summary>Refuses every key that was not asked for.</summary>
    public void RefuseOthers()
    {
        foreach (var (key, item) in table.Items.Where(i => !_known.Contains(i.Key, StringComparer.Ordinal)))
        {
            mistakes.Add(new Mistake(item.Key, $"{title} knows no key '{key}'", Spelling.Accepted(key, _known)));
        }
    }

    public T? Keep<T>(T? value, Mistake? mistake)
    {
        if (mistake is not null)
        {
            mistakes.Add(mistake);
        }

        return value;
    }

    private void Know(string key)
    {
        if (!_known.Contains(key, StringComparer.Ordinal))
        {
            _known.Add(key);
        }
    }

    private T? Get<T>(string key, string accepted)
        where T : class => Raw(key) switch
        {
            null => null,
            T value => value,
            _ => WrongType<T>(key, accepted),
        };

    private T? GetValue<T>(string key, string accepted)
        where T : struct => Raw(key) switch
        {
            null => null,
            T value => value,
            _ => WrongType<T?>(key, accepted),
        };

    private T? WrongType<T>(string key, string accepted)
    {
        Wrong(key, $"{key} has a value of another type", $"accepted: {accepted}");
        return default;
    }
}
