using Logbook.Journal;
using Logbook.Journal.Tests;
using Logbook.Testing;

namespace Logbook.Storage.Postgres.Tests;

/// <summary>Whatever breaks, and whenever: nothing is lost, nothing is there twice, and one clear line says what happened.</summary>
[Collection(OnAServer.Name)]
public sealed class TroubleTests(ClusterIfThere there)
{
    private const int Records = 18;
    private const int Batch = 9;

    [ServerFact]
    public void A_connection_that_is_cut_at_any_message_of_the_client_costs_nothing() => CutEverywhere(fromServer: false);

    [ServerFact]
    public void A_connection_that_is_cut_at_any_message_of_the_server_costs_nothing() => CutEverywhere(fromServer: true);

    [ServerFact]
    public void A_server_that_is_killed_in_the_middle_of_a_batch_has_whole_batches_afterwards_and_gets_the_rest()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(60);
        using var killing = new Killing(line, at: 33, there.Cluster.Kill);

        var trouble = Assert.Throws<JournalException>(() => mill.Forwarder(killing, batch: 10).Run(LongWork.Unwatched));
        var away = Assert.Throws<JournalException>(() => mill.Forward(line));
        var noted = mill.Note(Drafts.Line).Read();
        there.Cluster.Start();
        var after = mill.Journal().Head;
        var report = mill.Forward(line);

        Assert.Equal(JournalTrouble.Away, trouble.Trouble);
        Assert.Equal(JournalTrouble.Away, away.Trouble);
        Assert.Contains("the server is away", away.Message, StringComparison.Ordinal);
        Assert.Contains(after.Seq, (long[])[20, 30]); // the batch that was on its way came whole or not at all
        Assert.InRange(noted!.Head.Seq, 20, after.Seq);
        Assert.Equal((Agreement.Whole, 60 - after.Seq), (report.Agreement, report.Sent));
        mill.MustHold(line);
    }

    [SmallDiskFact]
    public void A_full_disk_on_the_server_is_said_so_and_what_it_acknowledged_stays()
    {
        var folder = there.Cluster.NewFolder("small");
        Assert.True(Cluster.Call("mount", "-t", "tmpfs", "-o", $"size=16m,mode=700,uid={Owner()}", "tmpfs", folder), "a small disk could not be mounted");
        try
        {
            there.Cluster.Execute("postgres", $"create tablespace small location '{folder}'");
            using (var mill = new Mill(there.Cluster, "tablespace small"))
            {
                mill.Admit(Drafts.Line);
                using var line = new InMemoryJournal();
                for (var i = 0; i < 400; i++)
                    line.Append(Drafts.Of(new Remark(Noise(i), null, null), Drafts.Morning.AddMinutes(i)));

                var trouble = Assert.Throws<JournalException>(() => mill.Forward(line, batch: 20));

                Assert.Equal(JournalTrouble.Full, trouble.Trouble);
                Assert.Contains("disk is full", trouble.Message, StringComparison.Ordinal);
                var head = mill.Journal().Head;
                Assert.InRange(head.Seq, 20, 380);
                Assert.Equal(line.Read(head.Seq).First().Hash, head.Hash);

                Assert.True(Cluster.Call("mount", "-o", "remount,size=256m", folder));
                Assert.Equal(Agreement.Whole, mill.Forward(line).Agreement);
                mill.MustHold(line);
                there.Cluster.Execute("postgres", $"drop database {mill.Database} with (force)");
            }

            there.Cluster.Execute("postgres", "drop tablespace small");
        }
        finally
        {
            Cluster.Call("umount", "-l", folder);
        }
    }

    private void CutEverywhere(bool fromServer)
    {
        using var mill = new Mill(there.Cluster);
        using var proxy = new CuttingProxy(there.Cluster.Port, fromServer);
        Run("first", 0); // asks the server for its types, once
        var messages = Run("uncut", 0).Messages;
        Assert.True(messages > 20, $"only {messages} messages were seen");

        var troubles = Enumerable.Range(1, messages).Select(at => Run($"cut-{at}", at).Trouble).ToList();

        Assert.All(troubles.OfType<JournalException>(), trouble => Assert.Equal(JournalTrouble.Away, trouble.Trouble));
        Assert.True(troubles.Count(t => t is null) <= messages / 10, $"of {messages} cuts these were not felt: {string.Join(' ', troubles.Index().Where(t => t.Item is null).Select(t => t.Index + 1))}");

        (int Messages, JournalException? Trouble) Run(string chain, int cutAt)
        {
            mill.Admit(chain);
            using var line = Mill.Line(Records, chain);
            proxy.Arm(cutAt);
            var trouble = Trouble(() => mill.Forwarder(line, Batch, proxy.Port, chain).Run(LongWork.Unwatched));
            var seen = proxy.Messages;
            var before = Settled(mill, chain);
            Assert.Contains(before.Seq, (long[])[0, Batch, Records]);

            var report = mill.Forward(line, Batch, chain);

            Assert.Equal((Agreement.Whole, Records - before.Seq), (report.Agreement, report.Sent));
            mill.MustHold(line, chain);
            return (seen, trouble);
        }
    }

    private static JournalException? Trouble(Action work)
    {
        try
        {
            work();
            return null;
        }
        catch (JournalException trouble)
        {
            return trouble;
        }
    }

    /// <summary>The end there, once the server has done with what was cut.</summary>
    private static Head Settled(Mill mill, string chain)
    {
        using var turn = Turn.Take(mill.As($"fw_{mill.Database}"), chain, alone: true);
        return turn.Line!.Head;
    }

    private static string Owner() => string.Equals(Environment.UserName, "root", StringComparison.Ordinal) ? "postgres" : Environment.UserName;

    private static string Noise(int seed)
    {
        var bytes = new byte[40_000];
        new Random(seed).NextBytes(bytes);
        return Convert.ToHexString(bytes);
    }

    /// <summary>A journal at whose record something happens when it is read.</summary>
    private sealed class Killing(InMemoryJournal line, long at, Action kill) : IJournalStore
    {
        private bool _done;

        public Head Head => line.Head;

        public JournalRecord Append(RecordDraft draft) => line.Append(draft);

        public IEnumerable<JournalRecord> Read(long fromSeq = 1)
        {
            foreach (var record in line.Read(fromSeq))
            {
                if (record.Seq == at && !_done)
                {
                    _done = true;
                    kill();
                }

                yield return record;
            }
        }

        public IEnumerable<ReadOnlyMemory<byte>> Bytes(long fromSeq = 1) => line.Bytes(fromSeq);

        public ChainCheck Verify(LongWork? work = null) => line.Verify(work);

        public IEnumerable<JournalRecord> Between(DateTimeOffset from, DateTimeOffset to) => line.Between(from, to);

        public IReadOnlyList<SeriesValue> Series(string point, DateTimeOffset from, DateTimeOffset to, long upTo = long.MaxValue) => line.Series(point, from, to, upTo);

        public IEnumerable<JournalRecord> Corrections(long first, long last) => line.Corrections(first, last);

        public State Snapshot(long upTo = long.MaxValue) => line.Snapshot(upTo);

        public void Keep(State state) => line.Keep(state);

        public void Dispose()
        {
            // The line is the test's.
        }
    }
}
