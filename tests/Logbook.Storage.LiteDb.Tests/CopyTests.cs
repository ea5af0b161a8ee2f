using System.Text;
using Logbook.Journal;
using Logbook.Journal.Tests;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>A second journal with the same records: it is whole and proven, or it is not there.</summary>
public sealed class CopyTests : IDisposable
{
    private readonly TemporarySite _site = new();
    private readonly TemporarySite _other = new();

    public void Dispose()
    {
        _site.Dispose();
        _other.Dispose();
    }

    [Fact]
    public void A_copy_has_the_same_bytes_and_the_same_head_and_can_be_written_on()
    {
        Fill(700);
        var check = Copy(_site.Open());

        var copy = _other.Open();
        Assert.True(check.Ok, check.Why);
        Assert.Equal(_site.Open().Head, check.Head);
        Assert.Equal(Text(_site.Open()), Text(copy), StringComparer.Ordinal);
        Assert.True(copy.Verify().Ok, copy.Verify().Why);
        Assert.Equal(701, copy.Append(Say("goes on")).Seq);
    }

    [Fact]
    public async Task A_copy_beside_a_writer_at_full_speed_is_sound_and_has_everything_from_before_it_began()
    {
        Fill(50);
        using var done = new CancellationTokenSource();
        var writing = Task.Run(() =>
        {
            using var writer = new LiteDbJournal(_site.Path, "writer", TimeProvider.System, TimeSpan.FromMinutes(5));
            while (!done.IsCancellationRequested)
                writer.Append(Say(new string('x', 8000)));
        });

        for (var i = 0; i < 4; i++)
        {
            using var to = new TemporarySite();
            var before = _site.Open($"copier {i}").Head.Seq;
            var check = _site.Open($"copier {i}").CopyTo(to.Path, "copier", TimeSpan.Zero, LongWork.Unwatched);
            Assert.True(check.Ok, check.Why);
            Assert.True(check.Records >= before);
            Assert.Equal(check.Head, to.Open().Head);
        }

        await done.CancelAsync();
        await writing;
    }

    [Fact]
    public void Records_that_do_not_follow_one_another_make_no_journal()
    {
        Fill(20);
        var lines = _site.Open().Bytes().ToList();
        foreach (var (wrong, bad) in (((List<ReadOnlyMemory<byte>>, int)[])[
            (Changed(lines, 9), 11), // the next record does not carry its hash
            ([.. lines[..5], .. lines[6..]], 6),
            ([.. lines[1..]], 1),
            ([.. lines[..19], Encoding.UTF8.GetBytes("{}")], 20)]))
        {
            var check = JournalCopy.Make(wrong, noted: null, _other.Path, "tty1", TimeSpan.Zero, LongWork.Unwatched);

            Assert.Equal((false, bad), (check.Ok, (int)check.FirstBad!));
            Nothing(_other);
        }
    }

    [Fact]
    public void A_copy_that_does_not_reach_the_noted_head_is_refused()
    {
        Fill(20);
        var noted = _site.Open().Anchor();
        var check = JournalCopy.Make(_site.Open().Bytes().SkipLast(1), noted, _other.Path, "tty1", TimeSpan.Zero, LongWork.Unwatched);

        Assert.False(check.Ok);
        Nothing(_other);
    }

    [Fact]
    public void A_copy_that_is_stopped_leaves_nothing_and_the_next_one_works()
    {
        Fill(600);
        using var stop = new CancellationTokenSource();
        var work = new LongWork(
            reached =>
            {
                if (reached == 400)
                    stop.Cancel();
            },
            stop.Token);

        Assert.Throws<OperationCanceledException>(() => _site.Open().CopyTo(_other.Path, "tty1", TimeSpan.Zero, work));

        Nothing(_other);
        Assert.True(Copy(_site.Open()).Ok);
    }

    [Fact]
    public void What_a_killed_copy_left_is_no_journal_and_is_cleared_away_by_the_next()
    {
        Fill(5);
        var unfinished = Directory.CreateDirectory(_other.File("unfinished"));
        File.WriteAllText(Path.Combine(unfinished.FullName, "records.db"), "half a file");

        Assert.Equal(Head.Empty, _other.Open().Head);
        Assert.True(Copy(_site.Open()).Ok);
        Assert.False(unfinished.Exists && Directory.Exists(unfinished.FullName));
    }

    [Fact]
    public void A_journal_with_records_is_never_replaced()
    {
        Fill(5);
        using (var there = _other.Open())
            there.Append(Say("ours"));

        var refused = Assert.Throws<JournalException>(() => Copy(_site.Open()));

        Assert.Contains("there already", refused.Message, StringComparison.Ordinal);
        Assert.Equal("ours", ((Remark)_other.Open().Read().Single().Body).Text);
    }

    private ChainCheck Copy(LiteDbJournal from) => from.CopyTo(_other.Path, "tty1", TimeSpan.Zero, LongWork.Unwatched);

    private void Fill(int records)
    {
        using var journal = _site.Open();
        for (var i = 1; i <= records; i++)
            journal.Append(Drafts.Entry(Drafts.Morning.AddMinutes(i), $"SL-T1={i}"));
    }

    private static void Nothing(TemporarySite site)
    {
        Assert.Equal(Head.Empty, site.Open().Head);
        Assert.False(Directory.Exists(site.File("unfinished")));
    }

    private static List<ReadOnlyMemory<byte>> Changed(List<ReadOnlyMemory<byte>> lines, int index)
    {
        var changed = Encoding.UTF8.GetString(lines[index].Span).Replace("\"op1\"", "\"op2\"", StringComparison.Ordinal);
        return [.. lines[..index], Encoding.UTF8.GetBytes(changed), .. lines[(index + 1)..]];
    }

    private static RecordDraft Say(string text) => Drafts.Of(new Remark(text, null, null));

    private static IEnumerable<string> Text(LiteDbJournal journal) => journal.Bytes().Select(bytes => Convert.ToHexString(bytes.Span));
}
