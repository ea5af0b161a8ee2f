using Logbook.Journal;

namespace Logbook.Handover.Tests;

public class TakingOverTests
{
    [Fact]
    public void Responsibility_moves_at_acceptance_and_not_before()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");

        Assert.NotNull(flow.Prepare("op1", "bowl may climb").Record);
        Assert.Equal("op1", flow.Holder);
        flow.OpenAll("op2");
        Assert.Equal("op1", flow.Holder);
        Assert.NotNull(flow.Accept("op2", "flow by hand first").Record);

        Assert.Equal("op2", flow.Holder);
        Assert.Equal("Operator two holds the line since 06:20", NowView.Of(flow.Desk).InCharge);
    }

    [Fact]
    public void Acceptance_waits_for_every_page()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Prepare("op1");

        Assert.Equal("not seen yet: hazards, moving, changed; each is opened first: handover open PAGE", flow.Accept("op2", "pump first").Refused);
        HandoverPages.Open(flow.Desk, "op2", "hazards");
        HandoverPages.Open(flow.Desk, "op2", "changed");
        Assert.Equal("not seen yet: moving; each is opened first: handover open PAGE", flow.Accept("op2", "pump first").Refused);

        Assert.Equal("op1", flow.Holder);
    }

    [Fact]
    public void What_one_person_has_opened_another_has_not()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Prepare("op1");
        flow.OpenAll("op2");

        Assert.StartsWith("not seen yet: hazards, moving, changed", flow.Accept("op3", "pump first").Refused, StringComparison.Ordinal);
    }

    [Fact]
    public void What_can_hurt_and_came_after_the_page_was_opened_must_be_seen_too()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Prepare("op1");
        flow.OpenAll("op2");
        var harmless = flow.Line.Carry("action", "classifier", "tighten the guard bolt");
        var locked = flow.Line.Carry("isolation", "mud-pump", "seal change", null, ("permit", "4417"));

        Assert.Equal($"not seen yet: record {locked}, on the page hazards: handover open hazards", flow.Accept("op2", "pump first").Refused);
        Assert.NotNull(HandoverPages.Open(flow.Desk, "op2", $"#{locked}").Page);

        Assert.NotNull(flow.Accept("op2", "pump first").Record);
        Assert.True(harmless < locked);
    }

    [Fact]
    public void A_lock_that_is_taken_off_must_be_seen_for_then_it_can_start()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        var locked = flow.Line.Carry("isolation", "mud-pump", "seal change", null, ("permit", "4417"));
        flow.Prepare("op1");
        flow.OpenAll("op2");
        var closed = flow.Line.Close(locked, "permit handed back");

        Assert.StartsWith($"not seen yet: record {closed}, on the page hazards: handover open hazards", flow.Accept("op2", "pump first").Refused, StringComparison.Ordinal);
    }

    [Fact]
    public void A_prepared_note_that_is_prepared_again_is_read_again()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Prepare("op1");
        flow.OpenAll("op2");
        flow.Prepare("op1", "one thing more");

        Assert.StartsWith("not seen yet: hazards, moving, changed", flow.Accept("op2", "pump first").Refused, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bowl may climb")]
    [InlineData("  Bowl may CLIMB. ")]
    [InlineData("if it turns, then call instrument duty")]
    public void A_line_of_the_outgoing_person_is_no_own_word(string copied)
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Prepare("op1", "bowl may climb");
        flow.OpenAll("op2");

        Assert.Contains("Operator one's own line", flow.Accept("op2", "pump first", copied).Refused, StringComparison.Ordinal);
        Assert.NotNull(flow.Accept("op2", "nothing beyond the list").Record);
    }

    [Fact]
    public void One_to_three_lines_of_own_words_are_asked_for()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Prepare("op1");
        flow.OpenAll("op2");

        Assert.Single(flow.Accept("op2").Mistakes);
        Assert.Single(flow.Accept("op2", "a", "b", "c", "d").Mistakes);
        Assert.Single(flow.Accept("op2", " ").Mistakes);
        Assert.NotNull(flow.Accept("op2", "a", "b", "c").Record);
    }

    [Fact]
    public void The_same_person_continues_and_does_not_accept()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Prepare("op1");

        Assert.Contains("handover continue", flow.Accept("op1", "pump first").Refused, StringComparison.Ordinal);
        Assert.Contains("not seen yet: hazards", Staying.Continue(flow.Desk, "op1", "relief is ill").Refused, StringComparison.Ordinal);
        HandoverPages.Open(flow.Desk, "op1", "hazards");
        Assert.NotNull(Staying.Continue(flow.Desk, "op1", "relief is ill").Record);

        Assert.Equal("op1", flow.Holder);
        Assert.Equal("Operator one holds the line since 06:20, continues (06:20), taken over unattended", NowView.Of(flow.Desk).InCharge);
    }

    [Fact]
    public void Who_continues_keeps_the_lines_of_the_note_that_was_prepared()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        var declared = HazardSections.All.ToDictionary(s => s, _ => "1", StringComparer.Ordinal);
        Assert.NotNull(Preparing.Prepare(flow.Desk, flow.Sign(), new PrepareRequest("op1", declared, ["if the flow falls, then stop the lime"], ["watch the bowl"])).Record);
        HandoverPages.Open(flow.Desk, "op1", "hazards");
        Assert.NotNull(Staying.Continue(flow.Desk, "op1", "relief is ill").Record);
        Assert.Null(flow.Desk.State.Line.Prepared);

        var again = Preparing.Prepare(flow.Desk, flow.Sign(), new PrepareRequest("op1", declared, [], []));

        Assert.Contains("watch the bowl", again.Beside, StringComparison.Ordinal);
        Assert.Equal(["if the flow falls, then stop the lime"], ((HandoverPrepared)again.Record!.Body).IfThen);
    }

    [Fact]
    public void What_an_emergency_left_unread_waits_for_its_holder_over_a_short_relief()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        Assert.NotNull(Relieving.Emergency(flow.Desk, "op2", "1").Record);
        HandoverPages.Open(flow.Desk, "op2", "hazards");
        Assert.NotNull(Relieving.Short(flow.Desk, flow.Sign(), "op3", "the flow").Record);
        HandoverPages.Open(flow.Desk, "op3", "moving");

        Assert.NotNull(Relieving.Short(flow.Desk, flow.Sign(), "op2", "back").Record);

        Assert.Equal("op2", flow.Holder);
        Assert.Equal(["moving", "changed"], flow.Desk.State.Line.Unread);
    }

    [Fact]
    public void Only_the_holder_prepares_and_every_hazard_section_is_declared()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");

        Assert.Contains("only the holder prepares", flow.Prepare("op2").Refused, StringComparison.Ordinal);
        var some = Preparing.Prepare(flow.Desk, flow.Sign(), new PrepareRequest("op1", new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = "1", ["weather"] = "1", ["gas"] = "fine" }, [], []));

        Assert.Equal(
            [
                "'weather' is no hazard section; sections: inside, locked, defeated, out, acid, gas, injury, release",
                "section gas: 'fine' is no declaration; 1 checked, 2 not-checked, 3 change, with what changed: change:WORDS",
                "not declared: locked, defeated, out, acid, injury, release; each section as checked, not-checked or change",
            ],
            some.Mistakes.Select(m => m.ToString()), StringComparer.Ordinal);
    }

    [Fact]
    public void What_can_hurt_asks_for_an_if_then_and_a_change_for_words()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        Handed Prepared(string answer, string[] ifThen, params string[] words) =>
            Preparing.Prepare(flow.Desk, flow.Sign(), new PrepareRequest("op1", FlowLine.All(answer), ifThen, words));

        Assert.NotNull(Prepared("checked", []).Record);
        Assert.All(Prepared("3", []).Mistakes, m => Assert.Contains("nothing says what changed", m.Wrong, StringComparison.Ordinal));
        Assert.Equal(HazardSections.All.Count, Prepared("3", []).Mistakes.Count);
        flow.Line.Carry("isolation", "mud-pump", "seal change", null, ("permit", "4417"));
        Assert.Contains("nothing says what to do if it turns", Assert.Single(Prepared("checked", []).Mistakes).Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_answer_opens_the_page_again_moves_the_right_choice_and_is_kept_with_the_acceptance()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Line.Carry("isolation", "mud-pump", "seal change", null, ("permit", "4417"));
        flow.Prepare("op1");
        flow.OpenAll("op2");
        var question = Assert.Single(HazardQuestions.For(flow.Desk, "op2"));
        var before = flow.Desk.State.Head.Seq;

        var refused = flow.Accept(new AcceptRequest("op2", ["pump first"], [(question.Right % 3) + 1]));

        Assert.Contains("does not agree", refused.Refused, StringComparison.Ordinal);
        Assert.Equal("hazards", refused.Reopened?.Name);
        Assert.Equal([new HandoverMissed(question.Text, question.Right), new HandoverSeen("hazards", before + 1)], flow.Desk.Store.Read(before + 1).Select(r => r.Body));
        Assert.Equal("op1", flow.Holder);
        var again = Assert.Single(HazardQuestions.For(flow.Desk, "op2"));
        Assert.Equal(question.Text, again.Text);
        Assert.NotEqual(question.Right, again.Right);
        Assert.Equal(question.Choices[question.Right - 1], again.Choices[again.Right - 1]);

        var accepted = flow.Accept("op2", "pump first").Record!;

        Assert.Equal([question.Text], ((HandoverAccepted)accepted.Body).Missed!);
        Assert.Contains("1 answer at first otherwise than the page, which was read again", LogLine.Of(flow.Desk, accepted).Words, StringComparison.Ordinal);
        Assert.Contains(question.Text, Assert.Single(Audit.Between(flow.Desk, flow.Desk.Now.AddHours(-1), flow.Desk.Now.AddMinutes(1), ["read-again"])).Text, StringComparison.Ordinal);
        Assert.Contains(HandoverNote.Of(flow.Desk, flow.Desk.Now.AddMinutes(-30)).Signatures, s => s.Contains("1 answer at first otherwise than the page", StringComparison.Ordinal));
    }

    [Fact]
    public void A_look_at_a_page_between_the_questions_and_the_answers_changes_neither_questions_nor_choices()
    {
        using var flow = new FlowLine(TroubledNight.Write()).HeldBy("op1");
        flow.Prepare("op1");
        flow.OpenAll("op2");
        string Shown() => string.Join('\n', HazardQuestions.For(flow.Desk, "op2").Select(q => $"{q.Text} {string.Join(" / ", q.Choices)} {q.Right}"));
        var (shown, answers) = (Shown(), flow.RightAnswers("op2"));

        for (var look = 0; look < 5; look++)
        {
            Assert.NotNull(HandoverPages.Open(flow.Desk, "op2", "hazards").Page);
            Assert.Equal(shown, Shown());
        }

        Assert.Null(flow.Accept(new AcceptRequest("op2", ["pump first"], answers)).Refused);
        Assert.DoesNotContain(flow.Desk.Store.Read(1), r => r.Body is HandoverMissed);
    }

    [Fact]
    public void What_comes_between_the_questions_and_the_answers_leaves_the_choices_of_the_others_where_they_were()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Line.Carry("isolation", "mud-pump", "seal change", SmallLine.At("2026-11-25T10:00-05:00"), ("permit", "4417"));
        flow.Line.Carry("bypass", "slaker", "trip bridged", SmallLine.At("2026-11-25T10:00-05:00"), ("instead", "by hand"), ("allowed-by", "eng1"));
        var before = HazardQuestions.For(flow.Desk, "op2");

        flow.Line.Carry("safety-equipment", "slaker", "eyewash without flow", null, ("instead", "the stair"));

        var after = HazardQuestions.For(flow.Desk, "op2");
        Assert.All(before, q => Assert.Equal(q.Right, after.FirstOrDefault(a => a.About == q.About && a.Text == q.Text)?.Right ?? q.Right));
        Assert.Contains(after, a => a.About == before[0].About);
    }

    [Fact]
    public void What_the_receiver_wrote_needs_no_look_of_the_receiver()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Prepare("op1");
        flow.OpenAll("op2");
        var fields = new Dictionary<string, string>(StringComparer.Ordinal) { ["permit"] = "4417" };
        Assert.NotNull(Checks.Writing.AddCarried(flow.Desk, new Carry("isolation", "mud-pump", "seal change", null, null, fields), "op2").Record);

        Assert.NotNull(flow.Accept("op2", "pump first").Record);
    }

    [Fact]
    public void A_question_has_three_choices_of_which_one_agrees_with_the_page()
    {
        using var flow = new FlowLine(TroubledNight.Write()).HeldBy("op1");
        flow.Prepare("op1");
        flow.OpenAll("op2");
        var page = HandoverPages.Open(flow.Desk, "op2", "hazards").Page!;
        var text = string.Join('\n', page.Sections.SelectMany(s => s.Lines).Select(l => l.Text));

        var questions = HazardQuestions.For(flow.Desk, "op2");

        Assert.Equal(3, questions.Count);
        Assert.All(questions, q => Assert.Equal(3, q.Choices.Distinct(StringComparer.Ordinal).Count()));
        Assert.All(questions, q => Assert.Contains(q.Choices[q.Right - 1], text, StringComparison.Ordinal));
    }

    [Fact]
    public void What_can_hurt_most_is_asked_first_and_by_its_place()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Line.Carry("isolation", "mud-pump", "seal change", SmallLine.At("2026-11-25T10:00-05:00"), ("permit", "4417"));
        flow.Line.Carry("bypass", "slaker", "trip bridged", SmallLine.At("2026-11-25T10:00-05:00"), ("instead", "by hand"), ("allowed-by", "eng1"));
        flow.Line.Carry("permit", "wl-filter", "cloths", SmallLine.At("2026-11-25T11:00-05:00"), ("number", "4417"), ("inside", "2"));

        var questions = HazardQuestions.For(flow.Desk, "op2");

        Assert.Equal(["Where are people inside, as they were counted?", "Where is a trip or an interlock defeated?", "isolation, Lime mud pump: until when?"], questions.Select(q => q.Text), StringComparer.Ordinal);
        Assert.Equal(["White liquor filter", "Slaker"], questions.Take(2).Select(q => q.Choices[q.Right - 1]), StringComparer.Ordinal);
    }

    [Fact]
    public void Safety_equipment_that_is_out_is_asked_among_safety_equipment_that_is_not()
    {
        const string More = """
            SL-GUARD,Guards of the slaker,slaker,choice,read,,,,,,,,,,,6h,slaker,,,in place;off!urgent,yes
            SL-LIGHT,Lighting of the walkways,slaker,choice,read,,,,,,,,,,,6h,,,,good;dark!urgent,yes
            """;
        using var usual = new SmallLine("2026-11-25T06:20-05:00");
        var texts = usual.Desk.Files.Texts;
        var files = new Plant.SiteFiles(new Dictionary<string, string>(texts, StringComparer.Ordinal) { [Plant.SiteFiles.PointsCsv] = texts[Plant.SiteFiles.PointsCsv].TrimEnd() + "\n" + More });
        using var flow = new FlowLine(new SmallLine(SmallLine.At("2026-11-25T06:20-05:00"), files, [])).HeldBy("op1");
        flow.Line.Carry("safety-equipment", "slaker", "eyewash without flow", null, ("instead", "the stair"));

        var question = Assert.Single(HazardQuestions.For(flow.Desk, "op2").Take(1));

        Assert.Equal("Which safety equipment is out?", question.Text);
        Assert.Equal("Slaker, eyewash without flow", question.Choices[question.Right - 1]);
        Assert.All(question.Choices.Where((_, i) => i != question.Right - 1), c => Assert.Contains(c, new[] { "Guards of the slaker", "Lighting of the walkways", "Gas monitor: H2S at the sump" }, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("2026-11-25T07:30-05:00", new[] { "08:00", "10:00", "11:30" })]
    [InlineData("2026-11-25T08:30-05:00", new[] { "10:00", "11:30", "14:00" })]
    [InlineData("2026-11-25T11:00-05:00", new[] { "05:00", "08:00", "10:00" })]
    public void Times_to_choose_from_lie_all_before_now_or_all_after_it(string asked, string[] choices)
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Line.Carry("isolation", "mud-pump", "seal change", SmallLine.At("2026-11-25T10:00-05:00"), ("permit", "4417"));
        flow.Line.Clock(asked);

        Assert.Equal(choices, Assert.Single(HazardQuestions.For(flow.Desk, "op2")).Choices.Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    [Fact]
    public void Nothing_open_asks_nothing()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00");

        Assert.Empty(HazardQuestions.For(flow.Desk, "op2"));
    }
}
