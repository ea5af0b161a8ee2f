using System.Buffers;
using System.Security.Cryptography;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Logbook.Journal;

/// <summary>One record of the chain, as it lies on the disk. Never changed, never deleted.</summary>
/// <param name="Seq">From 1, without a gap. Order is by this, never by clock.</param>
/// <param name="Chain">The site's id.</param>
/// <param name="At">When it happened, with the site's offset of that moment.</param>
/// <param name="Entered">When it was typed, with the offset of <paramref name="At"/>.</param>
/// <param name="Shift">Id of the shift that <paramref name="At"/> belongs to.</param>
/// <param name="By">Code of the person.</param>
/// <param name="Terminal">host:tty.</param>
/// <param name="Prev">Hex SHA-256 of the previous record's bytes; 64 zeros for the first.</param>
/// <param name="Hash">Hex SHA-256 of <paramref name="Bytes"/>.</param>
/// <param name="Bytes">The canonical JSON, exactly as stored and hashed.</param>
public sealed record JournalRecord(
    long Seq, string Chain, DateTimeOffset At, DateTimeOffset Entered, string Shift, string By, string Terminal,
    RecordBody Body, string Prev, string Hash, ReadOnlyMemory<byte> Bytes)
{
    /// <summary>The form of the outer object that this program writes.</summary>
    public const int Version = 1;

    // Nothing is escaped that canonical bytes do not have escaped.
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public string Kind => Body.Kind;

    /// <summary>
    /// Gives the draft its place after <paramref name="head"/>. What comes back is read from the sealed bytes: times have whole
    /// milliseconds, and half a character that a keyboard sent has become U+FFFD.
    /// </summary>
    public static JournalRecord Seal(RecordDraft draft, Head head)
    {
        var text = new ArrayBufferWriter<byte>(16 * 1024);
        using (var writer = new Utf8JsonWriter(text, Plain))
            Envelope.Write(writer, draft, head);
        using var document = JsonDocument.Parse(text.WrittenMemory);
        return Parse(CanonicalJson.Write(document.RootElement));
    }

    /// <summary>Reads one record and keeps its bytes as they are.</summary>
    /// <exception cref="FormatException">The bytes are not a record; the message says what is wrong with them.</exception>
    public static JournalRecord Parse(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            var envelope = (Envelope?)JsonSerializer.Deserialize(bytes.Span, Forms.Options.GetTypeInfo(typeof(Envelope)));
            return envelope?.ToRecord(bytes) ?? throw new FormatException("there is no record");
        }
        catch (JsonException broken)
        {
            throw new FormatException($"not a record: {broken.Message}", broken);
        }
    }

    /// <summary>Hex SHA-256, as the next record's <see cref="Prev"/> has it.</summary>
    public static string HashOf(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}

/// <summary>A record before the store has given it its place in the chain.</summary>
public sealed record RecordDraft(
    RecordBody Body, string Chain, DateTimeOffset At, DateTimeOffset Entered, string Shift, string By, string Terminal);

/// <summary>The chain's end: the last sequence number (0 when empty) and the hash of its bytes (64 zeros when empty).</summary>
public sealed record Head(long Seq, string Hash)
{
    public static readonly Head Empty = new(0, new string('0', 64));

    public static Head Of(JournalRecord record) => new(record.Seq, record.Hash);
}
