using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Logbook.Journal;

/// <summary>A computed number as its shortest text that reads back to the same number: JSON numbers lose digits in some readers.</summary>
internal sealed class NumberAsText : JsonConverter<double>
{
    public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        double.TryParse(reader.GetString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : throw new JsonException("not a finite number");

    public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
    {
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(nameof(value), value, "a record holds finite numbers only");
        writer.WriteStringValue(value.ToString("R", CultureInfo.InvariantCulture));
    }
}

/// <summary>A time inside a body: ISO 8601 with milliseconds and the offset that its clock had.</summary>
internal sealed class TimeAsText : JsonConverter<DateTimeOffset>
{
    private const string Form = "yyyy-MM-dd'T'HH:mm:ss.fffzzz";

    public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        DateTimeOffset.TryParseExact(reader.GetString(), Form, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
            ? time
            : throw new JsonException("not a time with milliseconds and offset");

    public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
        writer.WriteStringValue(value.ToString(Form, CultureInfo.InvariantCulture));
}

/// <summary>note, watch, urgent.</summary>
internal sealed class LevelAsText() : JsonStringEnumConverter<Level>(JsonNamingPolicy.SnakeCaseLower, allowIntegerValues: false);
