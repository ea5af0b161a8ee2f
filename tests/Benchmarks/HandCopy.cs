using Logbook.Journal;
using Logbook.Storage.Postgres;
using Npgsql;

namespace Benchmarks;

/// <summary>What somebody would write who only wants the rows over there: they are ready in memory, and nothing is compared, linked or kept.</summary>
internal sealed class HandCopy(string address, string chain, IReadOnlyList<JournalRecord> records)
{
    private const int Batch = 500;

    private readonly List<RecordRow> _records = [.. records.Select(RecordRow.Of)];
    private readonly ILookup<long, ReadingRow> _readings = records.SelectMany(ReadingRow.Of).ToLookup(r => r.Seq);

    public void All() => InBatches((connection, batch) =>
    {
        using (var copy = connection.BeginBinaryImport($"copy yard.reading ({ReadingRow.Columns}) from stdin (format binary)"))
        {
            foreach (var row in batch.SelectMany(r => _readings[r.Seq]))
            {
                row.Write(copy, chain);
            }

            copy.Complete();
        }

        using (var copy = connection.BeginBinaryImport($"copy yard.record ({RecordRow.Columns}) from stdin (format binary)"))
        {
            foreach (var row in batch)
            {
                row.Write(copy, chain);
            }

            copy.Complete();
        }
    });

    public void BytesAlone() => InBatches((connection, batch) =>
    {
        using var copy = connection.BeginBinaryImport("copy yard.bytes (chain, seq, bytes) from stdin (format binary)");
        foreach (var row in batch)
        {
            copy.StartRow();
            copy.Write(chain);
            copy.Write(row.Seq);
            copy.Write(row.Bytes, NpgsqlTypes.NpgsqlDbType.Bytea);
        }

        copy.Complete();
    });

    private void InBatches(Action<NpgsqlConnection, RecordRow[]> send)
    {
        using var connection = new NpgsqlConnection(address);
        connection.Open();
        foreach (var batch in _records.Chunk(Batch))
        {
            using var transaction = connection.BeginTransaction();
            send(connection, batch);
            transaction.Commit();
        }
    }
}
