using Logbook.Journal;
using Npgsql;

namespace Logbook.Storage.Postgres;

/// <summary>One server as this process speaks with it. Opening it does nothing yet.</summary>
public sealed class Server : IDisposable
{
    private readonly NpgsqlDataSource _source;

    public Server(ServerAddress address)
    {
        Address = address;
        _source = NpgsqlDataSource.Create(address.Builder);
    }

    public ServerAddress Address { get; }

    /// <summary>Every line that was admitted, by name.</summary>
    public IReadOnlyList<ServerLine> Lines() => ServerFault.Guard("the lines cannot be read", () =>
    {
        using var connection = Open();
        using var command = new NpgsqlCommand("select id, chain, seq, hash, received from logbook.line order by chain", connection);
        using var rows = command.ExecuteReader();
        var lines = new List<ServerLine>();
        while (rows.Read())
            lines.Add(ServerLine.Of(rows));
        return lines;
    });

    public void Dispose() => _source.Dispose();

    internal NpgsqlConnection Open() => _source.OpenConnection();

    /// <summary>Runs one command and reads its rows; a cut in between is a <see cref="JournalException"/> like any other trouble.</summary>
    internal List<T> Query<T>(string what, string sql, Func<NpgsqlDataReader, T> row, params NpgsqlParameter[] parameters) => ServerFault.Guard(what, () =>
    {
        using var connection = Open();
        using var command = new NpgsqlCommand(sql, connection);
        command.Parameters.AddRange(parameters);
        using var rows = command.ExecuteReader();
        var all = new List<T>();
        while (rows.Read())
            all.Add(row(rows));
        return all;
    });
}

/// <summary>A line as the server has it.</summary>
/// <param name="Head">The end of its chain there.</param>
/// <param name="Received">When something last arrived, by the server's clock; null when nothing has.</param>
public sealed record ServerLine(int Id, string Chain, Head Head, DateTimeOffset? Received)
{
    internal static ServerLine Of(NpgsqlDataReader row) => new(
        row.GetInt32(0), row.GetString(1), HeadOf(row.GetInt64(2), row.GetFieldValue<byte[]>(3)), row.IsDBNull(4) ? null : new DateTimeOffset(row.GetDateTime(4)));

    internal static Head HeadOf(long seq, byte[] hash) => new(seq, Convert.ToHexStringLower(hash));
}
