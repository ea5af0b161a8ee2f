using Logbook.Journal;
using Logbook.Journal.Tests;
using Npgsql;

namespace Logbook.Storage.Postgres.Tests;

/// <summary>Each role can do its own work and nothing else; what is missing is said in one line.</summary>
[Collection(OnAServer.Name)]
public sealed class RightsTests(ClusterIfThere there)
{
    [ServerFact]
    public void The_tables_are_made_once_and_asking_again_changes_nothing()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(5);
        mill.Forward(line);

        Assert.Equal((ServerSchema.Known, ServerSchema.Known), ServerSchema.Bring(mill.Admin));
        mill.Admit(Drafts.Line);
        mill.MustHold(line);
    }

    [ServerFact]
    public void A_line_that_nobody_admitted_is_not_forwarded()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit("line-2");

        var refused = Assert.Throws<JournalException>(() => mill.Forward(Mill.Line(3)));

        Assert.Equal(JournalTrouble.Denied, refused.Trouble);
        Assert.Contains("logbook server admit line-1", refused.Message, StringComparison.Ordinal);
    }

    [ServerFact]
    public void Who_may_read_may_not_forward_and_who_forwards_may_not_read()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(5);
        mill.Forward(line);
        Mill.Write(line, 2, from: 5);

        var reader = Assert.Throws<JournalException>(() => new Forwarder(line, mill.Reading, mill.Note("x"), mill.Clock).Run(LongWork.Unwatched));
        var forwarder = mill.As($"fw_{mill.Database}");
        var reads = Assert.Throws<JournalException>(() => new ServerJournal(forwarder, forwarder.Lines()[0]).Read().ToList());
        var stranger = Assert.Throws<JournalException>(() => mill.As($"other_{mill.Database}").Lines());

        foreach (var refused in (JournalException[])[reader, reads, stranger])
        {
            Assert.Equal(JournalTrouble.Denied, refused.Trouble);
            Assert.Contains("a right is missing", refused.Message, StringComparison.Ordinal);
            Assert.DoesNotContain('\n', refused.Message);
        }
    }

    [ServerFact]
    public void Who_forwards_one_line_may_not_forward_another_one()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit("line-2");
        ServerSchema.Admit(mill.Admin, Drafts.Line, $"other_{mill.Database}");

        var refused = Assert.Throws<JournalException>(() => mill.Forward(Mill.Line(3)));

        Assert.Equal(JournalTrouble.Denied, refused.Trouble);
        Assert.Equal(0L, there.Cluster.Scalar(mill.Database, "select count(*) from logbook.record"));
    }

    [ServerFact]
    public void Not_even_the_owner_changes_a_record_by_mistake()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(5);
        mill.Forward(line);

        foreach (var sql in (string[])["update logbook.record_1 set kind = 'x'", "delete from logbook.reading", "delete from logbook.record where seq = 5", "truncate logbook.record"])
            Assert.Equal("LB002", Assert.Throws<PostgresException>(() => there.Cluster.Execute(mill.Database, sql)).SqlState);
        mill.MustHold(line);
    }

    [ServerFact]
    public void What_was_altered_on_purpose_is_found_by_verification()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(8);
        mill.Forward(line);
        (string Sql, string Why)[] alterations =
        [
            ("insert into logbook.reading select chain, 9, n, point, at, value, unit, typed, why, derived, corrects from logbook.reading where seq = 7", "that never came"),
            ("update logbook.reading set value = 1 where seq = 7", "the readings beside it"),
            ("update logbook.record set at = at + interval '1 hour' where seq = 4", "columns that find it"),
            ("update logbook.record set bytes = convert_to(replace(convert_from(bytes, 'UTF8'), 'seen', 'gone'), 'UTF8') where seq = 1", "does not carry the hash"),
        ];
        foreach (var (sql, why) in alterations)
        {
            there.Cluster.Execute(mill.Database, $"set session_replication_role = replica; {sql}");

            var check = mill.Journal().Verify();

            Assert.False(check.Ok);
            Assert.Contains(why, check.Why, StringComparison.Ordinal);
        }
    }

    [ServerFact]
    public void A_database_without_the_tables_is_said_so()
    {
        var database = there.Cluster.NewDatabase();
        using var server = new Server(ServerAddress.Of(there.Cluster.ConnectionString(database, "lab"), "test").Value!);

        var missing = Assert.Throws<JournalException>(() => server.Lines());

        Assert.Contains("logbook server init", missing.Message, StringComparison.Ordinal);
    }
}
