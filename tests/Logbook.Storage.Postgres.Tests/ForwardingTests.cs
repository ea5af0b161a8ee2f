using CsCheck;
using Logbook.Journal;
using Logbook.Journal.Tests;
using Logbook.Testing;

namespace Logbook.Storage.Postgres.Tests;

/// <summary>What one or several runs bring to the server, and what they refuse.</summary>
[Collection(OnAServer.Name)]
public sealed class ForwardingTests(ClusterIfThere there)
{
    [ServerFact]
    public void The_server_holds_the_lines_own_bytes_and_comes_to_the_same_head()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(37);

        var first = mill.Forward(line, batch: 10);
        var again = mill.Forward(line);
        Mill.Write(line, 3, from: 37);
        var more = mill.Forward(line);

        Assert.Equal((Agreement.Whole, 37L), (first.Agreement, first.Sent));
        Assert.Equal((Agreement.Whole, 0L), (again.Agreement, again.Sent));
        Assert.Equal((Agreement.Whole, 3L), (more.Agreement, more.Sent));
        mill.MustHold(line);
    }

    [ServerFact]
    public void Whatever_a_record_holds_arrives_byte_for_byte()
    {
        using var mill = new Mill(there.Cluster);
        var lines = 0;
        Drafts.Any.Array[1, 12].Sample(
            drafts =>
            {
                var chain = $"any-{Interlocked.Increment(ref lines)}";
                using var line = new InMemoryJournal();
                foreach (var draft in drafts)
                    line.Append(draft with { Chain = chain });
                mill.Admit(chain);

                mill.Forward(line, batch: 5, chain);

                mill.MustHold(line, chain);
            },
            iter: 12, threads: 1);
    }

    [ServerFact]
    public void Two_forwarders_at_once_bring_each_record_once()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(120);
        var forwarders = new[] { mill.Forwarder(line, batch: 4), mill.Forwarder(line, batch: 7) };

        var reports = new ForwardReport[2];
        Parallel.For(0, 2, i => reports[i] = forwarders[i].Run(LongWork.Unwatched));

        Assert.All(reports, r => Assert.Equal(Agreement.Whole, r.Agreement));
        Assert.Equal(120, reports.Sum(r => r.Sent));
        mill.MustHold(line);
    }

    [ServerFact]
    public void A_server_that_was_set_back_to_an_older_copy_gets_what_it_lost_and_the_program_says_so()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(30);
        mill.Forward(line);
        using var restored = new Mill(there.Cluster); // the copy was made after record 20
        restored.Admit(Drafts.Line);
        restored.Forward(Mill.Line(20));
        File.Copy(mill.NotePath(Drafts.Line), restored.NotePath(Drafts.Line), overwrite: true); // the line's own note goes on

        var report = restored.Forward(line);

        Assert.Equal((Agreement.Whole, 10L, 10L), (report.Agreement, report.Sent, report.SetBack));
        Assert.Contains("set back to an older copy", report.Words[0], StringComparison.Ordinal);
        restored.MustHold(line);
    }

    [ServerFact]
    public void A_line_that_was_set_back_is_told_so_and_nothing_is_sent()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var whole = Mill.Line(30);
        mill.Forward(whole);
        using var older = Mill.Line(20);

        var report = mill.Forward(older);

        Assert.Equal((Agreement.Ahead, 0L), (report.Agreement, report.Sent));
        Assert.Contains("missing 10 are back", report.Words[0], StringComparison.Ordinal);
        mill.MustHold(whole);
    }

    [ServerFact]
    public void A_line_that_was_set_back_and_written_on_is_refused_and_shown_at_the_first_record_that_differs()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var whole = Mill.Line(30);
        mill.Forward(whole);
        foreach (var more in (int[])[3, 25])
        {
            using var forked = Mill.Line(20);
            Mill.Write(forked, more, from: 20, words: "written on an older copy");

            var report = mill.Forward(forked);

            Assert.Equal((Agreement.Differs, 0L, 21L), (report.Agreement, report.Sent, report.FirstDifference?.Seq));
            Assert.Contains("part at record 21", report.Words[0], StringComparison.Ordinal);
            Assert.Contains($"that arrived {mill.Clock.GetUtcNow().Year}-", report.Words[0], StringComparison.Ordinal);
        }

        mill.MustHold(whole);
    }

    [ServerFact]
    public void Another_line_of_the_same_name_is_refused_at_its_first_record()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(9);
        mill.Forward(line);

        var report = mill.Forward(Mill.Line(40, words: "another mill"));

        Assert.Equal((Agreement.Differs, 1L), (report.Agreement, report.FirstDifference?.Seq));
        mill.MustHold(line);
    }

    [ServerFact]
    public void A_clock_that_is_wrong_is_said_and_changes_nothing()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(12);
        mill.Clock.Advance(TimeSpan.FromHours(3));

        var report = mill.Forward(line);

        Assert.Contains("180 minutes", report.Words[^1], StringComparison.Ordinal);
        Assert.Contains("before the server's", report.Words[^1], StringComparison.Ordinal);
        mill.MustHold(line);
    }

    [ServerFact]
    public void A_record_that_does_not_follow_is_refused_by_the_server_itself_whatever_program_sends_it()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(10);
        mill.Forward(line);
        using var other = Mill.Line(12, words: "another");
        var stray = other.Read(11).ToList();

        using (var turn = Turn.Take(mill.As($"fw_{mill.Database}"), Drafts.Line, alone: true))
            Assert.Equal(ServerFault.DoesNotFollow, Assert.Throws<Npgsql.PostgresException>(() => turn.Add(stray)).SqlState);
        mill.MustHold(line);
    }
}
