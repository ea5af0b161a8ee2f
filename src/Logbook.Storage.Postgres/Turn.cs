using Logbook.Journal;
using Npgsql;

namespace Logbook.Storage.Postgres;

/// <summary>One transaction in which this forwarder alone adds to a line. What is not committed was never there.</summary>
internal sealed class Turn : IDisposable
{
    // A forwarder whose network died must not keep the others waiting for the two hours that TCP would take to notice.
    private const string Begin =
        """
        set local lock_timeout = '10s';
        set local idle_in_transaction_session_timeout = '60s';
        set local tcp_keepalives_idle = 20;
        set local tcp_keepalives_interval = 5;
        set local tcp_keepalives_count = 4;
        """;

    private readonly NpgsqlConnection _connection;
    private readonly NpgsqlTransaction _transaction;

    private Turn(NpgsqlConnection connection, NpgsqlTransaction transaction, ServerLine? line, DateTimeOffset clock)
    {
        (_connection, _transaction, Line, Clock) = (connection, transaction, line, clock);
    }

    /// <summary>The line as it is there; null when it was never admitted.</summary>
    public ServerLine? Line { get; }

    /// <summary>What the server's clock shows.</summary>
    public DateTimeOffset Clock { get; }

    /// <param name="alone">False only to look: nobody is made to wait, and nothing may be added.</param>
    public static Turn Take(Server server, string chain, bool alone)
    {
        var connection = server.Open();
        try
        {
            var transaction = connection.BeginTransaction();
            if (alone)
            {
                Run(connection, Begin);
                Run(connection, "select pg_advisory_xact_lock(hashtextextended($1, 0))", chain);
            }

            using var command = Command(connection, "select id, chain, seq, hash, received, clock_timestamp() from logbook.line where chain = $1", chain);
            using var row = command.ExecuteReader();
            if (row.Read())
                return new(connection, transaction, ServerLine.Of(row), new DateTimeOffset(row.GetDateTime(5)));
            return new(connection, transaction, null, DateTimeOffset.MinValue);
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>The head that the chain had at a record there; null when it has no such record.</summary>
    public Head? HeadAt(long seq)
    {
        if (seq == 0)
            return Head.Empty;
        using var command = Command(_connection, $"select hash from logbook.record_{Line!.Id} where chain = $1 and seq = $2", Line.Chain, seq);
        return command.ExecuteScalar() is byte[] hash ? ServerLine.HeadOf(seq, hash) : null;
    }

    /// <summary>What stands there in the place of a record that is here.</summary>
    public Difference Against(JournalRecord here)
    {
        using var command = Command(_connection, $"select hash, entered, received from logbook.record_{Line!.Id} where chain = $1 and seq = $2", Line.Chain, here.Seq);
        using var row = command.ExecuteReader();
        row.Read();
        return new(here, Convert.ToHexStringLower(row.GetFieldValue<byte[]>(0)), new DateTimeOffset(row.GetDateTime(1)), new DateTimeOffset(row.GetDateTime(2)));
    }

    /// <summary>Adds the records and what they say of points, and returns when the server has them on its disk.</summary>
    public void Add(IReadOnlyCollection<JournalRecord> records)
    {
        var (id, chain) = (Line!.Id, Line.Chain);
        using (var copy = _connection.BeginBinaryImport($"copy logbook.reading_{id} ({ReadingRow.Columns}) from stdin (format binary)"))
        {
            foreach (var row in records.SelectMany(ReadingRow.Of))
                row.Write(copy, chain);
            copy.Complete();
        }

        using (var copy = _connection.BeginBinaryImport($"copy logbook.record_{id} ({RecordRow.Columns}) from stdin (format binary)"))
        {
            foreach (var record in records)
                RecordRow.Of(record).Write(copy, chain);
            copy.Complete();
        }

        _transaction.Commit();
    }

    /// <summary>Keeps a state there, for those who read.</summary>
    public void Keep(State state)
    {
        using var command = Command(
            _connection, "select logbook.keep($1, $2, $3, $4, $5)", Line!.Chain, state.Head.Seq, Convert.FromHexString(state.Head.Hash), StateForm.Fold, StateForm.Write(state));
        command.ExecuteNonQuery();
        _transaction.Commit();
    }

    public void Dispose()
    {
        _transaction.Dispose();
        _connection.Dispose();
    }

    private static void Run(NpgsqlConnection connection, string sql, params object[] values)
    {
        using var command = Command(connection, sql, values);
        command.ExecuteNonQuery();
    }

    private static NpgsqlCommand Command(NpgsqlConnection connection, string sql, params object[] values)
    {
        var command = new NpgsqlCommand(sql, connection);
        foreach (var value in values)
            command.Parameters.Add(new() { Value = value });
        return command;
    }
}
