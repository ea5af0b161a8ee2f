using Logbook.Journal;
using Npgsql;
using NpgsqlTypes;

namespace Logbook.Storage.Postgres;

/// <summary>A record as the server's table has it: the bytes, and what finds them.</summary>
internal sealed record RecordRow(long Seq, string Kind, DateTimeOffset At, DateTimeOffset Entered, long? Corrects, ReadOnlyMemory<byte> Bytes)
{
    public const string Columns = "chain, seq, kind, at, entered, corrects, bytes";

    public static RecordRow Of(JournalRecord record) =>
        new(record.Seq, Plain.Text(record.Kind), record.At, record.Entered, (record.Body as Correction)?.Target, record.Bytes);

    public void Write(NpgsqlBinaryImporter copy, string chain)
    {
        copy.StartRow();
        copy.Write(chain, NpgsqlDbType.Text);
        copy.Write(Seq, NpgsqlDbType.Bigint);
        copy.Write(Kind, NpgsqlDbType.Text);
        copy.Write(At.UtcDateTime, NpgsqlDbType.TimestampTz);
        copy.Write(Entered.UtcDateTime, NpgsqlDbType.TimestampTz);
        if (Corrects is { } target)
            copy.Write(target, NpgsqlDbType.Bigint);
        else
            copy.WriteNull();
        copy.Write(Bytes, NpgsqlDbType.Bytea);
    }
}

/// <summary>One value that a record gives a point, as the server's table has it. It follows from the record alone.</summary>
internal sealed record ReadingRow(long Seq, int N, string Point, DateTimeOffset At, double? Value, string Unit, string? Typed, string? Why, bool Derived, long? Corrects)
{
    public const string Columns = "chain, seq, n, point, at, value, unit, typed, why, derived, corrects";

    public static IEnumerable<ReadingRow> Of(JournalRecord record) => record.Body switch
    {
        Entry entry => EntryValues.Of(record, entry).Select((value, n) => new ReadingRow(
            record.Seq, n, Tag(value.Point), value.At, value.Value, Plain.Text(value.Unit), Plain.TextOrNull(value.Typed), Plain.TextOrNull(value.Why), n >= entry.Readings.Count, null)),
        Correction correction => OfCorrection(record, correction),
        _ => [],
    };

    /// <summary>Tags are compared without regard to case.</summary>
    public static string Tag(string point) => Plain.Text(point.ToUpperInvariant());

    public void Write(NpgsqlBinaryImporter copy, string chain)
    {
        copy.StartRow();
        copy.Write(chain, NpgsqlDbType.Text);
        copy.Write(Seq, NpgsqlDbType.Bigint);
        copy.Write(N, NpgsqlDbType.Integer);
        copy.Write(Point, NpgsqlDbType.Text);
        copy.Write(At.UtcDateTime, NpgsqlDbType.TimestampTz);
        if (Value is { } value)
            copy.Write(value, NpgsqlDbType.Double);
        else
            copy.WriteNull();
        copy.Write(Unit, NpgsqlDbType.Text);
        WriteText(copy, Typed);
        WriteText(copy, Why);
        copy.Write(Derived, NpgsqlDbType.Boolean);
        if (Corrects is { } target)
            copy.Write(target, NpgsqlDbType.Bigint);
        else
            copy.WriteNull();
    }

    private static IEnumerable<ReadingRow> OfCorrection(JournalRecord record, Correction correction)
    {
        var n = 0;
        foreach (var reading in correction.Readings)
            yield return new(
                record.Seq, n++, Tag(reading.Point), reading.At, reading.Value, Plain.Text(reading.Unit), Plain.TextOrNull(reading.Typed), Plain.TextOrNull(reading.Why), Derived: false, correction.Target);
        foreach (var result in correction.Results.Where(result => result.Point is not null))
            yield return new(record.Seq, n++, Tag(result.Point!), correction.ReadAt, result.Value, Plain.Text(result.Unit), null, null, Derived: true, correction.Target);
    }

    private static void WriteText(NpgsqlBinaryImporter copy, string? text)
    {
        if (text is null)
            copy.WriteNull();
        else
            copy.Write(text, NpgsqlDbType.Text);
    }
}

/// <summary>PostgreSQL's text holds every character but one; the record's bytes keep that one too.</summary>
internal static class Plain
{
    public static string Text(string text) => text.Replace('\0', '\uFFFD');

    public static string? TextOrNull(string? text) => text is null ? null : Text(text);
}
