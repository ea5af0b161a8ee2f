using Logbook.Journal;

namespace Logbook.Storage.Postgres;

/// <summary>
/// Sends a line's records to the server, in order. Each run begins at the end that the server itself holds, so a cut, a
/// restart or a second forwarder neither loses a record nor brings one twice; nothing here depends on what was sent before.
/// </summary>
/// <param name="line">The line's journal.</param>
/// <param name="note">Where the acknowledged end is noted.</param>
/// <param name="clock">This terminal's.</param>
public sealed class Forwarder(IJournalStore line, Server server, ForwardNote note, TimeProvider clock)
{
    private const int UsualBatch = 500;
    private const int MostBytes = 4 << 20;

    // A state is larger than a day's records: what a reader replays in its place is a hundredth of a second.
    private const int KeepOften = 16;
    private const int KeepAlways = 4096;

    private (Head After, Task<List<JournalRecord>> Records)? _next;

    /// <summary>Records sent at once.</summary>
    public int MostRecords { get; init; } = UsualBatch;

    /// <summary>How the two stand, without sending anything.</summary>
    /// <exception cref="JournalException">The server is away, or something is missing there.</exception>
    public ForwardReport Look() => Guarded(() => ChainHere() is not { } chain ? Empty : WithTurn(chain, alone: false, Compare));

    /// <summary>Sends everything that is not there, batch by batch.</summary>
    /// <exception cref="JournalException">The server is away, or did not take a batch: what it had acknowledged before is there.</exception>
    public ForwardReport Run(LongWork work) => Guarded(() =>
    {
        try
        {
            return ChainHere() is { } chain ? Send(chain, work) : Empty;
        }
        finally
        {
            // Whoever called may close the journal now: nobody reads in it any more.
            _next?.Records.ContinueWith(_ => { }, TaskScheduler.Default).Wait();
            _next = null;
        }
    });

    private static ForwardReport Empty => new("", Agreement.Empty, Head.Empty, Head.Empty, 0, 0, TimeSpan.Zero, null);

    private static T Guarded<T>(Func<T> work) => ServerFault.Guard("not forwarded", work);

    private ForwardReport Send(string chain, LongWork work)
    {
        var (sent, setBack) = (0L, 0L);
        for (var first = true; ; first = false)
        {
            var report = WithTurn(chain, alone: true, turn =>
            {
                var before = Compare(turn);
                return before.Agreement == Agreement.Behind ? AfterBatch(turn, before) : before;
            });
            (sent, setBack) = (sent + report.Sent, first ? report.SetBack : setBack);
            if (report.Agreement is Agreement.Whole or Agreement.Behind)
                note.Write(report.There, clock.GetUtcNow());
            if (report.Agreement != Agreement.Behind)
            {
                KeepAt(chain, report.There.Seq - sent, report.There.Seq, KeepOften, report.There.Seq);
                return report with { Sent = sent, SetBack = setBack };
            }

            KeepAt(chain, report.There.Seq - report.Sent, report.There.Seq, KeepAlways, report.There.Seq / KeepAlways * KeepAlways);
            work.Reached(report.There.Seq);
        }
    }

    private string? ChainHere() => line.Read().FirstOrDefault()?.Chain;

    private T WithTurn<T>(string chain, bool alone, Func<Turn, T> action)
    {
        using var turn = Turn.Take(server, chain, alone);
        return turn.Line is null
            ? throw new JournalException(JournalTrouble.Denied, $"the server does not know {chain}: an administrator admits it with 'logbook server admit {chain} --forwarder ROLE'")
            : action(turn);
    }

    private ForwardReport Compare(Turn turn)
    {
        var there = turn.Line!.Head;
        var here = line.Head; // after the server's end: this one only grows, so an end that lies before it is a real one
        var common = Math.Min(there.Seq, here.Seq);
        var acknowledged = note.Read()?.Head.Seq ?? 0;
        var report = new ForwardReport(
            turn.Line.Chain, Agreement.Differs, here, there, 0, Math.Max(0, Math.Min(acknowledged, here.Seq) - there.Seq), clock.GetUtcNow() - turn.Clock, null);
        if (HashHere(common) != turn.HeadAt(common)?.Hash)
            return report with { FirstDifference = FirstDifference(turn, common) };
        return report with { Agreement = there.Seq == here.Seq ? Agreement.Whole : there.Seq < here.Seq ? Agreement.Behind : Agreement.Ahead };
    }

    private ForwardReport AfterBatch(Turn turn, ForwardReport before)
    {
        var batch = _next is { } read && read.After == before.There ? read.Records.GetAwaiter().GetResult() : Batch(before.There);
        var there = Head.Of(batch[^1]);
        _next = there.Seq < before.Line.Seq ? (there, Task.Run(() => Batch(there))) : null; // while the server is at work
        turn.Add(batch);
        return before with { There = there, Sent = batch.Count, Agreement = there.Seq < before.Line.Seq ? Agreement.Behind : Agreement.Whole };
    }

    private List<JournalRecord> Batch(Head there)
    {
        var (batch, bytes) = (new List<JournalRecord>(), 0);
        foreach (var record in line.Read(there.Seq + 1))
        {
            if (Chain.WhyNot(record, batch.Count == 0 ? there : Head.Of(batch[^1])) is { } why)
                throw new JournalException(JournalTrouble.Damaged, $"the journal here is not sound, so it is not forwarded from there on: {why}");
            batch.Add(record);
            bytes += record.Bytes.Length;
            if (batch.Count == MostRecords || bytes >= MostBytes)
                break;
        }

        return batch;
    }

    /// <summary>Readers find a state near the end, and one every few thousand records for looks at the past: kept when that many more have come.</summary>
    private void KeepAt(string chain, long from, long to, int every, long seq)
    {
        if (from / every == to / every)
            return;
        var state = Replay.UpTo(line, seq);
        WithTurn(chain, alone: false, turn =>
        {
            turn.Keep(state);
            return true;
        });
    }

    private string HashHere(long seq) => seq == 0 ? Head.Empty.Hash : JournalRecord.HashOf(line.Bytes(seq).First().Span);

    /// <summary>Where they agree they agree from the first record on, since each carries the hash of the one before: halving finds the place.</summary>
    private Difference FirstDifference(Turn turn, long common)
    {
        var (same, other) = (0L, common);
        while (other - same > 1)
        {
            var middle = (same + other) / 2;
            if (HashHere(middle) == turn.HeadAt(middle)?.Hash)
                same = middle;
            else
                other = middle;
        }

        return turn.Against(line.Read(other).First());
    }
}
