using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover.Tests;

/// <summary>What stands before a signature, and what can be read of one afterwards.</summary>
public sealed class SignedInWordsTests
{
    private static string Words(IEnumerable<NoteLine> lines) => string.Join('\n', lines.Select(l => $"{l.Label}: {l.Text}"));

    private static JournalRecord Last<T>(FlowLine flow) => flow.Desk.Store.Read().Last(r => r.Body is T);

    [Fact]
    public void What_the_giver_said_stands_while_the_taker_holds_the_line_and_not_longer()
    {
        using var flow = new FlowLine("2026-11-24T18:40-05:00").HeldBy("op1");
        string Told() => Words(NowView.Of(flow.Desk).FromGiver);
        Assert.NotNull(flow.Prepare("op1", "bowl may climb").Record);
        Assert.Equal("", Told()); // the taker's own words come first

        flow.OpenAll("op3");
        Assert.NotNull(flow.Accept("op3", "nothing beyond the list").Record);
        Assert.Equal("if, then: Operator one 18:40: if it turns, then call instrument duty\nown words: Operator one 18:40: bowl may climb", Told());

        flow.Line.Clock("2026-11-25T06:50-05:00");
        Assert.Contains("bowl may climb", Told(), StringComparison.Ordinal);
        Assert.NotNull(flow.Prepare("op3").Record);
        Assert.Equal("", Told()); // who comes must not take it for what is said now
        flow.HandedTo("op1");
        Assert.Equal("if, then: Operator three 06:50: if it turns, then call instrument duty", Told());
    }

    [Fact]
    public void A_receiver_sees_before_the_PIN_what_was_not_checked_what_was_answered_otherwise_and_what_cannot_both_be_true()
    {
        using var flow = new FlowLine("2026-11-24T08:00-05:00").HeldBy("op1");
        flow.Line.Carry("isolation", "mud-pump", "seal change");
        Assert.NotNull(Checks.Writing.ChangeState(flow.Desk, "mud-pump", "running", null, null, "op2").Record);
        var declared = FlowLine.All("checked");
        declared["acid"] = "not-checked";
        Assert.NotNull(Preparing.Prepare(flow.Desk, flow.Sign(), new PrepareRequest("op1", declared, ["if it turns, then stop it"], [])).Record);
        flow.OpenAll("op3");
        var asked = HazardQuestions.For(flow.Desk, "op3")[0];
        Assert.NotNull(Accepting.Miss(flow.Desk, "op3", asked).Record);

        var told = Words(BeforeSigning.Receiver(flow.Desk, "op3"));

        Assert.Contains("declared: Operator one: NOT CHECKED: acid", told, StringComparison.Ordinal);
        Assert.DoesNotContain("declared: Operator one: checked", told, StringComparison.Ordinal);
        Assert.Contains($"read again: answered otherwise than the page at first: {asked.Text}", told, StringComparison.Ordinal);
        Assert.StartsWith("not both: Lime mud pump is locked, DO NOT START (#", told, StringComparison.Ordinal);
        Assert.Contains("told by Operator two, the lock by Operator one: one of the two is not true", told, StringComparison.Ordinal);
        Assert.DoesNotContain("read again", Words(BeforeSigning.Receiver(flow.Desk, "op2")), StringComparison.Ordinal);
    }

    [Fact]
    public void Before_the_PIN_stand_the_givers_lines_and_the_answer_to_the_own_question_and_not_anothers()
    {
        using var flow = new FlowLine("2026-11-24T18:30-05:00").HeldBy("op1");
        Assert.NotNull(flow.Prepare("op1", "bowl may climb").Record);
        var own = Asking.Ask(flow.Desk, "op3", "lime rate now?", null).Record!.Seq;
        Asking.Ask(flow.Desk, "op2", "where is the torch?", null);
        Assert.Equal($"if, then: Operator one: if it turns, then call instrument duty\nown words: Operator one: bowl may climb\nyou asked: lime rate now? NO ANSWER YET. (#{own})", Words(BeforeSigning.Receiver(flow.Desk, "op3")));

        Asking.Reply(flow.Desk, "op3", own, "16.4, not higher", "op1");

        Assert.Contains("you asked: lime rate now? Operator one, aloud: 16.4, not higher.", Words(BeforeSigning.Receiver(flow.Desk, "op3")), StringComparison.Ordinal);
    }

    [Fact]
    public void They_are_shown_only_when_everything_but_the_PIN_is_right()
    {
        using var flow = new FlowLine("2026-11-24T18:30-05:00").HeldBy("op1");
        Assert.NotNull(flow.Prepare("op1", "bowl may climb").Record);
        var told = new List<string>();
        var sign = (flow.Sign() with { Tell = told.Add }).After(() => told.Add("shown"));
        AcceptRequest Request(params string[] first) => new("op3", first, flow.RightAnswers("op3"));

        Assert.NotNull(Accepting.Accept(flow.Desk, sign, Request("flow by hand first")).Refused); // no page was opened
        flow.OpenAll("op3");
        Assert.NotEmpty(Accepting.Accept(flow.Desk, sign, Request()).Mistakes); // no own line
        Assert.NotNull(Accepting.Accept(flow.Desk, sign, Request("bowl may climb")).Refused); // the giver's own line
        Assert.Empty(told);
        Assert.NotNull(Accepting.Accept(flow.Desk, sign, Request("flow by hand first")).Record);
        Assert.Equal(["shown", Signing.Accepted], told, StringComparer.Ordinal);
    }

    [Fact]
    public void The_signature_is_told_in_its_words_before_the_PIN_is_asked()
    {
        using var flow = new FlowLine("2026-11-24T18:30-05:00").HeldBy("op1");
        var order = new List<string>();
        var sign = new SignWith(flow.Pins, _ => { order.Add("PIN"); return FlowLine.Pin; }) { Tell = order.Add };

        Assert.NotNull(Preparing.Prepare(flow.Desk, sign, new PrepareRequest("op1", FlowLine.All("checked"), [], [])).Record);

        Assert.Equal([Signing.Prepared, "PIN"], order, StringComparer.Ordinal);
        Assert.Equal("what was found is empty", Countersigning.Countersign(flow.Desk, sign, "sup1", null, "").Mistakes[0].Wrong);
        Assert.Equal(2, order.Count); // without words no PIN was asked
    }

    [Fact]
    public void A_handover_is_read_back_in_words_what_was_signed_declared_and_seen()
    {
        using var flow = SignedNight.Write();

        var prepared = SignedInWords.Of(flow.Desk, Last<HandoverPrepared>(flow));
        var accepted = SignedInWords.Of(flow.Desk, Last<HandoverAccepted>(flow));

        Assert.Contains("signed: \"prepared; told as far as I know it\", Operator two Wed 25 Nov 06:44; by PIN, PIN reset before", Words(prepared[0].Lines), StringComparison.Ordinal);
        Assert.Contains("declared: NOT CHECKED: acid", Words(prepared[0].Lines), StringComparison.Ordinal);
        Assert.Contains("declared: checked: inside, locked", Words(prepared[0].Lines), StringComparison.Ordinal);
        Assert.Contains("if, then: if the flow falls under 240", Words(prepared[0].Lines), StringComparison.Ordinal);
        var note = ((HandoverPrepared)Last<HandoverPrepared>(flow).Body).Note;
        Assert.Equal(note.Sections.Select(s => s.Title).Prepend("TAKE LONGER").Append("CAUTIONS"), prepared.Skip(1).Select(s => s.Title), StringComparer.Ordinal);
        Assert.Equal(note.TakeLonger, prepared[1].Lines.Select(l => l.Text), StringComparer.Ordinal);
        var words = Words(accepted[0].Lines);
        Assert.Contains("signed: \"read, asked, hold the line; I do not vouch for readings I did not take; with reservation\", Operator three", words, StringComparison.Ordinal);
        Assert.Contains("from: Operator two", words, StringComparison.Ordinal);
        Assert.Contains("page seen: hazards, 06:50, up to record", words, StringComparison.Ordinal);
        Assert.Contains("reservation: acid not checked", words, StringComparison.Ordinal);
        Assert.Contains(((HandoverAccepted)Last<HandoverAccepted>(flow).Body).NoteHash, words, StringComparison.Ordinal);
        Assert.Contains(Last<HandoverPrepared>(flow).Seq, RecordLinks.About(flow.Desk, Last<HandoverAccepted>(flow).Seq).Select(r => r.Seq));
    }

    [Fact]
    public void Who_is_said_to_have_allowed_a_bypass_signs_for_it_alone_also_after_it_is_closed()
    {
        using var flow = new FlowLine("2026-11-24T19:00-05:00");
        var bypass = flow.Line.Carry("bypass", "slaker", "low-flow trip bridged", SmallLine.At("2026-11-25T02:00-05:00"), ("instead", "flow by hand"), ("allowed-by", "engineer one"));
        flow.Line.Close(bypass, "trip is back");
        flow.Line.Clock("2026-11-24T20:00-05:00");
        IReadOnlyList<AuditFlag> Waiting() => Audit.Between(flow.Desk, flow.Desk.Now.AddDays(-1), flow.Desk.Now.AddMinutes(1), Audit.ToCountersign);

        Assert.Equal($"bypass: low-flow trip bridged; until Wed 25 Nov 02:00; instead flow by hand, Operator one Tue 24 Nov 19:00 (#{bypass}). Allowed, it is said, by Engineer one: not yet signed by them.", Assert.Single(Waiting()).Text);
        Assert.Contains(WeekNote.Of(flow.Desk, flow.Desk.Now).Sections.Single(s => s.Id == "to-countersign").Lines, l => l.Text.Contains("Allowed, it is said, by Engineer one", StringComparison.Ordinal));
        Assert.DoesNotContain("sign", string.Join(' ', NowView.Of(flow.Desk).Unfinished), StringComparison.Ordinal);
        Assert.Equal("Engineer one alone signs for it", Countersigning.Countersign(flow.Desk, flow.Sign(), "sup1", bypass, "known").Refused);

        var signed = Countersigning.Countersign(flow.Desk, flow.Sign(), "eng1", null, "for the night, flow by hand");

        Assert.Equal(Signing.Allowed, Assert.IsType<HandoverCountersigned>(signed.Record?.Body).Signed.Means);
        Assert.Empty(Waiting());
    }

    [Fact]
    public void Who_is_named_anew_as_having_allowed_it_signs_instead()
    {
        using var flow = new FlowLine("2026-11-24T19:00-05:00");
        var change = flow.Line.Carry("temporary-change", "slaker", "hose to the weir", SmallLine.At("2026-11-25T02:00-05:00"));
        Assert.Empty(flow.Held.ToCountersign);
        void Named(string who) => Assert.NotNull(Checks.Writing.ConfirmCarried(flow.Desk, new CarryConfirmed(change, true, null, AllowedBy(who), null), "op2").Record);

        Named("eng1");
        Named("sup1");

        var waits = Assert.Single(flow.Held.ToCountersign);
        Assert.Equal("sup1", waits.Named);
        // The item stays its opener's; who told last who allows it stands beside.
        Assert.Contains($"Operator one Tue 24 Nov 19:00 (#{change}), told again by Operator two (#{flow.Desk.State.Head.Seq}).", Countersigning.Words(flow.Desk.Site, waits), StringComparison.Ordinal);
        Assert.NotNull(Countersigning.Countersign(flow.Desk, flow.Sign(), "sup1", null, "until the weir is cleaned").Record);
        Assert.Empty(flow.Held.ToCountersign);
    }

    [Theory]
    [InlineData("op3", "Operator three")]
    [InlineData("the boss", "the boss")]
    public void Where_an_older_record_names_somebody_who_cannot_allow_it_a_supervisor_signs(string named, string name)
    {
        using var flow = new FlowLine("2026-11-24T19:00-05:00");
        flow.Line.Remark("the log begins");
        flow.Desk.Write(new Carry("bypass", "slaker", "trip bridged", SmallLine.At("2026-11-25T02:00-05:00"), null, AllowedBy(named)), flow.Desk.Now, "op1");

        Assert.EndsWith($"Allowed, it is said, by {name}, who cannot allow it: a supervisor signs instead", Countersigning.Words(flow.Desk.Site, Assert.Single(flow.Held.ToCountersign)), StringComparison.Ordinal);
        Assert.StartsWith($"{name} cannot allow it: a supervisor signs instead", Countersigning.Countersign(flow.Desk, flow.Sign(), "op3", null, "yes").Refused, StringComparison.Ordinal);
        Assert.NotNull(Countersigning.Countersign(flow.Desk, flow.Sign(), "sup1", null, "known, until 02:00").Record);
        Assert.Empty(flow.Held.ToCountersign);
    }

    private static Dictionary<string, string> AllowedBy(string who) => new(StringComparer.Ordinal) { ["allowed-by"] = who };

    [Fact]
    public void What_waits_for_a_supervisors_signature_is_one_flag_whenever_it_was()
    {
        using var flow = new FlowLine("2026-11-20T18:30-05:00").HeldBy("op1");
        var waits = flow.Held.ToCountersign[0].Seq;
        flow.Line.Clock("2026-12-10T10:00-05:00");

        IReadOnlyList<AuditFlag> Waiting() => Audit.Between(flow.Desk, flow.Desk.Now.AddDays(-7), flow.Desk.Now.AddMinutes(1), Audit.ToCountersign);
        var flag = Assert.Single(Waiting());

        Assert.Equal(waits, flag.Seq);
        Assert.Contains("its shift is over; waits for a supervisor's signature", flag.Text, StringComparison.Ordinal);
        Assert.Equal(waits, Assert.Single(Audit.Between(flow.Desk, flow.Desk.Now.AddDays(-7), flow.Desk.Now.AddMinutes(1)), f => f.Flag == Audit.ToCountersign).Seq);
        // In the week of the handover its own flag tells it.
        Assert.Equal(waits, Assert.Single(Audit.Between(flow.Desk, flow.Desk.Now.AddDays(-21), flow.Desk.Now.AddMinutes(1)), f => f.Flag is Audit.ToCountersign or "unattended").Seq);
        Assert.Contains(WeekNote.Of(flow.Desk, flow.Desk.Now).Sections.Single(s => s.Id == "to-countersign").Lines, l => l.Text.Contains($"(#{waits})", StringComparison.Ordinal));
        Assert.NotNull(Countersigning.Countersign(flow.Desk, flow.Sign(), "sup1", null, "walked it").Record);
        Assert.Empty(Waiting());
    }

    [Fact]
    public void The_week_says_who_held_the_line_in_each_shift()
    {
        using var flow = new FlowLine("2026-11-24T07:05-05:00").HeldBy("op1");
        flow.Line.Clock("2026-11-24T18:55-05:00");
        flow.HandedTo("op3");
        flow.Line.Clock("2026-11-24T23:00-05:00");
        Relieving.Emergency(flow.Desk, "op2", "2: fire team");
        flow.Line.Clock("2026-11-25T07:10-05:00");

        var shifts = WeekNote.Of(flow.Desk, SmallLine.At("2026-11-25T06:00-05:00")).Sections.Single(s => s.Id == "shifts").Lines.Select(l => l.Text).ToList();

        Assert.Contains("; held by NOBODY, from 07:05 by Operator one (unattended);", shifts[^2], StringComparison.Ordinal);
        Assert.Contains("; held by Operator three, from 23:00 by Operator two (emergency relief);", shifts[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void What_came_after_the_declaration_is_not_under_it()
    {
        using var flow = new FlowLine("2026-11-24T18:30-05:00").HeldBy("op1");
        Assert.NotNull(flow.Prepare("op1").Record);
        flow.Line.Clock("2026-11-24T18:45-05:00").Carry("isolation", "mud-pump", "seal change");

        var note = HandoverNote.InHand(flow.Desk);

        Assert.Contains("locked: checked, Operator one 18:30, BEFORE what came since", note.Sections.Single(s => s.Id == "can-hurt").Lines.Select(l => l.Text), StringComparer.Ordinal);
        var since = note.Sections.Single(s => s.Id == "since-prepared");
        Assert.Equal("typed after 18:30; the lines above have it in them", since.Beside);
        Assert.StartsWith("CAN HURT: Opened: isolation", Assert.Single(since.Lines).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_was_never_here_is_told_so_and_a_PIN_that_was_set_is_no_being_here()
    {
        using var flow = new FlowLine("2026-11-01T08:00-05:00").HeldBy("op1");
        PeopleChanges.SetPin(flow.Desk, flow.Sign(), "op3", "op3", () => "835174");
        flow.Line.Clock("2026-11-02T08:00-05:00");
        Assert.Empty(TakeLonger.Away(flow.Desk, "op3")); // the log is younger than a planned break

        flow.Line.Clock("2026-11-24T18:30-05:00");
        Assert.Null(Since.Of(flow.Desk, "op3").LastHere);
        Assert.Contains("was never here before", Assert.Single(TakeLonger.Away(flow.Desk, "op3")), StringComparison.Ordinal);
    }
}
