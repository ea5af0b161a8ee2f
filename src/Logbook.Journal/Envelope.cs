using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Logbook.Journal;

/// <summary>A record as its JSON object has it: every member of the outer object, under its own name.</summary>
internal sealed record Envelope(
    int V, long Seq, [property: JsonConverter(typeof(SharedText))] string Chain, [property: JsonConverter(typeof(SharedText))] string Kind,
    [property: JsonConverter(typeof(UtcAsText))] DateTimeOffset At, [property: JsonConverter(typeof(UtcAsText))] DateTimeOffset Entered,
    [property: JsonConverter(typeof(SharedText))] string Offset, [property: JsonConverter(typeof(SharedText))] string Shift, [property: JsonConverter(typeof(SharedText))] string By,
    [property: JsonConverter(typeof(SharedText))] string Terminal, BodyPlace Body, string Prev)
{
    private const string UtcForm = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";
    private const string OffsetForm = "zzz";
    private static readonly TimeSpan Widest = TimeSpan.FromHours(14);

    /// <summary>The members of a draft that stands after <paramref name="head"/>, in no particular order.</summary>
    public static void Write(Utf8JsonWriter to, RecordDraft draft, Head head)
    {
        to.WriteStartObject();
        to.WriteNumber("v", JournalRecord.Version);
        to.WriteNumber("seq", head.Seq + 1);
        to.WriteString("chain", draft.Chain);
        to.WriteString("kind", draft.Body.Kind);
        to.WriteString("at", Utc(draft.At));
        to.WriteString("entered", Utc(draft.Entered));
        to.WriteString("offset", draft.At.ToString(OffsetForm, CultureInfo.InvariantCulture));
        to.WriteString("shift", draft.Shift);
        to.WriteString("by", draft.By);
        to.WriteString("terminal", draft.Terminal);
        to.WriteString("prev", head.Hash);
        to.WritePropertyName("body");
        Forms.Write(to, draft.Body);
        to.WriteEndObject();
    }

    public JournalRecord ToRecord(ReadOnlyMemory<byte> bytes)
    {
        var offset = ReadOffset(Offset);
        return new(
            Seq, Chain, At.ToOffset(offset), Entered.ToOffset(offset), Shift, By, Terminal,
            Forms.Read(V, Kind, bytes.Span.Slice(Body.Start, Body.Length)), Prev, JournalRecord.HashOf(bytes.Span), bytes);
    }

    private static string Utc(DateTimeOffset time) => time.UtcDateTime.ToString(UtcForm, CultureInfo.InvariantCulture);

    private static TimeSpan ReadOffset(string text)
    {
        const NumberStyles digits = NumberStyles.None;
        if (text is [('+' or '-') and var sign, _, _, ':', _, _]
            && int.TryParse(text.AsSpan(1, 2), digits, CultureInfo.InvariantCulture, out var hours)
            && int.TryParse(text.AsSpan(4), digits, CultureInfo.InvariantCulture, out var minutes)
            && minutes < 60 && new TimeSpan(hours, minutes, 0) is var offset && offset <= Widest)
            return sign == '-' ? -offset : offset;
        throw new FormatException($"'offset' is not +hh:mm or -hh:mm: {text}");
    }
}

/// <summary>Where a record's body stands in its bytes: it is read from there, in the form that the rest of the record names.</summary>
[JsonConverter(typeof(Reader))]
[StructLayout(LayoutKind.Auto)]
internal readonly record struct BodyPlace(int Start, int Length)
{
    internal sealed class Reader : JsonConverter<BodyPlace>
    {
        public override BodyPlace Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            var start = (int)reader.TokenStartIndex;
            reader.Skip();
            return new(start, (int)reader.BytesConsumed - start);
        }

        public override void Write(Utf8JsonWriter writer, BodyPlace value, JsonSerializerOptions options) =>
            throw new NotSupportedException("a record is written member by member");
    }
}
