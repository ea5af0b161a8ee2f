using Logbook.Journal;

namespace Logbook.Screens.Tests;

public sealed class HandoverTests
{
    private const string Pin = Terminal.Pin;

    [Fact]
    public void The_holder_prepares_and_the_next_one_takes_over_key_by_key()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("h11111111⏎if the flow falls, then stop the lime⏎⏎watch the bowl⏎⏎" + Pin + "⏎");
        Assert.Contains("prepared: you hold the line until somebody has taken it over", terminal.Screen, StringComparison.Ordinal);
        Assert.Equal("if the flow falls, then stop the lime|watch the bowl", string.Join("|", terminal.Desk.State.Line.Prepared!.Lines));

        terminal.Press("iop3⏎h");
        Assert.Contains("Handover: what can hurt, and what is not normal", terminal.Screen, StringComparison.Ordinal);
        ReadAll(terminal);
        Asked(terminal);
        Assert.DoesNotContain("watch the bowl", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("flow by hand first⏎⏎" + Pin + "⏎");

        Assert.Equal("op3", terminal.Desk.State.Line.Holder!.Code);
        Assert.IsType<NowPage>(terminal.State.Top);
        Assert.Contains("Operator three holds the line since 09:05", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_that_was_read_to_its_end_is_not_blank_on_a_screen_that_has_grown()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));
        terminal.Size(80, 14).Press("iop3⏎h");
        for (var i = 0; i < 20 && !terminal.Screen.Contains("shown in full", StringComparison.Ordinal); i++)
        {
            terminal.Press("⏎");
        }

        var text = terminal.Size(120, 50).Screen;

        Assert.Contains("CAN HURT", text, StringComparison.Ordinal);
        Assert.Contains("shown in full", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_pin_is_neither_drawn_nor_said_nor_kept()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("h11111111⏎if it turns, then call⏎⏎⏎");
        var empty = terminal.Screen;
        terminal.Press(Pin);

        Assert.Equal(empty, terminal.Screen);
        Assert.DoesNotContain(Pin, terminal.State.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(Pin, terminal.State.Top.ToString(), StringComparison.Ordinal);
        terminal.Press("⏎");
        Assert.NotNull(terminal.Desk.State.Line.Prepared);
        Assert.All(terminal.Journal.Bytes(), bytes => Assert.DoesNotContain(Pin, System.Text.Encoding.UTF8.GetString(bytes.Span), StringComparison.Ordinal));
        Assert.Empty(Directory.GetFiles(terminal.Folder));
    }

    [Fact]
    public void A_wrong_pin_signs_nothing_and_may_be_typed_again()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("h11111111⏎if it turns, then call⏎⏎⏎999999⏎");
        Assert.Null(terminal.Desk.State.Line.Prepared);
        Assert.Contains("that is not op1's PIN", terminal.Screen, StringComparison.Ordinal);
        terminal.Press(Pin + "⏎");

        Assert.NotNull(terminal.Desk.State.Line.Prepared);
    }

    [Fact]
    public void A_wrong_pin_of_the_receiver_costs_neither_answers_nor_words()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));
        terminal.Press("h11111111⏎if the flow falls, then stop the lime⏎⏎watch the bowl⏎⏎" + Pin + "⏎").Press("iop3⏎h");
        ReadAll(terminal);
        Asked(terminal);

        terminal.Press("flow by hand first⏎⏎999999⏎");
        Assert.Contains("that is not op3's PIN", terminal.Screen, StringComparison.Ordinal);
        terminal.Press(Pin + "⏎");

        Assert.Equal("op3", terminal.Desk.State.Line.Holder!.Code);
    }

    [Fact]
    public void A_pin_that_was_typed_and_left_is_forgotten()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("h11111111⏎if it turns, then call⏎⏎⏎" + Pin).Tick(2).Press("⏎");

        Assert.Null(terminal.Desk.State.Line.Prepared);
        Assert.Contains("type the PIN first", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_declared_keeps_the_holder_on_the_page()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("h1111⏎");

        Assert.IsType<GivePage>(terminal.State.Top);
        Assert.Contains("still to declare: acid, gas, injury, release", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_declared_is_still_there_after_Esc()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("h1112⎋h");

        Assert.Equal(4, terminal.State.Giving.Declared.Count);
        Assert.Contains("NOT CHECKED", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void An_open_hazard_needs_a_line_of_what_to_do_if_it_turns()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("h11111111⏎⏎");

        Assert.Contains("something that can hurt is open: one line at least", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_counts_as_seen_only_when_its_last_line_was_shown()
    {
        using var terminal = new Terminal(by: "op3", before: t => Prepared(Trip(t)));
        terminal.Size(80, 10).Press("h");

        terminal.Press("⏎");
        Assert.Empty(terminal.Desk.State.Line.Seen.FindAll(s => s.By == "op3"));
        Assert.Contains("below: Enter shows them", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⏎⏎⏎⏎");

        Assert.Contains(terminal.Desk.State.Line.Seen, s => s is { By: "op3", Page: "hazards" });
    }

    [Fact]
    public void A_wrong_answer_opens_the_page_anew_to_be_read_to_its_end()
    {
        using var terminal = new Terminal(by: "op3", before: t => Prepared(Trip(t)));
        terminal.Press("h");
        ReadAll(terminal);
        var records = terminal.Desk.State.Head.Seq;

        terminal.Answer(rightly: false);

        Assert.Equal("hazards", ((ReadPage)terminal.State.Top).Page.Name);
        Assert.Contains("not what the page says", terminal.Screen, StringComparison.Ordinal);
        Assert.IsType<HandoverMissed>(Assert.Single(terminal.Journal.Read(records + 1)).Body);
        terminal.Press("⎋h");
        Assert.Equal("hazards", ((ReadPage)terminal.State.Top).Page.Name);
    }

    [Fact]
    public void What_can_hurt_and_came_after_the_page_is_read_before_the_line_is_taken()
    {
        using var terminal = new Terminal(by: "op3", before: t => Prepared(Trip(t)));
        terminal.Press("h");
        ReadAll(terminal);
        terminal.Carry("isolation", "slaker", "seal change", null, ("points", "2"), ("permit", "4417"));

        Asked(terminal);
        terminal.Press("flow first⏎⏎" + Pin + "⏎");

        Assert.Equal("op1", terminal.Desk.State.Line.Holder!.Code);
        Assert.Contains("seal change", terminal.Screen, StringComparison.Ordinal);
        Assert.IsType<ReadPage>(terminal.State.Top);
    }

    [Fact]
    public void Esc_from_the_own_words_keeps_the_answers_and_the_words()
    {
        using var terminal = new Terminal(by: "op3", before: t => Prepared(Trip(t)));
        terminal.Press("h");
        ReadAll(terminal);
        Asked(terminal);

        terminal.Press("flow by hand first⏎⎋");
        Assert.IsType<ReadPage>(terminal.State.Top);
        terminal.Press("⎋");
        Assert.IsType<NowPage>(terminal.State.Top);
        terminal.Press("h");

        Assert.IsType<LinesPage>(terminal.State.Top);
        Assert.Contains("flow by hand first", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⏎" + Pin + "⏎");
        Assert.Equal("op3", terminal.Desk.State.Line.Holder!.Code);
    }

    [Fact]
    public void Esc_in_the_middle_of_the_questions_goes_on_with_the_one_that_is_open()
    {
        using var terminal = new Terminal(by: "op3", before: t =>
        {
            Prepared(Trip(t));
            t.Carry("isolation", "slaker", "seal change", null, ("points", "2"), ("permit", "4417"));
        });
        terminal.Press("h");
        ReadAll(terminal);
        Assert.Equal(2, ((QuestionPage)terminal.State.Top).Questions.Count);

        terminal.Answer().Press("⎋⎋h");
        Assert.Equal(1, ((QuestionPage)terminal.State.Top).At);
        terminal.Answer(rightly: false);
        ReadAll(terminal);

        Assert.Equal(0, ((QuestionPage)terminal.State.Top).At);
    }

    [Fact]
    public void What_can_hurt_since_the_answers_is_asked_of_anew()
    {
        using var terminal = new Terminal(by: "op3", before: t => Prepared(Trip(t)));
        terminal.Press("h");
        ReadAll(terminal);
        Asked(terminal);

        terminal.Press("⎋⎋");
        terminal.Carry("isolation", "slaker", "seal change", null, ("points", "2"), ("permit", "4417"));
        terminal.Press("h");
        ReadAll(terminal);

        Assert.IsType<QuestionPage>(terminal.State.Top);
    }

    [Fact]
    public void A_reservation_and_a_doubt_answered_aloud_stand_in_the_journal()
    {
        using var terminal = new Terminal(by: "op3", before: t => Prepared(Trip(t)));
        terminal.Press("hulime rate now?⏎1 16.4, do not raise⏎");
        Assert.Contains("answered", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("vacid not checked⏎");
        ReadAll(terminal);
        Asked(terminal);
        terminal.Press("flow first⏎⏎" + Pin + "⏎");

        var bodies = terminal.Journal.Read().Select(r => r.Body).ToList();
        Assert.Equal("op1", Assert.Single(bodies.OfType<HandoverAnswer>()).From);
        Assert.True(bodies.OfType<HandoverAnswer>().Single().Aloud);
        Assert.Equal("acid not checked", bodies.OfType<HandoverAccepted>().Last().Reservation);
    }

    [Theory]
    [InlineData("vacid not checked⏎", "your reservation is taken: it stands with your signature; v changes it", "reserving acid not checked", "v⌦⏎", "no reservation")]
    [InlineData("onobody came⏎", "you take it alone: it stands with your signature; o changes it", "alone nobody came", "o⌦⏎", "you do not take the line alone")]
    public void What_is_said_beside_the_acceptance_is_told_as_taken_and_stays_in_sight_up_to_the_signature(string keys, string taken, string inSight, string away, string gone)
    {
        using var terminal = new Terminal(by: "op3", before: t => Prepared(Trip(t)));

        terminal.Press("h" + keys);
        Assert.Contains(taken, terminal.Words, StringComparison.Ordinal);
        Assert.Contains(inSight, terminal.Words, StringComparison.Ordinal);
        terminal.Press(away);
        Assert.Contains(gone, terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(inSight, terminal.Words, StringComparison.Ordinal);

        terminal.Press(keys);
        ReadAll(terminal);
        Assert.IsType<QuestionPage>(terminal.State.Top);
        Assert.Contains(inSight, terminal.Words, StringComparison.Ordinal);
        Asked(terminal);
        Assert.IsType<LinesPage>(terminal.State.Top);
        Assert.Contains(inSight, terminal.Words, StringComparison.Ordinal);
        terminal.Press("flow first⏎⏎");

        Assert.IsType<SignPage>(terminal.State.Top);
        Assert.Contains(inSight, terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_section_that_changed_asks_what_changed_and_Esc_leaves_it_undeclared()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("h11113⎋");
        Assert.IsType<GivePage>(terminal.State.Top);
        terminal.Press("3wash valve left open⏎111⏎if it falls then call⏎⏎⏎");

        Assert.IsType<SignPage>(terminal.State.Top);
        Assert.Contains("CHANGED: acid, wash valve left open", terminal.Words, StringComparison.Ordinal);
        terminal.Press(Pin + "⏎");
        Assert.Equal("wash valve left open", terminal.Journal.Read().Select(r => r.Body).OfType<HandoverPrepared>().Single().Changes!["acid"]);
    }

    [Fact]
    public void A_reservation_that_comes_to_mind_late_is_said_from_the_own_words_or_beside_the_PIN_and_Esc_is_one_step()
    {
        using var terminal = new Terminal(by: "op3", before: t => Prepared(Trip(t)));
        terminal.Press("h");
        ReadAll(terminal);
        Asked(terminal);
        terminal.Press("⎋");
        Assert.IsType<ReadPage>(terminal.State.Top);
        terminal.Press("⏎");
        Assert.IsType<LinesPage>(terminal.State.Top);
        Assert.Contains("Tab reservation", terminal.Screen, StringComparison.Ordinal);
        terminal.Conversation.Take(new Pressed(new Keystroke(KeyName.Tab)));
        terminal.Press("acid not checked⏎valve first⏎⏎");
        Assert.IsType<SignPage>(terminal.State.Top);
        Assert.Contains("reserving acid not checked", terminal.Words, StringComparison.Ordinal);
        terminal.Press("v⌦acid and gas not checked⏎");
        Assert.IsType<SignPage>(terminal.State.Top);
        Assert.Contains("reserving acid and gas not checked", terminal.Words, StringComparison.Ordinal);
        terminal.Press(Pin + "⏎");

        var taken = terminal.Journal.Read().Select(r => r.Body).OfType<HandoverAccepted>().Last();
        Assert.Equal("acid and gas not checked", taken.Reservation);
        Assert.Equal(["valve first"], taken.First, StringComparer.Ordinal);
        Assert.IsType<NowPage>(terminal.State.Top);
    }

    [Fact]
    public void A_refusal_leaves_the_line_where_it_is()
    {
        using var terminal = new Terminal(by: "op3", before: t => Prepared(Trip(t)));

        terminal.Press("hxthe upset is not over⏎");

        Assert.Equal("op1", terminal.Desk.State.Line.Holder!.Code);
        Assert.Single(terminal.Journal.Read(), r => r.Body is HandoverRefused);
        Assert.IsType<NowPage>(terminal.State.Top);
    }

    [Fact]
    public void While_nothing_is_prepared_the_key_that_refuses_says_so_and_asks_nothing()
    {
        using var terminal = new Terminal(by: "op3", before: t => Trip(t).HeldBy("op1"));

        terminal.Press("hx");

        Assert.IsType<ReadPage>(terminal.State.Top);
        Assert.Contains("x: Operator one has prepared nothing yet: there is no handover to refuse", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("x refuse", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Not_yet_takes_a_digit_and_Enter()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("hb1⏎");

        Assert.Equal("critical step running", terminal.Desk.State.Line.NotYet!.Why);
    }

    [Fact]
    public void Another_reason_than_those_of_the_list_is_taken_with_words()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("hb2⏎⏎");
        Assert.Null(terminal.Desk.State.Line.NotYet);
        Assert.Contains("a few words are needed", terminal.Words, StringComparison.Ordinal);
        terminal.Press("the relief is on the stair⏎");
        Assert.Equal("other: the relief is on the stair", terminal.Desk.State.Line.NotYet!.Why);

        terminal.Press("i").Press("op3⏎").Press("!2⏎smoke in the room⏎");
        Assert.Equal("op3", terminal.Desk.State.Line.Holder!.Code);
        Assert.Equal("other: smoke in the room", terminal.Journal.Read().Select(r => r.Body).OfType<HandoverRelief>().Single().Words);
    }

    [Fact]
    public void A_short_relief_is_one_line_and_one_pin()
    {
        using var terminal = new Terminal(by: "op3", before: t => Trip(t).HeldBy("op1"));

        terminal.Press("hfflow by hand⏎" + Pin + "⏎");

        Assert.Equal(("op3", "op1"), (terminal.Desk.State.Line.Holder!.Code, terminal.Desk.State.Line.Holder.For!.Code));
        Assert.IsType<NowPage>(terminal.State.Top);
    }

    [Theory]
    [InlineData("")]
    [InlineData("l")]
    [InlineData("lf")]
    [InlineData("h")]
    [InlineData("r")]
    [InlineData("?")]
    [InlineData("i")]
    public void Emergency_relief_works_from_every_page_without_a_pin(string keys)
    {
        using var terminal = new Terminal(by: "op3", before: t => Trip(t).HeldBy("op1"));

        terminal.Press(keys + "!1⏎");

        Assert.Equal("op3", terminal.Desk.State.Line.Holder!.Code);
        Assert.Equal("emergency", terminal.Desk.State.Line.Holder.How);
    }

    [Fact]
    public void An_emergency_while_the_holder_is_typing_asks_who_takes_the_line()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Open("Line round").Press("!op3⏎1⏎");

        Assert.Equal("op3", terminal.Desk.State.Line.Holder!.Code);
        Assert.Equal("op3", terminal.State.By);
    }

    [Fact]
    public void Who_holds_the_line_already_is_told_so_when_an_emergency_is_to_give_it_to_them()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("!");
        Assert.Contains("who takes the line? Operator one holds it already", terminal.Words, StringComparison.Ordinal);
        terminal.Press("op1⏎");
        Assert.Contains("Operator one holds the line already: another person takes it, or Esc", terminal.Words, StringComparison.Ordinal);
        Assert.IsType<WhoPage>(terminal.State.Top);
        terminal.Press("op3⏎1⏎");

        Assert.Equal("op3", terminal.Desk.State.Line.Holder!.Code);
    }

    [Fact]
    public void What_an_emergency_holder_has_not_read_stays_on_every_page_until_it_is_opened()
    {
        using var terminal = new Terminal(by: "op3", before: t => Trip(t).HeldBy("op1"));

        terminal.Press("!1⏎");
        Assert.Contains("NOT READ YET: hazards, moving, changed", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("l");
        Assert.Contains("NOT READ YET: hazards, moving, changed", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⎋h");
        ReadAll(terminal);

        Assert.DoesNotContain("NOT READ YET", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("all of it is read", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_nobody_holds_is_taken_alone_with_a_reason()
    {
        using var terminal = new Terminal(by: "op3", before: t => Trip(t));
        Assert.Contains("NOBODY HOLDS THE LINE", terminal.Screen, StringComparison.Ordinal);

        terminal.Press("honew log⏎");
        ReadAll(terminal);
        Asked(terminal);
        terminal.Press("walk the line⏎⏎" + Pin + "⏎");

        Assert.Equal("unattended", terminal.Desk.State.Line.Holder!.How);
    }

    [Fact]
    public void A_supervisor_countersigns_by_pin()
    {
        using var terminal = new Terminal(by: "sup1", before: t => Trip(t).HeldBy("op1"));

        terminal.Press("hppwalked it together⏎" + Pin + "⏎");

        Assert.Equal("bypass", Assert.Single(terminal.Desk.State.Line.ToCountersign).What); // for who is said to have allowed it
    }

    [Fact]
    public void What_waits_for_a_signature_says_why_and_who_took_part_is_told_before_the_first_word()
    {
        using var terminal = new Terminal(by: "sup1", before: t => Trip(t).HeldBy("op1"));

        terminal.Press("!1⏎ap");
        Assert.Contains("emergency handover, Supervisor", terminal.Words, StringComparison.Ordinal);
        Assert.Contains($": {terminal.Desk.Site.Reasons.Relief[0]}", terminal.Words, StringComparison.Ordinal);
        Assert.IsType<WaitingPage>(terminal.State.Top);
        terminal.Press("↓p");

        Assert.Contains("p: who took part does not countersign", terminal.Screen, StringComparison.Ordinal);
        Assert.IsType<WaitingPage>(terminal.State.Top);
    }

    [Fact]
    public void A_short_relief_that_has_lasted_an_hour_is_not_relieved_for_a_while_again()
    {
        using var terminal = new Terminal(by: "op3", before: t => Trip(t).HeldBy("op1"));
        terminal.Press("hfflow by hand⏎" + Pin + "⏎isup1⏎");

        terminal.Press("hf");
        Assert.IsType<AskPage>(terminal.State.Top);
        terminal.At(125).Press("⎋f");

        Assert.Contains("f: the relief of 09:05 has lasted an hour: take over in full", terminal.Words, StringComparison.Ordinal);
        Assert.IsNotType<AskPage>(terminal.State.Top);
    }

    [Fact]
    public void A_forgotten_pin_is_witnessed_by_another_person()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("h11111111⏎if it turns, then call⏎⏎⏎");
        terminal.Conversation.Take(new Pressed(new Keystroke(KeyName.Tab)));
        terminal.Press("sup1⏎" + Pin + "⏎");

        Assert.Equal("witness", terminal.Journal.Read().Select(r => r.Body).OfType<HandoverPrepared>().Single().Signed.How);
    }

    [Fact]
    public void Another_person_at_the_keys_does_not_sign_what_the_first_one_declared()
    {
        using var terminal = new Terminal(before: t => Trip(t).HeldBy("op1"));

        terminal.Press("h1111⎋iop3⏎iop1⏎h");

        Assert.Empty(terminal.State.Giving.Declared);
    }

    private static Terminal Trip(Terminal terminal)
    {
        terminal.Carry("bypass", "lime-screw", "low-flow lime trip off", Logbook.Testing.Some.Morning.AddHours(5), ("allowed-by", "eng1"), ("instead", "liquor flow by hand each 30 min"));
        return terminal;
    }

    private static void Prepared(Terminal terminal)
    {
        terminal.HeldBy("op1");
        var declared = Handover.HazardSections.All.ToDictionary(s => s, _ => "checked", StringComparer.Ordinal);
        var request = new Handover.PrepareRequest("op1", declared, ["if it turns, then call instrument duty"], ["watch the bowl"]);
        Assert.NotNull(Handover.Preparing.Prepare(terminal.Desk, new Handover.SignWith(terminal.Pins, _ => Pin), request).Record);
    }

    private static void ReadAll(Terminal terminal)
    {
        for (var keys = 0; terminal.State.Top is ReadPage && keys < 60; keys++)
        {
            terminal.Press("⏎");
        }
    }

    private static void Asked(Terminal terminal)
    {
        while (terminal.State.Top is QuestionPage)
        {
            terminal.Answer();
        }
    }
}
