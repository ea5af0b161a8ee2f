using Logbook.Journal;

namespace Logbook.Screens.Tests;

public sealed class CarriedPageTests
{
    [Theory]
    [InlineData('a', "delivery")]
    [InlineData('b', "sample")]
    [InlineData('c', "injury")]
    [InlineData('d', "release")]
    public void Every_kind_has_a_digit_or_a_letter(char key, string kind)
    {
        using var terminal = new Terminal();

        terminal.Press("ca");
        Assert.Contains($"  {key} {kind}", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("e");
        Assert.Contains("there is no e; 1 to d", terminal.Screen, StringComparison.Ordinal);
        terminal.Press(key.ToString());

        Assert.Contains($"> {key} {kind}", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("at which equipment or area?", terminal.Press("⏎").Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Carried_items_are_confirmed_one_by_one_with_a_key_what_can_hurt_first()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("temporary-change", "slaker", "hose for seal water", Logbook.Testing.Some.Morning.AddHours(9));
            t.Carry("safety-equipment", "slaker", "no flow", null, ("instead", "the one at the stair"));
            t.Carry("action", "slaker", "tighten the guard");
        });

        terminal.Press("c1⏎↓2⏎clamp is loose⏎⏎↓n⏎");

        var looks = terminal.Journal.Read().Select(r => r.Body).OfType<CarryConfirmed>().ToList();
        Assert.Equal([(4, true), (3, true), (5, false)], looks.Select(l => (l.Id, l.Seen)));
        Assert.Equal("clamp is loose", looks[1].Changed);
        Assert.Null(looks[1].Until);
        Assert.Contains("NOT SEEN 09:05 Operator one", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_goes_on_longer_gets_another_end()
    {
        using var terminal = new Terminal(before: t => t.Carry("temporary-change", "slaker", "hose for seal water", Logbook.Testing.Some.Morning.AddHours(9)));

        terminal.Press("c2⏎second hose⏎");
        Assert.Contains("Until when? 18:00 before", terminal.Words, StringComparison.Ordinal);
        terminal.Press("2130⏎");

        Assert.Equal(Logbook.Testing.Some.Morning.AddHours(12.5), terminal.Desk.State.Carried.Single().Until);
        Assert.Contains("until 21:30", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_owner_is_chosen_by_name_and_of_an_isolation_it_is_said_whose_lock_stays()
    {
        using var terminal = new Terminal(before: t => t.Carry("isolation", "slaker", "agitator blade", null, ("permit", "4421")));

        terminal.Press("co");
        Assert.Contains("who owns it from now on? nobody is named yet", terminal.Words, StringComparison.Ordinal);
        terminal.Press("op3⏎");

        Assert.Equal("op3", terminal.Desk.State.Carried.Single().Owner);
        Assert.Contains("a lock of Operator one, if one is on, stays until it is removed by the site's procedure", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("owner Operator three", terminal.Words, StringComparison.Ordinal);
        Assert.Null(terminal.Desk.State.Carried.Single().Confirmed); // nobody looked at it for that
    }

    [Fact]
    public void A_lockout_with_people_inside_and_no_lock_recorded_says_so()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("isolation", "slaker", "agitator blade", null, ("permit", "4421"));
            t.Carry("permit", "slaker", "agitator blade", Logbook.Testing.Some.Morning.AddHours(5), ("number", "4421"), ("inside", "2"));
        });

        Assert.Contains("NO LOCK RECORDED, people inside", terminal.Size(120, 40).Words, StringComparison.Ordinal);
        Assert.Contains("NO LOCK RECORDED, people inside", terminal.Press("c").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void With_nothing_open_the_keys_say_so()
    {
        using var terminal = new Terminal();

        Assert.Contains("1: nothing is open", terminal.Press("c1").Screen, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("c11⏎")]
    [InlineData("cn1⏎")]
    [InlineData("c1⏎⏎")]
    public void A_key_pressed_twice_answers_no_other_item(string keys)
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("safety-equipment", "slaker", "no flow", null, ("instead", "the one at the stair"));
            t.Carry("action", "slaker", "tighten the guard");
        });

        terminal.Press(keys);

        Assert.True(Assert.Single(terminal.Journal.Read().Select(r => r.Body).OfType<CarryConfirmed>()).Seen);
    }

    [Fact]
    public void An_item_is_opened_by_keys_each_field_of_its_kind_by_its_name()
    {
        using var terminal = new Terminal();

        terminal.Press("ca3⏎slaker⏎welding at the hatch⏎⏎");
        Assert.Contains("is not a time", terminal.Words, StringComparison.Ordinal);
        terminal.Press("1130⏎4417⏎");
        Assert.Contains("nobody goes in: hot work, a line opened", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("1⏎2⏎op3⏎");

        var item = Assert.IsType<Carry>(terminal.Journal.Read().Last().Body);
        Assert.Equal(("permit", "slaker", "welding at the hatch", "op3"), (item.ItemKind, item.On, item.Text, item.Owner));
        Assert.Equal(("4417", "yes", "2"), (item.Fields["number"], item.Fields["entry"], item.Fields["inside"]));
        Assert.Equal(Logbook.Testing.Some.Morning.AddHours(2.5), item.Until);
        Assert.IsType<CarriedPage>(terminal.State.Pages.Last(p => p is not CautionsPage));
    }

    [Fact]
    public void Esc_goes_back_through_the_questions_one_by_one_and_writes_nothing()
    {
        using var terminal = new Terminal();
        var before = terminal.Desk.State.Head.Seq;

        terminal.Press("ca8⏎slaker⏎tighten the guard⏎⏎⏎".TrimEnd('⏎') + "⏎");
        terminal.Press("⎋");
        Assert.Contains("what is open?", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("tighten the guard", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⎋⎋");

        Assert.IsType<CarriedPage>(terminal.State.Top);
        Assert.Equal(before, terminal.Desk.State.Head.Seq);
    }

    [Fact]
    public void What_its_kind_must_say_is_asked_until_it_is_said()
    {
        using var terminal = new Terminal();

        terminal.Press("ca2⏎lime-screw⏎low-flow trip off⏎1400⏎⏎");
        Assert.Contains("a few words are needed", terminal.Words, StringComparison.Ordinal);
        terminal.Press("flow by hand⏎eng1⏎SL-F1⏎30m⏎⏎");

        var item = Assert.IsType<Carry>(terminal.Journal.Read().Last().Body);
        Assert.Equal("bypass instead=flow by hand allowed-by=eng1 point=SL-F1 every=30m", $"{item.ItemKind} instead={item.Fields["instead"]} allowed-by={item.Fields["allowed-by"]} point={item.Fields["point"]} every={item.Fields["every"]}");
    }

    [Fact]
    public void What_the_site_does_not_take_is_said_and_nothing_is_written()
    {
        using var terminal = new Terminal();

        terminal.Press("ca2⏎lime-screw⏎low-flow trip off⏎1400⏎flow by hand⏎eng1⏎XX-9⏎");

        Assert.Contains("point 'XX-9' is none that is read", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(terminal.Journal.Read(), r => r.Body is Carry);
    }

    [Theory]
    [InlineData("ca2⏎lime-screw⏎low-flow trip off⏎1400⏎flow by hand⏎op1⏎", "Operator one cannot allow the own bypass; a code or the name of another person", "Who allowed it?")]
    [InlineData("ca2⏎lime-screw⏎low-flow trip off⏎1400⏎flow by hand⏎operator one⏎", "Operator one cannot allow the own bypass", "Who allowed it?")]
    [InlineData("ca2⏎lime-screw⏎low-flow trip off⏎1400⏎flow by hand⏎eng1⏎SL-F1⏎2m⏎", "every 2m is too short or too long for a check; 5m to 24h", "How often is it read by hand?")]
    [InlineData("ca3⏎lime-screw⏎cleaning⏎1130⏎4417⏎1⏎some⏎", "how many are inside begins with a number; 2, as the attendant counts", "How many people are inside now?")]
    public void An_answer_that_the_journal_would_not_take_is_refused_where_it_is_given(string keys, string said, string question)
    {
        using var terminal = new Terminal();

        terminal.Press(keys);

        Assert.Contains(said, terminal.Words, StringComparison.Ordinal);
        Assert.Contains(question, terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("--", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(terminal.Journal.Read(), r => r.Body is Carry);
    }

    [Fact]
    public void Which_place_was_taken_stands_in_the_next_question_and_the_example_of_an_end_lies_ahead()
    {
        using var terminal = new Terminal();

        Assert.Contains("Permit, Lime screw: what is open?", terminal.Press("ca3⏎lime-screw⏎").Words, StringComparison.Ordinal);
        Assert.Contains("later with its date: 2026-03-05 19:00", terminal.Press("cleaning⏎").Words, StringComparison.Ordinal);
        terminal.Press("2026-03-05 19:00⏎");
        Assert.Contains("Which permit?", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("Permit, the whole area Raw green liquor: what is open?", terminal.Press("⎋⎋⎋⎋").Press("a3⏎raw-green⏎").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_locked_and_said_to_run_is_told_at_once()
    {
        using var terminal = new Terminal(before: t => t.Carry("isolation", "lime-screw", "shear pin"));

        terminal.Press("elime-screw⏎1⏎⏎");
        Assert.Contains("STOP Lime screw is locked, DO NOT START (#3). YET ABOUT TO BE RECORDED AS RUNNING", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎⏎");

        Assert.Equal("running", Assert.IsType<EquipmentStateChanged>(terminal.Journal.Read().Last().Body).State);
        Assert.Contains("YET RECORDED AS RUNNING", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Acid_where_people_are_inside_is_told_before_the_last_question_and_when_it_is_written()
    {
        using var terminal = new Terminal(before: t => t.Carry("permit", "lime-screw", "shear pin", Logbook.Testing.Some.Morning.AddHours(9), ("number", "4417"), ("inside", "2")));

        terminal.Press("elime-screw⏎6⏎⏎");
        Assert.Contains("STOP Lime screw has a permit to enter, 2 counted inside (#3). YET ABOUT TO BE RECORDED AS ACID", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎scale");
        Assert.Contains("YET ABOUT TO BE RECORDED AS ACID", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(terminal.Journal.Read(), r => r.Body is EquipmentStateChanged);
        terminal.Press("⏎");

        Assert.Equal("acid", Assert.IsType<EquipmentStateChanged>(terminal.Journal.Read().Last().Body).State);
        Assert.Contains("YET RECORDED AS ACID", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_permit_with_people_at_what_is_in_acid_is_told_before_its_last_question()
    {
        using var terminal = new Terminal(before: t => Assert.NotNull(Checks.Writing.ChangeState(t.Desk, "lime-screw", "acid", null, "scale", "op1").Record));

        terminal.Press("ca3⏎lime-screw⏎cleaning⏎1130⏎4417⏎1⏎2⏎");

        Assert.Contains("STOP Lime screw has a permit to enter, 2 counted inside. YET RECORDED AS ACID", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(terminal.Journal.Read(), r => r.Body is Carry);
    }

    [Fact]
    public void Where_the_hurt_one_is_takes_the_place_of_where_they_were_said_to_be()
    {
        using var terminal = new Terminal(before: t => t.Carry("injury", "slaker", "caustic in the eye", null, ("who", "op3"), ("now", "at the shower")));

        terminal.Press("c2⏎");
        Assert.Contains("where are they now, and how? at the shower before", terminal.Words, StringComparison.Ordinal);
        terminal.Press("in hospital since 16:20⏎");

        Assert.Equal("in hospital since 16:20", terminal.Desk.State.Carried.Single().Fields["now"]);
        Assert.DoesNotContain("at the shower", Handover.NowView.Of(terminal.Desk).Hazards.Single().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_count_at_what_is_in_acid_is_told_whole_before_the_key_that_writes_it()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("permit", "lime-screw", "shear pin", Logbook.Testing.Some.Morning.AddHours(9), ("number", "4417"));
            Assert.NotNull(Checks.Writing.ChangeState(t.Desk, "lime-screw", "acid", null, "scale", "op1").Record);
        });

        terminal.Press("c2⏎");
        Assert.Contains("how many are inside now? nobody has counted yet", terminal.Words, StringComparison.Ordinal);
        terminal.Press("2⏎gone in⏎");
        Assert.Contains("STOP Lime screw has a permit to enter, 2 counted inside (#3). YET RECORDED AS ACID", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("go by the attendant and the lock board at once.", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(terminal.Journal.Read(), r => r.Body is CarryConfirmed);
        terminal.Press("⏎");

        Assert.Equal("2", Assert.IsType<CarryConfirmed>(terminal.Journal.Read().Last().Body).Fields["inside"]);
        Assert.IsType<CarriedPage>(terminal.State.Top);
        terminal.Press("2⏎0⏎all out⏎");
        Assert.IsType<SignPage>(terminal.State.Top); // of the own count too
        terminal.Press(Terminal.Pin + "⏎");
        Assert.Equal("0", Assert.IsType<CarryConfirmed>(terminal.Journal.Read().Last().Body).Fields["inside"]);
    }

    [Fact]
    public void People_whom_another_has_counted_are_counted_out_by_PIN()
    {
        using var terminal = new Terminal(before: t =>
        {
            var permit = t.Carry("permit", "lime-screw", "shear pin", Logbook.Testing.Some.Morning.AddHours(9), ("number", "4417"), ("inside", "1"));
            Assert.NotNull(Checks.Writing.ConfirmCarried(t.Desk, new CarryConfirmed(permit, true, "one more went in", new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = "2" }, null), "op3").Record);
        });

        terminal.Press("c2⏎0, by the attendant⏎all out⏎");
        Assert.IsType<SignPage>(terminal.State.Top);
        Assert.Contains("0, by the attendant; before, 2", terminal.Words, StringComparison.Ordinal);
        Assert.Single(terminal.Journal.Read(), r => r.Body is CarryConfirmed);
        terminal.Press(Terminal.Pin + "⏎");

        Assert.Equal("pin", Assert.IsType<CarryConfirmed>(terminal.Journal.Read().Last().Body).Signed!.How);
        Assert.IsType<CarriedPage>(terminal.State.Top);
    }

    [Fact]
    public void Equipment_of_an_area_that_people_are_in_says_so()
    {
        using var terminal = new Terminal(before: t => t.Carry("permit", "lime", "cleaning", Logbook.Testing.Some.Morning.AddHours(9), ("number", "4417"), ("inside", "2")));

        Assert.Contains("lime-screw INSIDE; Lime screw", terminal.Press("e").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_can_hurt_is_closed_with_words_and_the_PIN_and_what_is_signed_stands_above_it()
    {
        using var terminal = new Terminal(before: t => t.Carry("safety-equipment", "slaker", "no flow", null, ("instead", "the one at the stair")));

        terminal.Press("cx⏎");
        Assert.Contains("a few words are needed", terminal.Words, StringComparison.Ordinal);
        terminal.Press("tested, flows again⏎");
        Assert.Contains("safety equipment, Slaker: no flow (#3)", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("tested, flows again", terminal.Words, StringComparison.Ordinal);
        terminal.Press(Terminal.Pin + "⏎");

        var closed = Assert.IsType<CarryClosed>(terminal.Journal.Read().Last().Body);
        Assert.Equal(("tested, flows again", "pin"), (closed.Why, closed.Signed!.How));
        Assert.IsType<CarriedPage>(terminal.State.Top);
        Assert.Contains("nothing recorded as open", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lockout_under_an_open_permit_is_refused_while_people_are_inside_and_warned_of_when_none_is()
    {
        long permit = 0;
        using var terminal = new Terminal(before: t =>
        {
            permit = t.Carry("permit", "slaker", "inspection", Logbook.Testing.Some.Morning.AddHours(9), ("number", "4417"), ("inside", "2"));
            t.Carry("isolation", "lime-screw", "for entry", null, ("permit", "4417"));
        });

        terminal.Press("c↓x");
        Assert.Contains("2 counted inside under permit 4417, Slaker (#3): isolation 4", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("then 2 on the permit under c", terminal.Words, StringComparison.Ordinal);
        Assert.IsType<CarriedPage>(terminal.State.Top);
        Assert.NotNull(Checks.Writing.ConfirmCarried(terminal.Desk, new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = "0" }, null), "op1").Record);
        terminal.Press("⎋").Tick(1).Press("c↓x");

        Assert.Contains("is STILL OPEN and stands on this lockout", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_own_lock_is_said_to_be_off_before_its_isolation_is_closed_and_the_locks_stand_above_the_signature()
    {
        using var terminal = new Terminal(before: t => Locked(t, "op1"));

        terminal.Press("cx");
        Assert.Contains("your own lock is recorded as on. Is it off?", terminal.Words, StringComparison.Ordinal);
        terminal.Press("2⏎");
        Assert.Contains("not closed: take your own lock off first", terminal.Words, StringComparison.Ordinal);
        Assert.IsType<CarriedPage>(terminal.State.Top);
        terminal.Press("x1⏎work done⏎");
        Assert.Contains("locks Operator one, your own, comes off with it; the lock board rules", terminal.Words, StringComparison.Ordinal);
        terminal.Press(Terminal.Pin + "⏎");

        Assert.Equal("off", Assert.IsType<CarryClosed>(terminal.Journal.Read().Last().Body).Lock);
        Assert.IsType<CarriedPage>(terminal.State.Top);
    }

    [Fact]
    public void An_isolation_without_a_lock_of_its_own_says_so_above_the_signature()
    {
        using var terminal = new Terminal(before: t => Locked(t));

        Assert.Contains("locks none is recorded here; the lock board rules", terminal.Press("cxwork done⏎").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_own_lock_goes_on_and_comes_off_by_a_key_the_incoming_one_first()
    {
        using var terminal = new Terminal(before: t => Locked(t));

        Assert.Contains("your own lock goes on (#3): Enter takes it", terminal.Press("ck").Words, StringComparison.Ordinal);
        terminal.Press("⏎");
        Assert.Contains("your own lock is on", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("locks recorded: Operator one;", terminal.Words, StringComparison.Ordinal);
        terminal.Press("k");
        Assert.Contains("is the last one recorded at item 3; the incoming person's lock goes on first", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("--", terminal.Words, StringComparison.Ordinal);

        Assert.NotNull(Checks.Writing.ConfirmCarried(terminal.Desk, new CarryConfirmed(3, true, null, new Dictionary<string, string>(StringComparer.Ordinal), "on"), "op3").Record);
        terminal.Tick(0.02).Press("k");
        Assert.Contains("your own lock goes off (#3): Enter takes it", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.Equal(["op3"], terminal.Desk.State.Carried.Single().Locks);
    }

    [Fact]
    public void A_lock_that_comes_off_while_people_are_inside_says_first_whose_is_left()
    {
        using var terminal = new Terminal(before: t =>
        {
            Locked(t, "op1", "op3");
            t.Carry("permit", "lime-screw", "inspection", t.Desk.Now.AddHours(4), ("number", "4421"), ("inside", "2"), ("isolation", "3"));
            t.Carry("injury", "lime-screw", "burnt hand", null, ("who", "op3"));
        });
        bool IsOff() => terminal.Journal.Read().Any(r => r.Body is CarryConfirmed { Lock: "off" });
        var permit = terminal.Desk.State.Carried.Single(i => i.ItemKind == "permit").Id;
        var hurt = terminal.Desk.State.Carried.Single(i => i.ItemKind == "injury").Id;

        terminal.Size(120, 40).Press("c");
        while (!terminal.Words.Contains("> HURTS isolation", StringComparison.Ordinal))
        {
            terminal.Press("↓");
        }

        terminal.Press("k⏎");

        Assert.Contains($"STOP Lime screw: people inside (#{permit}); locks still recorded: Operator three, HURT (#{hurt}).", terminal.Words, StringComparison.Ordinal);
        Assert.False(IsOff());
        terminal.Press("⏎");
        Assert.True(IsOff());
    }

    [Fact]
    public void While_another_lock_is_recorded_as_on_the_key_that_closes_says_whose_and_asks_for_nothing()
    {
        using var terminal = new Terminal(before: t => Locked(t, "op1", "op3"));

        terminal.Press("cx");

        Assert.IsType<CarriedPage>(terminal.State.Top);
        Assert.Contains("x: locks of Operator three are recorded as on; each takes off their own by k", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lock_hangs_on_an_isolation_alone()
    {
        using var terminal = new Terminal(before: t => t.Carry("action", "slaker", "tighten the guard"));

        Assert.DoesNotContain("k own lock", terminal.Press("c").Screen, StringComparison.Ordinal);
        Assert.Contains("k: locks hang on an isolation", terminal.Press("k").Screen, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData('1')]
    [InlineData('2')]
    public void One_Enter_stands_in_the_footer_the_one_that_does_something(char found)
    {
        using var terminal = new Terminal(before: t => t.Carry("action", "slaker", "tighten the guard"));
        string Footer() => terminal.Screen.TrimEnd().Split('\n')[^1];

        terminal.Press("c");
        Assert.Contains("Enter open", Footer(), StringComparison.Ordinal);
        Assert.DoesNotContain("Enter take", Footer(), StringComparison.Ordinal);
        terminal.Press(found.ToString());

        Assert.Contains("Enter take", Footer(), StringComparison.Ordinal);
        Assert.DoesNotContain("Enter open", Footer(), StringComparison.Ordinal);
    }

    private static void Locked(Terminal terminal, params string[] owners)
    {
        var item = terminal.Carry("isolation", "lime-screw", "shear pin");
        Assert.All(owners, owner => Assert.NotNull(Checks.Writing.ConfirmCarried(terminal.Desk, new CarryConfirmed(item, true, null, new Dictionary<string, string>(StringComparer.Ordinal), "on"), owner).Record));
    }

    [Fact]
    public void What_cannot_hurt_is_closed_with_words_alone()
    {
        using var terminal = new Terminal(before: t => t.Carry("action", "slaker", "tighten the guard"));

        terminal.Press("cxdone⏎");

        Assert.Null(Assert.IsType<CarryClosed>(terminal.Journal.Read().Last().Body).Signed);
        Assert.IsType<CarriedPage>(terminal.State.Top);
    }

    [Fact]
    public void Equipment_goes_into_acid_by_keys_and_its_caution_is_shown()
    {
        using var terminal = new Terminal();

        terminal.Press("elime⏎6⏎0850⏎");
        Assert.Contains("hydrogen sulphide, which kills", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎scale");
        Assert.Contains("hydrogen sulphide, which kills", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(terminal.Journal.Read(), r => r.Body is EquipmentStateChanged);
        terminal.Press("⏎");

        var state = Assert.IsType<EquipmentStateChanged>(terminal.Journal.Read().Last().Body);
        Assert.Equal(("lime-screw", "acid", "scale"), (state.Equipment, state.State, state.Why));
        Assert.IsType<NowPage>(terminal.State.Top);
    }

    [Fact]
    public void A_wash_has_its_caution_above_the_last_question_and_Esc_leads_back_through_it()
    {
        using var terminal = new Terminal();

        terminal.Press("ca5⏎slaker⏎tubes washed⏎⏎⏎⏎");
        Assert.IsType<AskPage>(terminal.State.Top);
        Assert.Contains("hydrogen sulphide, which kills", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⎋");
        Assert.IsType<CautionsPage>(terminal.State.Top);
        Assert.DoesNotContain(terminal.Journal.Read(), r => r.Body is Carry);
        terminal.Press("⏎⏎");

        Assert.Equal("wash", Assert.IsType<Carry>(terminal.Journal.Read().Last().Body).ItemKind);
        Assert.IsType<CarriedPage>(terminal.State.Top);
    }

    [Fact]
    public void A_wash_is_asked_for_its_acid_so_that_words_which_name_none_hide_none()
    {
        using var terminal = new Terminal();

        terminal.Press("ca5⏎slaker⏎tubes washed⏎⏎");
        Assert.Contains("Which acid?", terminal.Words, StringComparison.Ordinal);
        terminal.Press("phosphoric⏎⏎⏎⏎⏎⏎⏎");

        Assert.Equal("phosphoric", Assert.IsType<Carry>(terminal.Journal.Read().Last().Body).Fields["acid"]);
        Assert.True(Assert.Single(terminal.State.Facts.Now.Carried).IsHazard);
    }

    [Fact]
    public void What_the_caution_of_an_acid_wash_asks_is_asked_one_by_one_with_the_caution_in_sight()
    {
        using var terminal = new Terminal();

        terminal.Press("ca5⏎slaker⏎tubes washed⏎⏎sulphamic⏎⏎");
        foreach (var (question, answer) in new[] { ("Rinsed and tested?", "twice, no gas, op3"), ("Where does it drain", "acid sump"), ("Is the area closed, and who was told?", "shift supervisor"), ("At which step is it?", "filling") })
        {
            Assert.Contains(question, terminal.Words, StringComparison.Ordinal);
            Assert.Contains("hydrogen sulphide, which kills", terminal.Words, StringComparison.Ordinal);
            terminal.Press(answer + "⏎");
        }

        Assert.Contains("Who looks after it?", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");

        var wash = Assert.IsType<Carry>(terminal.Journal.Read().Last().Body);
        Assert.Equal("acid=sulphamic drain=acid sump step=filling tested=twice, no gas, op3 told=shift supervisor", string.Join(' ', wash.Fields.OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => $"{f.Key}={f.Value}")));
    }

    [Fact]
    public void What_is_typed_on_a_caution_is_said_not_to_be_taken_and_its_Enter_answers_nothing()
    {
        using var terminal = new Terminal();

        terminal.Press("ca5⏎slaker⏎tubes washed⏎⏎sulphamic⏎rinsed");
        Assert.Contains("what is typed on this page is not taken", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("Enter read on ", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("Enter read ", terminal.Words.Replace("Enter read on ", "", StringComparison.Ordinal), StringComparison.Ordinal);
        terminal.Press("⏎");
        Assert.IsType<CautionsPage>(terminal.State.Top);
        Assert.Contains("what is typed on this page is not taken", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.Contains("Rinsed and tested?", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sample_is_carried_to_its_end_by_keys()
    {
        using var terminal = new Terminal(before: t => t.Carry("sample", "slaker", "free lime of the mud", null, ("status", "taken")));

        Assert.Contains("free lime of the mud, taken;", terminal.Press("c").Words, StringComparison.Ordinal);
        terminal.Press("2⏎handed in at the gate⏎2⏎");
        var look = Assert.IsType<CarryConfirmed>(terminal.Journal.Read().Last().Body);
        Assert.Equal(("handed in at the gate", "at the laboratory"), (look.Changed, look.Fields["status"]));
        Assert.Contains("free lime of the mud, at the laboratory;", terminal.Words, StringComparison.Ordinal);
        terminal.Press("x2 % free lime⏎");

        Assert.Empty(terminal.State.Facts.Now.Carried);
    }

    [Fact]
    public void What_is_used_instead_and_the_key_that_closes_stand_on_a_small_screen()
    {
        using var terminal = new Terminal(before: t => t.Carry("safety-equipment", "slaker", "eyewash out", null, ("instead", "the one at the stair")));

        terminal.Size(80, 24).Press("c");

        Assert.Contains("eyewash out, instead the one at the stair;", terminal.Words, StringComparison.Ordinal);
        Assert.EndsWith("1 still so  2 changed  n not seen  Enter open  x close  a add  Esc back  ? keys", terminal.Screen.TrimEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public void Equipment_is_chosen_with_what_it_does_beside_it_and_what_does_not_run_first()
    {
        using var terminal = new Terminal(before: t => Assert.NotNull(Checks.Writing.ChangeState(t.Desk, "lime-screw", "stopped", null, "shear pin", "op1").Record));

        terminal.Press("e");
        Assert.Contains("> equipment lime-screw STOPPED since 08:02; Lime screw", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("It runs unless somebody has said otherwise", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.Contains("what does it do? Up to now STOPPED since 08:02, shear pin", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_locked_is_not_listed_as_running_because_nobody_said_that_it_stands()
    {
        using var terminal = new Terminal(before: t => t.Carry("isolation", "lime-screw", "shear pin"));

        Assert.Contains("lime-screw LOCKED; Lime screw", terminal.Press("e").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_permit_with_people_inside_is_not_closed_before_they_are_counted_out()
    {
        using var terminal = new Terminal(before: t => t.Carry("permit", "slaker", "rake inspected", Logbook.Testing.Some.Morning.AddHours(2), ("number", "4417"), ("inside", "2")));

        terminal.Press("cx");
        Assert.IsType<CarriedPage>(terminal.State.Top);
        Assert.Contains("x: 2 counted inside: it stays open until 2 has counted all out", terminal.Words, StringComparison.Ordinal);
        terminal.Press("2⏎0⏎⏎" + Terminal.Pin + "⏎x");
        Assert.IsType<AskPage>(terminal.State.Top);
        terminal.Press("work done⏎" + Terminal.Pin + "⏎");

        Assert.Equal("0", terminal.Journal.Read().Select(r => r.Body).OfType<CarryConfirmed>().Single().Fields["inside"]);
        Assert.IsType<CarryClosed>(terminal.Journal.Read().Last().Body);
    }

    [Theory]
    [InlineData("c2⏎⏎stood at the hatch⏎", "changed, not counted: still 2 inside (#4)")]
    [InlineData("c1⏎", "still so, not counted: still 2 inside (#4)")]
    [InlineData("c2⏎1⏎one came out⏎" + Terminal.Pin + "⏎", "1 counted inside (#4)")]
    [InlineData("c2⏎0⏎⏎" + Terminal.Pin + "⏎", "0 counted inside (#4)")]
    [InlineData("c2⏎all out⏎", "'all out': how many are inside begins with a number; what is different is asked next")]
    public void A_look_at_a_permit_says_how_many_are_inside_by_it(string keys, string said)
    {
        using var terminal = new Terminal(before: t => t.Carry("permit", "slaker", "rake inspected", Logbook.Testing.Some.Morning.AddHours(2), ("number", "4417"), ("inside", "2")));

        Assert.Contains(said, terminal.Press(keys).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_round_saw_of_it_stands_in_the_words_in_which_Now_tells_it()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("safety-equipment", "slaker", "hatches do not shut");
            t.Record(null, "SL-HATCH=3");
        });
        const string Seen = "Last look: open; keep clear, hot caustic blinds; follow the site's procedure now. Read 08:02 (#4)";

        Assert.Contains(Seen, terminal.Words, StringComparison.Ordinal);
        terminal.Press("c");
        Assert.Contains("hatches do not shut; " + Seen, terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("not looked at yet", terminal.Words, StringComparison.Ordinal);
        terminal.Press("1⏎");

        Assert.Contains("seen 09:05 Operator one; " + Seen, terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_mark_jumps_over_no_item()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("action", "slaker", "tighten the guard");
            t.At(-20).Carry("action", "slaker", "grease the bearing");
            t.Carry("action", "slaker", "paint the rail");
        });
        terminal.Tick(8 * 24 * 60).Press("c↓1⏎↑↑1⏎");

        Assert.Contains("> open action, Slaker: tighten the guard", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void An_order_is_read_and_a_department_told_without_a_shell()
    {
        using var terminal = new Terminal(before: t => Assert.NotNull(Checks.Writing.GiveOrder(t.Desk, "liquor flow at 300 until the filter is back", null, "sup1").Record));
        Assert.Contains("not read by you", terminal.Words, StringComparison.Ordinal);

        terminal.Press("o⏎trecovery boiler⏎weak wash is cold⏎");
        Assert.Contains("read by you 09:05", terminal.Words, StringComparison.Ordinal);
        terminal.Press("↓⏎Hand⏎will look⏎");

        Assert.Empty(terminal.Desk.State.Departments);
        Assert.True(terminal.Desk.State.Orders.Single().Seen.ContainsKey("op1"));
    }

    [Fact]
    public void An_order_is_withdrawn_on_its_page_and_who_had_read_it_is_shown_that()
    {
        using var terminal = new Terminal(before: t =>
        {
            var order = Checks.Writing.GiveOrder(t.Desk, "liquor flow at 300", null, "op1").Record!.Seq;
            Assert.NotNull(Checks.Writing.SeeOrder(t.Desk, order, "sup1").Record);
        });

        terminal.Press("o⏎xfilter is back⏎");
        Assert.IsType<OrderWithdrawn>(terminal.Journal.Read().Last().Body);
        Assert.Contains("none stands", terminal.Words, StringComparison.Ordinal);
        Assert.True(terminal.Desk.State.Orders.Single().EndIsNewTo("sup1"));
    }

    [Fact]
    public void An_operator_is_told_at_the_key_who_withdraws_another_ones_order()
    {
        using var terminal = new Terminal(before: t => Assert.NotNull(Checks.Writing.GiveOrder(t.Desk, "liquor flow at 300", null, "sup1").Record));

        Assert.DoesNotContain("x withdraw", terminal.Press("o").Words, StringComparison.Ordinal);
        terminal.Press("x");

        Assert.IsType<OrdersPage>(terminal.State.Top);
        Assert.Contains("is not withdrawn by op1; sup1, who gave it, an engineer or a supervisor withdraws it", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_had_read_an_order_is_shown_that_it_was_withdrawn_until_that_is_read()
    {
        using var terminal = new Terminal(before: t =>
        {
            var order = Checks.Writing.GiveOrder(t.Desk, "lime at 16", null, "sup1").Record!.Seq;
            Assert.NotNull(Checks.Writing.SeeOrder(t.Desk, order, "op1").Record);
            Assert.NotNull(Checks.Writing.WithdrawOrder(t.Desk, order, "mended", "sup1").Record);
        });
        Assert.Contains("WITHDRAWN: lime at 16", terminal.Words, StringComparison.Ordinal);

        terminal.Press("o");
        Assert.Contains("mended; was: lime at 16; you had read it", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.Contains("none stands", terminal.Words, StringComparison.Ordinal);
        Assert.False(terminal.Desk.State.Orders.Single().EndIsNewTo("op1"));
    }

    [Fact]
    public void The_mark_and_the_answer_stay_with_their_item_when_another_terminal_closes_one_above_it()
    {
        using var terminal = TwoOpen();
        terminal.Press("c↓1");
        Assert.Contains("still so (#4): Enter takes it", terminal.Words, StringComparison.Ordinal);

        Assert.NotNull(Checks.Writing.CloseCarried(terminal.Desk, new CarryClosed(3, "done"), "op3").Record);
        terminal.Tick(0.02);
        Assert.Contains("still so (#4): Enter takes it", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.Equal((4, true), terminal.Journal.Read().Select(r => r.Body).OfType<CarryConfirmed>().Select(l => (l.Id, l.Seen)).Single());
    }

    [Fact]
    public void An_answer_to_an_item_that_another_terminal_closed_is_dropped_with_a_word()
    {
        using var terminal = TwoOpen();
        terminal.Press("c1");

        Assert.NotNull(Checks.Writing.CloseCarried(terminal.Desk, new CarryClosed(3, "done"), "op3").Record);
        terminal.Tick(0.02);
        Assert.Contains("(#3) was closed meanwhile: your answer is dropped", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.DoesNotContain(terminal.Journal.Read(), r => r.Body is CarryConfirmed);
    }

    private static Terminal TwoOpen() => new(before: t =>
    {
        t.Carry("action", "slaker", "tighten the guard");
        t.Carry("action", "slaker", "grease the bearing");
    });
}
