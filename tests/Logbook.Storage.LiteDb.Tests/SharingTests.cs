using Logbook.Journal;
using Logbook.Journal.Tests;

namespace Logbook.Storage.LiteDb.Tests;

public sealed class SharingTests : IDisposable
{
    private readonly TemporarySite _site = new();

    public void Dispose() => _site.Dispose();

    [Fact]
    public void A_second_writer_is_refused_with_the_name_of_the_first()
    {
        _site.Open("control-room:tty1").Append(Say("one"));

        var refused = Assert.Throws<JournalException>(() => _site.Open("control-room:tty2").Append(Say("two")));

        Assert.Equal(JournalTrouble.Busy, refused.Trouble);
        Assert.Contains($"control-room:tty1, process {Environment.ProcessId}", refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', refused.Message);
    }

    [Fact]
    public void A_screen_left_open_gives_the_turn_away_after_two_idle_seconds()
    {
        var (screen, other) = (_site.Open("screen"), _site.Open("other"));
        screen.Append(Say("one"));

        _site.Clock.Advance(TimeSpan.FromSeconds(2));

        Assert.Equal(2, other.Append(Say("two")).Seq);
        Assert.Throws<JournalException>(() => screen.Append(Say("three")));
        _site.Clock.Advance(TimeSpan.FromSeconds(2));
        Assert.Equal(3, screen.Append(Say("three")).Seq);
        Assert.Equal(3, other.Head.Seq);
    }

    [Fact]
    public void A_reader_sees_each_save_while_the_writer_holds_its_turn()
    {
        var (writer, reader) = (_site.Open("writer"), _site.Open("reader"));

        for (var i = 1; i <= 20; i++)
        {
            var head = Head.Of(writer.Append(Say($"{i}")));
            Assert.Equal(head, reader.Head);
            Assert.Equal(i, reader.Read(i).Single().Seq);
        }
    }

    [Fact]
    public async Task A_terminal_that_saves_without_a_pause_does_not_lock_the_others_out()
    {
        using var done = new CancellationTokenSource();
        var importing = Task.Run(() =>
        {
            using var import = new LiteDbJournal(_site.Path, "import", TimeProvider.System, TimeSpan.FromMinutes(5));
            while (!done.IsCancellationRequested)
                import.Append(Say("a row of a long file"));
        });

        using (var other = new LiteDbJournal(_site.Path, "tty2", TimeProvider.System, TimeSpan.FromMinutes(5)))
        {
            for (var i = 0; i < 3; i++)
                other.Append(Say("in between")); // would never come back
        }

        await done.CancelAsync();
        await importing;
        Assert.Equal(3, _site.Open().Read().Count(record => record.Body is Remark { Text: "in between" }));
    }

    [Fact]
    public void Two_terminals_that_save_at_once_lose_nothing()
    {
        const int each = 40;
        string[] terminals = ["tty1", "tty2"];

        Parallel.ForEach(terminals, terminal =>
        {
            for (var i = 0; i < each; i++)
            {
                // Each save as a command of its own: open, wait for the turn, save, close.
                using var journal = new LiteDbJournal(_site.Path, terminal, TimeProvider.System, TimeSpan.FromMinutes(5));
                journal.Append(Say($"{terminal} {i}"));
            }
        });

        var said = _site.Open().Read().Select(record => ((Remark)record.Body).Text).ToList();
        Assert.Equal(2 * each, said.Count);
        foreach (var terminal in terminals)
            Assert.Equal(Enumerable.Range(0, each).Select(i => $"{terminal} {i}"), said.Where(text => text.StartsWith(terminal, StringComparison.Ordinal)), StringComparer.Ordinal);
        Assert.True(_site.Open().Verify().Ok);
    }

    [Fact]
    public async Task A_reader_beside_a_writer_at_full_speed_always_sees_a_sound_chain()
    {
        using var done = new CancellationTokenSource();
        var writing = Task.Run(async () =>
        {
            using var writer = new LiteDbJournal(_site.Path, "writer", TimeProvider.System, TimeSpan.FromMinutes(5));
            for (var i = 0; i < 600; i++)
                writer.Append(Say(new string('x', 8000))); // large enough for several checkpoints
            await done.CancelAsync();
        });

        var reader = _site.Open("reader");
        var before = 0L;
        while (!done.IsCancellationRequested)
        {
            var check = reader.Verify();
            Assert.True(check.Ok, check.Why);
            Assert.True(check.Records >= before);
            before = check.Records;
        }

        await writing;
        Assert.Equal(600, reader.Verify().Records);
    }

    private static RecordDraft Say(string text) => Drafts.Of(new Remark(text, null, null));
}
