using Logbook.Checks;
using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Screens.Tests;

public sealed class DraftTests
{
    [Fact]
    public void A_draft_outlives_its_session_and_is_offered_to_the_next()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎302⏎18").Crash();
        Assert.Empty(terminal.Entries);
        terminal.Press("⎋").Size(80, 24);
        terminal.Crash();
        Assert.Contains("Who is typing?", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("op1⏎");
        Assert.Contains("Line round: 2 readings", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⏎18.95⏎⎋");

        Assert.Equal("SL-T1=99.8 SL-F1=302 LM-F1=18.95", terminal.Typed);
        Assert.Single(terminal.Entries);
        Assert.Empty(Directory.GetFiles(terminal.Folder));
    }

    [Fact]
    public void A_draft_that_was_left_behind_can_be_saved_as_it_is()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎mnoisy⏎").At(20).Crash().Press("op1⏎v");

        var entry = Assert.Single(terminal.Entries);
        Assert.Equal(Some.Morning.AddMinutes(5), Assert.Single(entry.Readings).At);
        Assert.Equal("SL-F1: noisy", entry.Remark);
    }

    [Fact]
    public void Nobody_goes_on_under_the_name_of_another()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎").Crash().Press("eng1⏎⏎");
        Assert.IsType<LeftPage>(terminal.State.Top);
        Assert.Contains("Operator one typed it", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("v");

        Assert.Equal("op1", terminal.Journal.Read().Last().By);
        Assert.Equal("eng1", terminal.State.By);
    }

    [Fact]
    public void A_draft_put_off_stays_and_Now_says_so()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎").Crash().Press("op1⏎⎋");
        Assert.Contains("UNSAVED", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("u");

        Assert.IsType<LeftPage>(terminal.State.Top);
    }

    [Fact]
    public void What_the_journal_has_is_not_offered_again()
    {
        using var terminal = new Terminal();
        terminal.Open("Line round").Press("99.8⏎302⏎");
        var draft = Assert.Single(Directory.GetFiles(terminal.Folder));
        var kept = terminal.State.Draft!.Lines.Select(l => l.ToJson()).ToList();
        terminal.Crash().Press("op1⏎v");

        // As if the session had ended between its save and the end of its draft.
        File.WriteAllLines(draft, kept);
        terminal.Crash();

        Assert.Empty(terminal.State.Left);
        Assert.Empty(Directory.GetFiles(terminal.Folder));
    }

    [Fact]
    public void A_line_that_was_torn_was_never_acknowledged_and_costs_nothing_else()
    {
        using var terminal = new Terminal();
        terminal.Open("Line round").Press("99.8⏎302⏎");
        var draft = Assert.Single(Directory.GetFiles(terminal.Folder));
        var lines = terminal.State.Draft!.Lines.Select(l => l.ToJson()).ToList();

        terminal.Crash(between: () => File.WriteAllText(draft, lines[0] + "\n" + lines[1][..20])).Press("op1⏎⏎305⏎⎋");

        Assert.Equal("SL-T1=99.8 SL-F1=305", terminal.Typed);
    }

    [Fact]
    public void A_draft_that_another_session_holds_is_not_touched()
    {
        using var terminal = new Terminal();
        terminal.Open("Line round").Press("99.8⏎");

        using var other = new DraftFolder(terminal.Folder, "host:tty9");

        Assert.Empty(other.Left);
    }

    [Fact]
    public void Ten_idle_minutes_save()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎").Tick(9);
        Assert.Empty(terminal.Entries);
        terminal.Tick(1);

        Assert.Equal("SL-T1=99.8", terminal.Typed);
        Assert.IsType<RoundPage>(terminal.State.Top);
    }

    [Fact]
    public void A_sample_that_is_half_typed_does_not_go_with_an_urgent_finding()
    {
        using var terminal = new Terminal(before: t => t.Record(null, "WL-A=29.4", "WL-B=34.3", "WL-C=39.7"));
        terminal.Open("White liquor titration").Press("29.37⏎34.33⏎");
        var (page, draft) = (terminal.Round, terminal.State.Draft!);

        // Another row of the same round turns urgent while the sample waits for its last end point.
        var setting = new Setting(terminal.Desk.Now, r => RecordEntry.Judge(terminal.Desk, r with { Round = null }));
        var hot = new RoundRow(terminal.Desk.Site.FindPoint("SL-T1")!);
        page = (page with { Rows = page.Rows.Add(hot) }).MoveTo(3);
        var next = Entering.Take(terminal.State, page, page.Line(terminal.State, "103.4", setting.Now), setting);

        var saved = Assert.Single(next.Effects.OfType<SaveEntry>()).Request;
        Assert.Equal("SL-T1", Assert.Single(saved.Readings).Point);
        Assert.Equal(2, draft.Readings);
    }

    [Fact]
    public void A_store_that_is_busy_loses_nothing_and_is_tried_again()
    {
        var store = new BusyJournal(new InMemoryJournal());
        using var terminal = new Terminal(journal: store);

        store.Busy = true;
        terminal.Open("Line round").Press("99.8⏎⎋");
        Assert.Contains("NOT SAVED, kept in the draft: the journal is being written by host:tty7", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("1 reading typed and not saved", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⎋");
        Assert.Contains("UNSAVED", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("q");
        Assert.False(terminal.Conversation.Over);
        Assert.Contains("unsaved: Line round: 1 reading", terminal.Screen, StringComparison.Ordinal);
        store.Busy = false;
        terminal.Tick(1);

        Assert.Equal("SL-T1=99.8", terminal.Typed);
        Assert.Null(terminal.State.Draft);
    }

    [Fact]
    public void What_cannot_be_put_on_the_disk_is_said()
    {
        using var terminal = new Terminal();
        terminal.Open("Line round");
        Directory.Delete(terminal.Folder);
        File.WriteAllText(terminal.Folder, "in the way");

        terminal.Press("99.8⏎");

        Assert.Contains("NOT ON THE DISK", terminal.Screen, StringComparison.Ordinal);
        File.Delete(terminal.Folder);
        Directory.CreateDirectory(terminal.Folder);
    }

    /// <summary>A journal that another terminal may be writing.</summary>
    private sealed class BusyJournal(IJournalStore store) : IJournalStore
    {
        public bool Busy { get; set; }

        public Head Head => store.Head;

        public JournalRecord Append(RecordDraft draft) =>
            Busy ? throw new JournalException(JournalTrouble.Busy, "the journal is being written by host:tty7") : store.Append(draft);

        public IEnumerable<JournalRecord> Read(long fromSeq = 1) => store.Read(fromSeq);

        public IEnumerable<ReadOnlyMemory<byte>> Bytes(long fromSeq = 1) => store.Bytes(fromSeq);

        public ChainCheck Verify(LongWork? work = null) => store.Verify(work);

        public IEnumerable<JournalRecord> Between(DateTimeOffset from, DateTimeOffset to) => store.Between(from, to);

        public IReadOnlyList<SeriesValue> Series(string point, DateTimeOffset from, DateTimeOffset to, long upTo = long.MaxValue) => store.Series(point, from, to, upTo);

        public IEnumerable<JournalRecord> Corrections(long first, long last) => store.Corrections(first, last);

        public State Snapshot(long upTo = long.MaxValue) => store.Snapshot(upTo);

        public void Keep(State state) => store.Keep(state);

        public void Dispose() => store.Dispose();
    }
    [Fact]
    public void The_last_line_says_what_is_unsaved_and_what_ended_the_screen()
    {
        using var terminal = new Terminal();
        Assert.Equal("Left; nothing is unsaved.", terminal.Conversation.Parting(null));

        terminal.Open("Line round").Press("99.8⏎");
        Assert.Equal("Ended by SIGTERM; not saved, and offered again: Line round: 1 reading of Operator one, 09:05 to 09:05.", terminal.Conversation.Parting("SIGTERM"));
        terminal.Crash();

        Assert.StartsWith("Left; not saved, and offered again: Line round: 1 reading", terminal.Conversation.Parting(null), StringComparison.Ordinal);
    }
}
