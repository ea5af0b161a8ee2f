using System.Net.Sockets;
using System.Security.Authentication;
using Logbook.Journal;
using Npgsql;

namespace Logbook.Storage.Postgres.Tests;

/// <summary>Each trouble is one line that says what a person can do about it.</summary>
public sealed class ServerFaultTests
{
    public static TheoryData<Exception, JournalTrouble, string> Troubles() => new()
    {
        { new NpgsqlException("x", new AuthenticationException("callback")), JournalTrouble.Denied, "TLS does not vouch" },
        { new NpgsqlException("x", new EndOfStreamException()), JournalTrouble.Away, "the connection was cut" },
        { new NpgsqlException("x", new SocketException(111)), JournalTrouble.Away, "the server is away" },
        { new TimeoutException("too long"), JournalTrouble.Away, "too long" },
        { Of("42501"), JournalTrouble.Denied, "logbook server admit" },
        { Of("28P01"), JournalTrouble.Denied, "does not let this role in" },
        { Of("53100"), JournalTrouble.Full, "disk is full" },
        { Of("42P01"), JournalTrouble.Unreadable, "logbook server init" },
        { Of("55P03"), JournalTrouble.Busy, "another forwarder" },
        { Of("57P01"), JournalTrouble.Away, "the server is away" },
        { Of("XX001"), JournalTrouble.Damaged, "words" },
    };

    [Theory]
    [MemberData(nameof(Troubles))]
    public void A_trouble_is_told_in_one_line(Exception thrown, JournalTrouble trouble, string words)
    {
        var told = Assert.Throws<JournalException>(() => ServerFault.Guard<int>("not forwarded", () => throw thrown));

        Assert.Equal(trouble, told.Trouble);
        Assert.StartsWith("not forwarded: ", told.Message, StringComparison.Ordinal);
        Assert.Contains(words, told.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', told.Message);
    }

    private static PostgresException Of(string state) => new("some\nwords.", "ERROR", "ERROR", state);
}
