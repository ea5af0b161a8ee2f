using Logbook.Journal;

namespace Logbook.Handover.Tests;

public class AcceptedNoteTests
{
    [Fact]
    public void An_accepted_note_stays_as_it_was_and_what_came_later_stands_below()
    {
        using var flow = new FlowLine("2026-11-24T18:55-05:00").HeldBy("op1");
        flow.Line.Clock("2026-11-25T06:04-05:00");
        var entry = flow.Line.Record("hourly", "SL-T1=112.1", "SL-L1=16.4", "WT-L=60");
        flow.HandedTo("op2");
        var accepted = HandoverNote.Of(flow.Desk, SmallLine.At("2026-11-25T06:00-05:00"));

        flow.Line.Clock("2026-11-25T09:00-05:00");
        flow.Line.Carry("action", "classifier", "tighten the guard bolt");
        var correction = flow.Line.Correct(entry, "SL-T1=102.1", "digits swapped");
        var later = HandoverNote.Of(flow.Desk, SmallLine.At("2026-11-25T06:00-05:00"));

        static IEnumerable<(string, string)> Lines(HandoverNote note) =>
            note.Sections.Where(s => s.Id != "after").SelectMany(s => s.Lines.Select(l => (l.Label, l.Text)));
        Assert.Equal(Lines(accepted), Lines(later));
        Assert.Equal("nothing recorded", Assert.Single(accepted.Sections[^1].Lines).Text);
        Assert.Contains($"(#{correction})", Assert.Single(later.Sections[^1].Lines).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_prepared_and_prepared_anew_before_a_handover_inside_the_shift_waits_for_nobody()
    {
        using var flow = new FlowLine("2026-11-24T18:55-05:00").HeldBy("op1");
        flow.Line.Clock("2026-11-24T22:50-05:00");
        flow.Prepare("op1");
        Assert.Contains("prepared 22:50", HandoverNote.InHand(flow.Desk).Gave, StringComparison.Ordinal);
        flow.Line.Clock("2026-11-24T22:58-05:00");
        flow.HandedTo("op2");

        Assert.Equal("", HandoverNote.InHand(flow.Desk).Gave);
    }

    [Fact]
    public void The_hash_is_that_of_the_lines_and_changes_with_any_of_them()
    {
        using var flow = new FlowLine(TroubledNight.Write()).HeldBy("op1");
        flow.HandedTo("op2");
        var accepted = (HandoverAccepted)flow.Desk.Store.Read(flow.Held.Holder!.Seq).First().Body;

        Assert.Equal(Freezing.Hash(accepted.Note), accepted.NoteHash);
        var first = accepted.Note.Sections[0];
        var changed = accepted.Note with { Sections = [first with { Lines = [first.Lines[0] with { Text = first.Lines[0].Text + "." }, .. first.Lines.Skip(1)] }, .. accepted.Note.Sections.Skip(1)] };
        Assert.NotEqual(accepted.NoteHash, Freezing.Hash(changed), StringComparer.Ordinal);
    }

    [Fact]
    public void What_is_written_after_preparing_stands_under_its_own_title()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Prepare("op1");
        flow.Line.Remark("hosed down");
        flow.Line.Carry("isolation", "mud-pump", "seal change", null, ("permit", "4417"));

        var since = HandoverNote.InHand(flow.Desk).Sections.Single(s => s.Id == "since-prepared").Lines;

        Assert.Equal(2, since.Count);
        Assert.StartsWith("CAN HURT: ", since[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_not_checked_is_said_first_and_by_whom()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        var declared = FlowLine.All("1");
        declared["acid"] = "2";
        Preparing.Prepare(flow.Desk, flow.Sign(), new PrepareRequest("op1", declared, [], []));

        Assert.Equal(
            ["acid: none recorded; NOT CHECKED, Operator one 06:20", "inside, locked, defeated, out, gas, injury, release: none recorded; checked, Operator one 06:20"],
            HandoverNote.InHand(flow.Desk).Sections[0].Lines.Select(l => l.Text), StringComparer.Ordinal);
    }

    [Fact]
    public void What_is_declared_as_changed_says_what_changed_in_the_note_and_above_the_receivers_PIN()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        var declared = FlowLine.All("1");
        declared["acid"] = "3";
        Handed Prepare() => Preparing.Prepare(flow.Desk, flow.Sign(), new PrepareRequest("op1", declared, [], ["see the board"]));

        Assert.Equal("section acid is declared as changed, and nothing says what changed", Assert.Single(Prepare().Mistakes).Wrong);
        declared["acid"] = "change: wash valve left open";
        Assert.NotNull(Prepare().Record);

        Assert.Contains("acid: CHANGED: wash valve left open, Operator one 06:20", HandoverNote.InHand(flow.Desk).Sections[0].Lines.Select(l => l.Text), StringComparer.Ordinal);
        Assert.Contains(BeforeSigning.Receiver(flow.Desk, "op2"), l => l.Text == "Operator one: CHANGED: acid, wash valve left open");
        declared["acid"] = "checked:all of it";
        Assert.Contains("is no declaration", Assert.Single(Prepare().Mistakes).Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reservation_stands_with_what_can_hurt_in_the_note_of_the_running_shift_and_above_that_of_the_one_before()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        Assert.NotNull(flow.Prepare("op1").Record);
        flow.OpenAll("op2");
        flow.Line.Clock("2026-11-25T06:55-05:00");
        var seq = flow.Accept(new AcceptRequest("op2", ["the acid valve"], flow.RightAnswers("op2")) { Reservation = "acid was not checked" }).Record!.Seq;

        Assert.Contains("taken over with a reservation: acid was not checked", HandoverNote.Of(flow.Desk, SmallLine.At("2026-11-25T06:00-05:00")).TakeLonger, StringComparer.Ordinal);
        flow.Line.Clock("2026-11-25T08:00-05:00");
        Assert.NotNull(flow.Prepare("op2").Record);
        var lines = HandoverNote.InHand(flow.Desk).Sections[0].Lines;
        Assert.Equal($"taken over 06:55 by Operator two, but not without saying: acid was not checked. (#{seq})", Assert.Single(lines, l => l.Label == "reserved").Text);
        Assert.Equal("declared", lines[lines.ToList().FindIndex(l => l.Label == "reserved") + 1].Label);
        Assert.Contains(HandoverPages.Open(flow.Desk, "op1", "hazards").Page!.Sections.Single(s => s.Id == "can-hurt").Lines, l => l.Label == "reserved");

        flow.Line.Clock("2026-11-25T18:55-05:00");
        flow.HandedTo("op1");
        flow.Line.Clock("2026-11-25T20:00-05:00");
        Assert.DoesNotContain(HandoverNote.InHand(flow.Desk).Sections[0].Lines, l => l.Label == "reserved");
    }

    [Fact]
    public void A_late_handover_is_still_of_the_shift_that_ended_and_tells_up_to_now()
    {
        using var flow = new FlowLine("2026-11-24T18:55-05:00").HeldBy("op1");
        flow.Line.Clock("2026-11-25T07:20-05:00").Carry("isolation", "mud-pump", "seal change", null, ("permit", "4417"));

        var note = HandoverNote.InHand(flow.Desk);

        Assert.Equal("2026-11-24-N-C", note.ShiftId);
        Assert.Contains(note.Sections[0].Lines, l => l.Label == "locked");
        Assert.Equal("2026-11-25-D-A", HandoverNote.InHand(flow.HandedTo("op2").Line.Clock("2026-11-25T10:00-05:00").Desk).ShiftId);
    }

    [Fact]
    public void An_item_survives_a_hundred_handovers_and_nobody_having_looked_prints_not_seen()
    {
        using var flow = new FlowLine("2026-01-05T08:00-05:00").HeldBy("op1");
        var bolt = flow.Line.Carry("action", "classifier", "tighten the guard bolt");
        var locked = flow.Line.Carry("isolation", "mud-pump", "seal change", null, ("permit", "4417"));
        var change = SmallLine.At("2026-01-05T18:55-05:00");
        for (var i = 0; i < 100; i++)
        {
            flow.Line.Clock(change.AddHours(12 * i));
            flow.HandedTo(i % 2 == 0 ? "op2" : "op1");
        }

        var notes = flow.Desk.Store.Read().Select(r => r.Body).OfType<HandoverAccepted>().Select(a => a.Note).Skip(1).ToList();
        Assert.Equal(100, notes.Select(n => n.Shift).Distinct(StringComparer.Ordinal).Count());
        Assert.All(notes, note =>
        {
            var lines = note.Sections.SelectMany(s => s.Lines).Select(l => l.Text).ToList();
            Assert.Single(lines, l => l.Contains("seal change", StringComparison.Ordinal) && l.EndsWith($"(#{locked})", StringComparison.Ordinal));
            Assert.Single(lines, l => l.Contains("tighten the guard bolt", StringComparison.Ordinal) && l.EndsWith($"(#{bolt})", StringComparison.Ordinal));
        });

        // A hazard is looked at in each shift, the bolt in each week: in the first note neither was due.
        Assert.Equal((0, 99, 86), (Unseen(notes.Take(1)), Unseen(notes, "seal change"), Unseen(notes, "guard bolt")));
    }

    private static int Unseen(IEnumerable<FrozenNote> notes, string of = "") =>
        notes.Count(n => n.Sections.SelectMany(s => s.Lines).Any(l => l.Text.Contains(of, StringComparison.Ordinal) && l.Text.Contains("Not seen", StringComparison.Ordinal)));

    [Fact]
    public void Each_note_that_was_accepted_inside_one_shift_can_be_shown_and_the_last_is_shown_first()
    {
        using var flow = new FlowLine("2026-11-24T18:55-05:00").HeldBy("op1");
        var first = Handed(flow, "19:37", "op1", "op2", "bowl may climb");
        Assert.Contains("bowl may climb", Words(HandoverNote.Accepted(flow.Desk, null)!.Value.Note), StringComparison.Ordinal);
        Assert.Equal("2026-11-24-N-C", HandoverNote.Accepted(flow.Desk, null)!.Value.Note.ShiftId);

        flow.Line.Clock("2026-11-24T21:10-05:00");
        flow.Prepare("op2", "filter slow");
        var running = HandoverNote.InHand(flow.Desk);
        Assert.Contains("bowl may climb", Words(running), StringComparison.Ordinal);
        Assert.Contains("filter slow", Words(running), StringComparison.Ordinal);
        Assert.Equal(3, running.Signatures.Count); // both prepared, one took over

        var second = Handed(flow, "22:05", "op2", "op3", "filter slower");
        var (last, then) = (HandoverNote.Accepted(flow.Desk, null)!.Value.Note, HandoverNote.Accepted(flow.Desk, first)!.Value.Note);
        Assert.Contains("filter slower", Words(last), StringComparison.Ordinal);
        Assert.Equal("Operator three, from 22:05", last.Holds);
        Assert.Contains("bowl may climb", Words(then), StringComparison.Ordinal);
        Assert.DoesNotContain("filter", Words(then), StringComparison.Ordinal);
        Assert.Equal("Operator two, from 19:37", then.Holds);
        Assert.Equal(2, then.Signatures.Count);
        Assert.Contains($"(#{second})", last.Signatures[^1], StringComparison.Ordinal);
        Assert.Null(HandoverNote.Accepted(flow.Desk, first - 1));
    }

    private static string Words(HandoverNote note) => string.Join('\n', note.OwnWords.Select(l => l.Text));

    private static long Handed(FlowLine flow, string at, string from, string to, string words)
    {
        flow.Line.Clock($"2026-11-24T{at}-05:00");
        Assert.NotNull(flow.Prepare(from, words).Record);
        flow.OpenAll(to);
        return flow.Accept(to, "the bowl").Record!.Seq;
    }
}
