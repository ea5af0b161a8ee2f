using CsCheck;
using Logbook.Journal;
using Logbook.Journal.Tests;
using Logbook.Testing;

namespace Logbook.Storage.LiteDb.Tests;

public sealed class LiteDbJournalTests : IDisposable
{
    private readonly TemporarySite _site = new();

    public void Dispose() => _site.Dispose();

    [Fact]
    public void Reading_a_fresh_site_finds_nothing_and_creates_nothing()
    {
        var journal = _site.Open();

        Assert.Equal(Head.Empty, journal.Head);
        Assert.Empty(journal.Read());
        Assert.Empty(journal.Series("SL-T1", DateTimeOffset.MinValue, DateTimeOffset.MaxValue));
        Assert.Empty(journal.Between(DateTimeOffset.MinValue, DateTimeOffset.MaxValue));
        Assert.True(journal.Verify().Ok);
        Assert.Empty(Directory.GetFileSystemEntries(_site.Path));
    }

    [Fact]
    public void What_was_appended_is_read_again_byte_for_byte_by_another_terminal()
    {
        Drafts.Any.Array[1, 8].Sample(
            drafts =>
            {
                using var site = new TemporarySite();
                var written = drafts.Select(site.Open().Append).ToList();

                var other = site.Open("control-room:tty2");
                Assert.Equal(written.Select(r => Convert.ToHexString(r.Bytes.Span)), other.Bytes().Select(b => Convert.ToHexString(b.Span)), StringComparer.Ordinal);
                Assert.Equal(Head.Of(written[^1]), other.Head);
                Assert.True(other.Verify().Ok, other.Verify().Why);
            },
            iter: 10);
    }

    [Fact]
    public void The_journal_agrees_with_the_one_in_memory_on_lists_by_time_and_series()
    {
        // Entries and corrections at random hours around a range; readings older than their entry, and corrections that move them.
        var hour = Gen.Int[0, 30].Select(h => Drafts.Morning.AddHours(h));
        var entry = Gen.Select(hour, hour, Gen.Int[90, 110], (at, read, value) => Drafts.Entry(at) with
        {
            Body = new Entry { Readings = [Drafts.Read($"SL-T1={value}", read)], Results = [Drafts.Derived("WL-CE", value)] },
        });
        var correction = Gen.Select(Gen.Long[1, 12], hour, Gen.Int[90, 110], Gen.Bool, (target, read, value, result) =>
            Drafts.Of(Correction.Of(target, value % 2 == 0 ? [Drafts.Read($"SL-T1={value}", read)] : [Drafts.Read("SL-F1=-", read), Drafts.Read($"SL-T1={value}", read)], "misread", result ? [Drafts.Derived("WL-CE", value)] : [], []), read));

        Gen.OneOf(entry, entry, correction).Array[12, 24].Sample(
            drafts =>
            {
                using var site = new TemporarySite();
                using var memory = new InMemoryJournal();
                var disk = site.Open();
                foreach (var draft in drafts)
                    Assert.Equal(memory.Append(draft).Hash, disk.Append(draft).Hash);

                var (from, to) = (Drafts.Morning.AddHours(8), Drafts.Morning.AddHours(20).AddMinutes(1));
                Assert.Equal(memory.Between(from, to).Select(r => r.Seq), disk.Between(from, to).Select(r => r.Seq));
                Assert.Equal(memory.Series("SL-T1", from, to), disk.Series("sl-t1", from, to));
                Assert.Equal(memory.Series("WL-CE", from, to), disk.Series("WL-CE", from, to));
            },
            iter: 10);
    }

    [Fact]
    public void A_long_journal_survives_its_checkpoints_and_is_read_in_batches()
    {
        var journal = _site.Open();
        var longRemark = Convert.ToHexString(Incompressible(10_000));
        for (var i = 0; i < 1300; i++)
            journal.Append(Drafts.Of(new Remark(i % 10 == 0 ? longRemark : "short", null, null), Drafts.Morning.AddMinutes(i)));

        Assert.Null(journal.Warning);
        Assert.True(new FileInfo(_site.File("records.db")).Length > 1_000_000); // checkpoints brought it there
        Assert.Equal(Enumerable.Range(1, 1300).Select(i => (long)i), _site.Open("b").Read().Select(r => r.Seq));
        Assert.Equal(600, _site.Open("b").Between(Drafts.Morning.AddMinutes(100), Drafts.Morning.AddMinutes(700)).Count());
        Assert.True(journal.Verify().Ok);
    }

    private static byte[] Incompressible(int length)
    {
        var bytes = new byte[length];
        new Random(1).NextBytes(bytes);
        return bytes;
    }

    [Fact]
    public void A_record_of_another_line_is_refused()
    {
        var journal = _site.Open();
        journal.Append(Drafts.Of(new Remark("ours", null, null)));

        var refused = Assert.Throws<JournalException>(() => journal.Append(Drafts.Of(new Remark("theirs", null, null)) with { Chain = "line-2" }));

        Assert.Contains("'line-1'", refused.Message, StringComparison.Ordinal);
        Assert.Equal(1, journal.Head.Seq);
        Assert.Equal(2, journal.Append(Drafts.Of(new Remark("ours again", null, null))).Seq);
    }
}
