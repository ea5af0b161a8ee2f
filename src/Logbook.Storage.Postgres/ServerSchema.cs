using System.Globalization;
using System.Reflection;
using Logbook.Journal;
using Npgsql;

namespace Logbook.Storage.Postgres;

/// <summary>Makes the server's tables, brings older ones forward, and admits lines. For an administrator.</summary>
public static class ServerSchema
{
    // Any number, as long as every program takes the same one.
    private const long Turn = 0x6C6F67626F6F6B;

    private static readonly IReadOnlyList<string> Steps =
        [.. Assembly.GetExecutingAssembly().GetManifestResourceNames().Where(n => n.EndsWith(".sql", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    /// <summary>How many steps this program knows.</summary>
    public static int Known => Steps.Count;

    /// <summary>Takes the steps that are missing, all or none.</summary>
    /// <returns>How many steps the database had, and has now.</returns>
    public static (int Before, int Now) Bring(Server server) => ServerFault.Guard("the tables could not be made; nothing was changed", () =>
    {
        using var connection = server.Open();
        using var transaction = connection.BeginTransaction();
        Run(connection, "select pg_advisory_xact_lock($1)", Turn);
        var before = Step(connection);
        for (var step = before + 1; step <= Known; step++)
        {
            Run(connection, Text(step));
            Run(connection, "insert into logbook.migration (number) values ($1)", step);
        }

        transaction.Commit();
        return (before, Math.Max(before, Known));
    });

    /// <summary>Lets a role forward a line. Asking again changes nothing.</summary>
    public static void Admit(Server server, string chain, string role) => ServerFault.Guard($"{chain} could not be admitted; nothing was changed", () =>
    {
        using var connection = server.Open();
        using var transaction = connection.BeginTransaction();
        if (Scalar(connection, "select count(*) from pg_roles where rolname = $1", role) is 0L)
            throw new JournalException(JournalTrouble.Unreadable, $"the server knows no role {role}: create it first (create role ... login), then admit the line");
        Run(connection, "select logbook.admit($1, $2)", chain, role);
        transaction.Commit();
        return true;
    });

    private static int Step(NpgsqlConnection connection) => Scalar(connection, "select to_regclass('logbook.migration') is not null") is true
        ? Convert.ToInt32(Scalar(connection, "select coalesce(max(number), 0) from logbook.migration"), CultureInfo.InvariantCulture)
        : 0;

    private static string Text(int step)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Steps[step - 1])!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    private static void Run(NpgsqlConnection connection, string sql, params object[] values)
    {
        using var command = Command(connection, sql, values);
        command.ExecuteNonQuery();
    }

    private static object? Scalar(NpgsqlConnection connection, string sql, params object[] values)
    {
        using var command = Command(connection, sql, values);
        return command.ExecuteScalar();
    }

    private static NpgsqlCommand Command(NpgsqlConnection connection, string sql, object[] values)
    {
        var command = new NpgsqlCommand(sql, connection);
        foreach (var value in values)
            command.Parameters.Add(new() { Value = value });
        return command;
    }
}
