using System.Buffers;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

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
        var text = new ArrayBufferWriter<byte>(16 * 1024);
        try
        {
            Append(text, value);
        }
        catch (InvalidOperationException half) // what JsonElement throws when it unescapes such a string
        {
            throw new FormatException("a string holds half of a surrogate pair", half);
        }

        return text.WrittenSpan.ToArray();
    }

    private static void Append(ArrayBufferWriter<byte> text, JsonElement value)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object: AppendObject(text, value); break;
            case JsonValueKind.Array: AppendArray(text, value); break;
            case JsonValueKind.String: AppendString(text, JsonMarshal.GetRawUtf8Value(value)[1..^1], value, static value => value.GetString()!); break;
            case JsonValueKind.Number: text.Write(Encoding.ASCII.GetBytes(Integer(value).ToString(CultureInfo.InvariantCulture))); break;
            case JsonValueKind.True: text.Write("true"u8); break;
            case JsonValueKind.False: text.Write("false"u8); break;
            case JsonValueKind.Null: text.Write("null"u8); break;
            default: throw new FormatException("there is no JSON value");
        }
    }

    private static void AppendObject(ArrayBufferWriter<byte> text, JsonElement value)
    {
        JsonProperty[] members = [.. value.EnumerateObject()];
        Array.Sort(members, ByName);
        text.Write("{"u8);
        for (var i = 0; i < members.Length; i++)
        {
            if (i > 0)
                text.Write(","u8);
            AppendString(text, JsonMarshal.GetRawUtf8PropertyName(members[i]), members[i], static member => member.Name);
            text.Write(":"u8);
            Append(text, members[i].Value);
        }

        text.Write("}"u8);
    }

    // Names are nearly always ASCII as it stands, where the order of bytes is the order of UTF-16 code units.
    private static int ByName(JsonProperty one, JsonProperty other)
    {
        var first = JsonMarshal.GetRawUtf8PropertyName(one);
        var second = JsonMarshal.GetRawUtf8PropertyName(other);
        return Ascii.IsValid(first) && Ascii.IsValid(second) && !HasEscape(first) && !HasEscape(second)
            ? first.SequenceCompareTo(second)
            : string.CompareOrdinal(one.Name, other.Name);
    }

    private static void AppendArray(ArrayBufferWriter<byte> text, JsonElement value)
    {
        text.Write("["u8);
        var first = true;
        foreach (var item in value.EnumerateArray())
        {
            if (!first)
                text.Write(","u8);
            first = false;
            Append(text, item);
        }

        text.Write("]"u8);
    }

    // What has no escape in it is canonical as it stands: JSON lets neither a quote nor a control character stand there bare.
    private static void AppendString<T>(ArrayBufferWriter<byte> text, ReadOnlySpan<byte> raw, T of, Func<T, string> unescaped)
    {
        text.Write("\""u8);
        if (!HasEscape(raw) && Utf8.IsValid(raw))
            text.Write(raw);
        else
            AppendEscaped(text, unescaped(of));
        text.Write("\""u8);
    }

    private static bool HasEscape(ReadOnlySpan<byte> raw) => raw.Contains((byte)'\\');

    private static void AppendEscaped(ArrayBufferWriter<byte> text, string value)
    {
        var rest = value.AsSpan();
        for (int plain; (plain = rest.IndexOfAny(Escaped)) >= 0; rest = rest[(plain + 1)..])
        {
            Encoding.UTF8.GetBytes(rest[..plain], text);
            Encoding.UTF8.GetBytes(Escape(rest[plain]), text);
        }

        Encoding.UTF8.GetBytes(rest, text);
    }

    private static string Escape(char c) => c switch
    {
        '"' => "\\\"",
        '\\' => "\\\\",
        '\b' => "\\b",
        '\t' => "\\t",
        '\n' => "\\n",
        '\f' => "\\f",
        '\r' => "\\r",
        _ => string.Create(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}"),
    };

    private static long Integer(JsonElement value) =>
        value.TryGetInt64(out var number) && Math.Abs(number) <= LargestExact
            ? number
            : throw new FormatException($"{value.GetRawText()} is not an integer within 2^53 - 1; other numbers are written as text");
}
