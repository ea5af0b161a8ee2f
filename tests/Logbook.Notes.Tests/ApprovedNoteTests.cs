using Logbook.Handover;
using Logbook.Handover.Tests;

namespace Logbook.Notes.Tests;

public class ApprovedNoteTests
{
    [Theory]
    [InlineData(NoteFormat.Text, "troubled-night.text")]
    [InlineData(NoteFormat.Markdown, "troubled-night.md")]
    [InlineData(NoteFormat.Html, "troubled-night.html")]
    public void The_note_of_the_troubled_night_reads_as_approved(NoteFormat format, string name)
    {
        using var line = TroubledNight.Write();
        // The chain's head depends on every byte of the journal; here the words are looked at.
        var note = HandoverNote.Of(line.Desk, line.Desk.Now) with { Head = new string('0', 64) };

        Approved.Matches(name, Notes.Write(note, format));
    }

    [Theory]
    [InlineData(NoteFormat.Text, "long-night.text")]
    [InlineData(NoteFormat.Markdown, "long-night.md")]
    [InlineData(NoteFormat.Html, "long-night.html")]
    public void The_long_note_of_the_troubled_night_reads_as_approved(NoteFormat format, string name)
    {
        using var flow = SignedNight.Write();
        var note = LongNote.Of(flow.Desk, SmallLine.At("2026-11-25T06:00-05:00")) with { Head = new string('0', 64) };

        Approved.Matches(name, Notes.Write(note, NoteKind.Long, format));
    }

    [Theory]
    [InlineData(NoteFormat.Text, "week.text")]
    [InlineData(NoteFormat.Markdown, "week.md")]
    [InlineData(NoteFormat.Html, "week.html")]
    public void The_week_that_ends_with_the_troubled_night_reads_as_approved(NoteFormat format, string name)
    {
        using var flow = SignedNight.Write();
        var note = WeekNote.Of(flow.Desk, SmallLine.At("2026-11-25T06:00-05:00")) with { Head = new string('0', 64) };

        Approved.Matches(name, Notes.Write(note, format));
    }

    [Fact]
    public void The_note_of_a_quiet_shift_reads_as_approved()
    {
        using var line = new SmallLine("2026-11-24T19:00-05:00");
        line.Record("hourly", "SL-T1=101.0", "SL-L1=16.4", "WT-L=61.5");
        var note = HandoverNote.Of(line.Desk, line.Desk.Now) with { Head = new string('0', 64) };

        Approved.Matches("quiet-shift.text", Notes.Write(note, NoteFormat.Text));
    }

    [Theory]
    [InlineData(NoteFormat.Text, "signed-night.text")]
    [InlineData(NoteFormat.Markdown, "signed-night.md")]
    [InlineData(NoteFormat.Html, "signed-night.html")]
    public void The_note_that_was_taken_over_carries_both_sides_words_and_what_they_signed(NoteFormat format, string name)
    {
        using var flow = SignedNight.Write();
        var note = HandoverNote.Of(flow.Desk, SmallLine.At("2026-11-25T06:00-05:00")) with { Head = new string('0', 64) };

        Approved.Matches(name, Notes.Write(note, format));
    }
}
