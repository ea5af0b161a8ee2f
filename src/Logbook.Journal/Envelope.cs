using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Logbook.Journal;

/// <summary>A record as its JSON object has it: every member of the outer object, under its own name.</summary>
internal sealed record Envelope(
    int V, long Seq, string Chain, string Kind, string At, string Entered, string Offset, string Shift, string By, string Terminal,
    BodyPlace Body, string Prev)
{
    private const string UtcForm = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";
    private const string OffsetForm = "zzz";

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
            Seq, Chain, ReadUtc("at", At, offset), ReadUtc("entered", Entered, offset), Shift, By, Terminal,
            Forms.Read(V, Kind, bytes.Span.Slice(Body.Start, Body.Length)), Prev, JournalRecord.HashOf(bytes.Span), bytes);
    }

    private static string Utc(DateTimeOffset time) => time.UtcDateTime.ToString(UtcForm, CultureInfo.InvariantCulture);

    private static DateTimeOffset ReadUtc(string member, string text, TimeSpan offset)
    {
        const DateTimeStyles utc = DateTimeStyles.AssumeUniversal;
        if (DateTimeOffset.TryParseExact(text, UtcForm, CultureInfo.InvariantCulture, utc, out var time))
            return time.ToOffset(offset);
        throw new FormatException($"'{member}' is not UTC with milliseconds: {text}");
    }

    private static TimeSpan ReadOffset(string text)
    {
        // "zzz" is known to whole times only, so the offset is read as part of one.
        if (DateTimeOffset.TryParseExact("2000-01-01 " + text, "yyyy-MM-dd zzz", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
            return time.Offset;
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
