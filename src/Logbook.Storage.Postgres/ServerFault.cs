using System.Net.Sockets;
using System.Security.Authentication;
using Logbook.Journal;
using Npgsql;

namespace Logbook.Storage.Postgres;

/// <summary>From what the server or the network throws to the one line that a person gets.</summary>
internal static class ServerFault
{
    /// <summary>The condition that the schema raises when a record does not follow.</summary>
    public const string DoesNotFollow = "LB001";

    /// <summary>Runs work on the server; whatever goes wrong with it comes out as a <see cref="JournalException"/>.</summary>
    /// <param name="what">What could not be done, as a sentence's beginning.</param>
    public static T Guard<T>(string what, Func<T> work)
    {
        try
        {
            return work();
        }
        catch (PostgresException refused)
        {
            var (trouble, words) = Words(refused);
            throw new JournalException(trouble, $"{what}: {words}", refused);
        }
        catch (NpgsqlException unknown) when (unknown.InnerException is AuthenticationException)
        {
            throw new JournalException(JournalTrouble.Denied, $"{what}: TLS does not vouch for the server (its certificate is not for this name, or not by an authority that this machine trusts)", unknown);
        }
        catch (Exception cut) when (cut is NpgsqlException or SocketException or IOException or TimeoutException)
        {
            throw new JournalException(JournalTrouble.Away, $"{what}: the server is away ({Innermost(cut)})", cut);
        }
    }

    private static (JournalTrouble Trouble, string Words) Words(PostgresException e) => e.SqlState switch
    {
        PostgresErrorCodes.InsufficientPrivilege => (JournalTrouble.Denied, $"a right is missing ({OneLine(e.MessageText)}): who forwards a line is admitted with 'logbook server admit', who reads is granted logbook_reader"),
        PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification => (JournalTrouble.Denied, $"the server does not let this role in ({OneLine(e.MessageText)})"),
        PostgresErrorCodes.InvalidCatalogName => (JournalTrouble.Unreadable, OneLine(e.MessageText)),
        PostgresErrorCodes.UndefinedTable or PostgresErrorCodes.InvalidSchemaName => (JournalTrouble.Unreadable, "the database holds no logbook, or an older one: an administrator runs 'logbook server init'"),
        PostgresErrorCodes.DiskFull => (JournalTrouble.Full, $"the server's disk is full ({OneLine(e.MessageText)})"),
        PostgresErrorCodes.LockNotAvailable => (JournalTrouble.Busy, "another forwarder of this line has been at work for unreasonably long"),
        PostgresErrorCodes.UniqueViolation or DoesNotFollow => (JournalTrouble.Busy, $"somebody else has forwarded this line meanwhile ({OneLine(e.MessageText)})"),
        PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CrashShutdown or PostgresErrorCodes.CannotConnectNow or PostgresErrorCodes.TooManyConnections =>
            (JournalTrouble.Away, $"the server is away ({OneLine(e.MessageText)})"),
        PostgresErrorCodes.DataCorrupted or PostgresErrorCodes.IndexCorrupted => (JournalTrouble.Damaged, OneLine(e.MessageText)),
        _ => (JournalTrouble.Unreadable, $"{OneLine(e.MessageText)} ({e.SqlState})"),
    };

    private static string Innermost(Exception e)
    {
        while (e.InnerException is { } inner)
            e = inner;
        return e is EndOfStreamException ? "the connection was cut" : OneLine(e.Message);
    }

    private static string OneLine(string text) => text.ReplaceLineEndings(" ").TrimEnd('.');
}
