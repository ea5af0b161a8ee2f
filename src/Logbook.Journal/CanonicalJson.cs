using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Logbook.Journal;

/// <summary>
/// One JSON value in the one form that RFC 8785 (JSON Canonicalization Scheme) gives it: no white space, members sorted by
/// UTF-16 code unit, the shortest escapes. Of its numbers only integers that every reader holds exactly are accepted here.
/// </summary>
public static class CanonicalJson
{
    private const long LargestExact = (1L << 53) - 1;

    private static readonly SearchValues<char> Escaped = SearchValues.Create([.. Enumerable.Range(0, ' ').Select(c => (char)c), '"', '\\']);

    /// <summary>The canonical bytes.</summary>
    /// <exception cref="FormatException">A number is not such an integer, or a string is not valid Unicode.</exception>
    public static byte[] Write(JsonElement value)
    {
        var text = new StringBuilder();
        try
        {
            Append(text, value);
        }
        catch (InvalidOperationException half) // what JsonElement throws when it unescapes such a string
        {
            throw new FormatException("a string holds half of a surrogate pair", half);
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static void Append(StringBuilder text, JsonElement value)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object: AppendObject(text, value); break;
            case JsonValueKind.Array: AppendArray(text, value); break;
            case JsonValueKind.String: AppendString(text, value.GetString()!); break;
            case JsonValueKind.Number: text.Append(Integer(value)); break;
            case JsonValueKind.True: text.Append("true"); break;
            case JsonValueKind.False: text.Append("false"); break;
            case JsonValueKind.Null: text.Append("null"); break;
            default: throw new FormatException("there is no JSON value");
        }
    }

    private static void AppendObject(StringBuilder text, JsonElement value)
    {
        var between = '{';
        foreach (var member in value.EnumerateObject().OrderBy(m => m.Name, StringComparer.Ordinal))
        {
            text.Append(between);
            AppendString(text, member.Name);
            text.Append(':');
            Append(text, member.Value);
            between = ',';
        }

        text.Append(between == '{' ? "{}" : "}");
    }

    private static void AppendArray(StringBuilder text, JsonElement value)
    {
        var between = '[';
        foreach (var item in value.EnumerateArray())
        {
            text.Append(between);
            Append(text, item);
            between = ',';
        }

        text.Append(between == '[' ? "[]" : "]");
    }

    private static void AppendString(StringBuilder text, string value)
    {
        text.Append('"');
        var rest = value.AsSpan();
        for (int plain; (plain = rest.IndexOfAny(Escaped)) >= 0; rest = rest[(plain + 1)..])
        {
            text.Append(rest[..plain]);
            AppendEscape(text, rest[plain]);
        }

        text.Append(rest).Append('"');
    }

    private static void AppendEscape(StringBuilder text, char c) => _ = c switch
    {
        '"' => text.Append("\\\""),
        '\\' => text.Append("\\\\"),
        '\b' => text.Append("\\b"),
        '\t' => text.Append("\\t"),
        '\n' => text.Append("\\n"),
        '\f' => text.Append("\\f"),
        '\r' => text.Append("\\r"),
        _ => text.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}"),
    };

    private static long Integer(JsonElement value) =>
        value.TryGetInt64(out var number) && Math.Abs(number) <= LargestExact
            ? number
            : throw new FormatException($"{value.GetRawText()} is not an integer within 2^53 - 1; other numbers are written as text");
}
