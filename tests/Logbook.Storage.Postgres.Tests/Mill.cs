using System.Text;
using Logbook.Journal;
using Logbook.Journal.Tests;
using Logbook.Testing;
using Microsoft.Extensions.Time.Testing;

namespace Logbook.Storage.Postgres.Tests;

/// <summary>A database with the logbook's tables, a role that forwards and one that reads, and lines to forward.</summary>
internal sealed class Mill : IDisposable
{
    private readonly Dictionary<(string Role, int Port), Server> _servers = [];
    private readonly string _notes = Directory.CreateTempSubdirectory("notes-").FullName;

    public Mill(Cluster cluster, string more = "")
    {
        Cluster = cluster;
        Database = cluster.NewDatabase(more);
        cluster.Execute("postgres", $"create role fw_{Database} login; create role rd_{Database} login; create role other_{Database} login");
        ServerSchema.Bring(Admin);
        cluster.Execute(Database, $"grant logbook_reader to rd_{Database}");
    }

    public Cluster Cluster { get; }

    public string Database { get; }

    /// <summary>Stands still at what the server's clock shows when a test begins.</summary>
    public FakeTimeProvider Clock { get; } = new(TimeProvider.System.GetUtcNow());

    public Server Admin => As("lab");

    public Server Reading => As($"rd_{Database}");

    /// <summary>The server as a role sees it, maybe through another port.</summary>
    public Server As(string role, int? port = null)
    {
        var key = (role, port ?? Cluster.Port);
        lock (_servers)
        {
            return _servers.TryGetValue(key, out var known)
                ? known
                : _servers[key] = new Server(ServerAddress.Of(Cluster.ConnectionString(Database, role, port), "test").Value!);
        }
    }

    public void Admit(string chain) => ServerSchema.Admit(Admin, chain, $"fw_{Database}");

    public string NotePath(string chain) => Path.Combine(_notes, chain);

    public ForwardNote Note(string chain) => new(NotePath(chain));

    public Forwarder Forwarder(IJournalStore line, int batch = 500, int? port = null, string chain = Drafts.Line) =>
        new(line, As($"fw_{Database}", port), Note(chain), Clock) { MostRecords = batch };

    public ForwardReport Forward(IJournalStore line, int batch = 500, string chain = Drafts.Line) => Forwarder(line, batch, chain: chain).Run(LongWork.Unwatched);

    public ServerJournal Journal(string chain = Drafts.Line)
    {
        var server = Reading;
        return new(server, server.Lines().Single(l => l.Chain == chain));
    }

    /// <summary>The server holds exactly what the line holds, each record once, and all that stands beside it follows from it.</summary>
    public void MustHold(IJournalStore line, string chain = Drafts.Line)
    {
        var there = Journal(chain);
        Assert.Equal(line.Bytes().Select(Text), there.Bytes().Select(Text), StringComparer.Ordinal);
        Assert.Equal(line.Head, there.Head);
        var check = there.Verify();
        Assert.True(check.Ok, check.Why);
        Assert.Equal(line.Head, check.Head);
    }

    /// <summary>Entries, corrections and remarks, the same for the same number.</summary>
    public static InMemoryJournal Line(int records, string chain = Drafts.Line, int from = 0, string words = "seen")
    {
        var line = new InMemoryJournal();
        Write(line, records, chain, from, words);
        return line;
    }

    public static void Write(InMemoryJournal line, int records, string chain = Drafts.Line, int from = 0, string words = "seen")
    {
        for (var i = from; i < from + records; i++)
        {
            var at = Drafts.Morning.AddMinutes(20 * i);
            var draft = (i % 5) switch
            {
                0 => Drafts.Of(new Remark($"{words} {i}", null, null), at),
                4 => Drafts.Of(Correction.Of(i, i % 2 == 0 ? [Drafts.Read($"SL-T1={i}", at.AddMinutes(-20))] : [Drafts.Read("SL-F1=-", at.AddMinutes(-20)), Drafts.Read($"SL-T1={i}", at.AddMinutes(-20))], "misread", [Drafts.Derived("WL-CE", i)], []), at),
                _ => Drafts.Entry(at, $"SL-T1={100 + i}", "SL-F1=-") with { Body = new Entry { Readings = [Drafts.Read($"SL-T1={100 + i}", at), Drafts.Read("SL-F1=-", at)], Results = [Drafts.Derived("WL-CE", 80 + i)] } },
            };
            line.Append(draft with { Chain = chain });
        }
    }

    public void Dispose()
    {
        foreach (var server in _servers.Values)
            server.Dispose();
        Directory.Delete(_notes, recursive: true);
    }

    private static string Text(ReadOnlyMemory<byte> bytes) => Encoding.UTF8.GetString(bytes.Span);
}
