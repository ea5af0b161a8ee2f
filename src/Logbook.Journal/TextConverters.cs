using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Logbook.Journal;

/// <summary>A computed number as its shortest text that reads back to the same number: JSON numbers lose digits in some readers.</summary>
internal sealed class NumberAsText : JsonConverter<double>
{
    public static double? OrNull(ref Utf8JsonReader reader) => reader.TokenType == JsonTokenType.Null ? null : Of(ref reader);

    public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Of(ref reader);

    public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options) => writer.WriteStringValue(Text(value));

    /// <summary>Writes the member where there is one.</summary>
    public static void Write(Utf8JsonWriter writer, string name, double? value)
    {
        if (value is { } number)
            writer.WriteString(name, Text(number));
    }

    // Escapes are what nobody writes in a number; such a text is read the long way.
    private static double Of(ref Utf8JsonReader reader) => reader.TokenType == JsonTokenType.String
        && (reader.ValueIsEscaped
            ? double.TryParse(reader.GetString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            : double.TryParse(reader.ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture, out number))
        && double.IsFinite(number)
            ? number
            : throw new JsonException("not a finite number");

    private static string Text(double value) => double.IsFinite(value)
        ? value.ToString("R", CultureInfo.InvariantCulture)
        : throw new ArgumentOutOfRangeException(nameof(value), value, "a record holds finite numbers only");
}

internal static class TextMember
{
    /// <summary>Writes the member where there is one.</summary>
    public static void WriteText(this Utf8JsonWriter writer, string name, string? value)
    {
        if (value is not null)
            writer.WriteString(name, value);
    }
}

/// <summary>A time inside a body: ISO 8601 with milliseconds and the offset that its clock had.</summary>
internal sealed class TimeAsText : JsonConverter<DateTimeOffset>
{
    private const int Length = 29; // 2026-10-31T20:05:07.123-04:00

    public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Of(ref reader);

    // A round has forty of these: what the library does with a form that is handed to it takes most of a record's time.
    public static DateTimeOffset Of(ref Utf8JsonReader reader) =>
        reader.TokenType == JsonTokenType.String && reader.ValueSpan is { Length: Length } text && text[10] == 'T' && text[19] == '.' && (text[23] == '+' || text[23] == '-')
            && reader.TryGetDateTimeOffset(out var time)
            ? time
            : throw new JsonException("not a time with milliseconds and offset");

    public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) => Write(writer, value);

    public static void Write(Utf8JsonWriter writer, DateTimeOffset value)
    {
        Span<byte> text = stackalloc byte[Length];
        var offset = value.TotalOffsetMinutes;
        Put(text, 0, 4, value.Year, '-');
        Put(text, 5, 2, value.Month, '-');
        Put(text, 8, 2, value.Day, 'T');
        Put(text, 11, 2, value.Hour, ':');
        Put(text, 14, 2, value.Minute, ':');
        Put(text, 17, 2, value.Second, '.');
        Put(text, 20, 3, value.Millisecond, offset < 0 ? '-' : '+');
        Put(text, 24, 2, Math.Abs(offset) / 60, ':');
        Put(text, 27, 2, Math.Abs(offset) % 60, null);
        writer.WriteStringValue(text);
    }

    private static void Put(Span<byte> text, int at, int digits, int number, char? then)
    {
        if (then is { } mark)
            text[at + digits] = (byte)mark;
        for (var i = at + digits - 1; i >= at; i--, number /= 10)
            text[i] = (byte)('0' + (number % 10));
    }
}

/// <summary>The time of a record: UTC, ISO 8601 with milliseconds.</summary>
internal sealed class UtcAsText : JsonConverter<DateTimeOffset>
{
    private const int Length = 24; // 2026-11-01T00:05:07.123Z

    public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.String && reader.ValueSpan is { Length: Length } text && text[10] == 'T' && text[19] == '.' && text[^1] == 'Z'
            && reader.TryGetDateTimeOffset(out var time)
            ? time
            : throw new JsonException("not UTC with milliseconds");

    public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
        writer.WriteStringValue(value.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture));
}

/// <summary>Tags, units, codes, sentences: what stands in nearly every record again is read as one text, so that years of records fit into memory.</summary>
internal sealed class SharedText : JsonConverter<string>
{
    private const int Longest = 1000;
    private static readonly string?[] Known = new string?[4096];

    public static string? OrNull(ref Utf8JsonReader reader) => reader.TokenType == JsonTokenType.Null ? null : Of(ref reader);

    public override string? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Of(ref reader);

    private static string? Of(ref Utf8JsonReader reader)
    {
        if (reader.TokenType != JsonTokenType.String)
            throw new JsonException("not a text");
        if (reader.ValueSpan.Length > Longest)
            return reader.GetString();
        var hash = default(HashCode);
        hash.AddBytes(reader.ValueSpan);
        ref var known = ref Known[(uint)hash.ToHashCode() % (uint)Known.Length]; // the last with that place; which one is no matter
        return known is { } text && reader.ValueTextEquals(text) ? text : known = reader.GetString();
    }

    public override void Write(Utf8JsonWriter writer, string value, JsonSerializerOptions options) => writer.WriteStringValue(value);
}

/// <summary>note, watch, urgent.</summary>
internal sealed class LevelAsText() : JsonStringEnumConverter<Level>(JsonNamingPolicy.SnakeCaseLower, allowIntegerValues: false);
