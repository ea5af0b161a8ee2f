using CsCheck;
using Logbook.Journal;
using Logbook.Journal.Tests;
using Logbook.Testing;

namespace Logbook.Storage.Postgres.Tests;

/// <summary>What is read from the server is what the line's own journal answers.</summary>
[Collection(OnAServer.Name)]
public sealed class ServerJournalTests(ClusterIfThere there)
{
    [ServerFact]
    public void It_agrees_with_the_journal_in_memory_on_lists_by_time_series_and_corrections()
    {
        using var mill = new Mill(there.Cluster);
        var lines = 0;
        var hour = Gen.Int[0, 30].Select(h => Drafts.Morning.AddHours(h));
        var entry = Gen.Select(hour, hour, Gen.Int[90, 110], Gen.Bool, (at, read, value, derived) => Drafts.Entry(at) with
        {
            Body = new Entry { Readings = [Drafts.Read($"SL-T1={value}", read)], Results = derived ? [Drafts.Derived("WL-CE", value)] : [] },
        });
        var correction = Gen.Select(Gen.Long[1, 12], hour, Gen.Int[90, 110], Gen.Bool, (target, read, value, result) =>
            Drafts.Of(Correction.Of(target, value % 2 == 0 ? [Drafts.Read($"SL-T1={value}", read)] : [Drafts.Read("SL-F1=-", read), Drafts.Read($"SL-T1={value}", read)], "misread", result ? [Drafts.Derived("WL-CE", value)] : [], []), read));

        Gen.OneOf(entry, entry, correction).Array[12, 24].Sample(
            drafts =>
            {
                var chain = $"any-{Interlocked.Increment(ref lines)}";
                using var memory = new InMemoryJournal();
                foreach (var draft in drafts)
                    memory.Append(draft with { Chain = chain });
                mill.Admit(chain);
                mill.Forward(memory, chain: chain);
                var server = mill.Journal(chain);

                var (from, to) = (Drafts.Morning.AddHours(8), Drafts.Morning.AddHours(20).AddMinutes(1));
                Assert.Equal(memory.Between(from, to).Select(r => r.Seq), server.Between(from, to).Select(r => r.Seq));
                Assert.Equal(memory.Series("SL-T1", from, to), server.Series("sl-t1", from, to));
                Assert.Equal(memory.Series("WL-CE", from, to), server.Series("WL-CE", from, to));
                Assert.Equal(memory.Series("WL-CE", from, to, upTo: 9), server.Series("WL-CE", from, to, upTo: 9));
                Assert.Equal(memory.Corrections(3, 9).Select(r => r.Seq), server.Corrections(3, 9).Select(r => r.Seq));
                Assert.Equal(memory.Read(5).Select(r => r.Hash), server.Read(5).Select(r => r.Hash), StringComparer.Ordinal);
            },
            iter: 15, threads: 1);
    }

    [ServerFact]
    public void The_state_that_the_forwarder_keeps_is_the_one_that_follows_from_the_records()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        using var line = Mill.Line(90);
        mill.Forward(line, batch: 20);

        var kept = mill.Journal().Snapshot();

        Assert.Equal(line.Head, kept.Head);
        Assert.Equal(StateForm.Write(Replay.Forward(line, State.Empty)), StateForm.Write(kept));
        Assert.Equal(State.Empty.Head, mill.Journal().Snapshot(upTo: 89).Head);
    }

    [ServerFact]
    public void Nothing_is_written_through_it()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);

        Assert.Throws<JournalException>(() => mill.Journal().Append(Drafts.Of(new Remark("x", null, null))));
        Assert.Equal(Head.Empty, mill.Journal().Head);
        Assert.Empty(mill.Journal().Read());
        Assert.True(mill.Journal().Verify().Ok);
    }
}
