using System.Globalization;
using System.Text.Json;

namespace Logbook.Journal;

/// <summary>A record as its JSON object has it: every member of the outer object, under its own name.</summary>
internal sealed record Envelope(
    int V, long Seq, string Chain, string Kind, string At, string Entered, string Offset, string Shift, string By, string Terminal,
    JsonElement Body, string Prev)
{
    private const string UtcForm = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";
    private const string OffsetForm = "zzz";

    public static Envelope Of(RecordDraft draft, Head head) => new(
        JournalRecord.Version, head.Seq + 1, draft.Chain, draft.Body.Kind, Utc(draft.At), Utc(draft.Entered),
        draft.At.ToString(OffsetForm, CultureInfo.InvariantCulture), draft.Shift, draft.By, draft.Terminal, Forms.Write(draft.Body), head.Hash);

    public JournalRecord ToRecord(ReadOnlyMemory<byte> bytes)
    {
        var offset = ReadOffset(Offset);
        return new(
            Seq, Chain, ReadUtc("at", At, offset), ReadUtc("entered", Entered, offset), Shift, By, Terminal,
            Forms.Read(V, Kind, Body), Prev, JournalRecord.HashOf(bytes.Span), bytes);
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
