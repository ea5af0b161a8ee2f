namespace Logbook.Screens.Tests;

public sealed class NowTests
{
    [Fact]
    public void Esc_never_leaves_the_program()
    {
        using var terminal = new Terminal();

        terminal.Press("⎋⎋⎋");

        Assert.False(terminal.Conversation.Over);
        Assert.Contains("q leaves the program", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void q_leaves_at_once_when_nothing_is_unsaved()
    {
        using var terminal = new Terminal();

        terminal.Press("q");

        Assert.True(terminal.Conversation.Over);
    }

    [Fact]
    public void Leaving_with_something_unsaved_takes_the_key_twice_in_a_row()
    {
        using var terminal = new Terminal();
        terminal.Open("Line round").Press("99.8⏎").Crash().Press("op1⏎⏎");
        var draft = terminal.State with { Pages = [new NowPage(0, 0)] };
        var setting = new Setting(terminal.Desk.Now, r => Checks.RecordEntry.Judge(terminal.Desk, r));

        var once = Step.Of(draft, new Pressed(Keystroke.Of('q')), setting).Session;
        var other = Step.Of(once, new Pressed(Keystroke.Of('x')), setting).Session;

        Assert.False(once.Over);
        Assert.Contains("unsaved: Line round: 1 reading", once.Said.Text, StringComparison.Ordinal);
        Assert.False(Step.Of(other, new Pressed(Keystroke.Of('q')), setting).Session.Over);
        Assert.True(Step.Of(once, new Pressed(Keystroke.Of('q')), setting).Session.Over);
    }

    [Fact]
    public void A_digit_opens_what_stands_out_to_its_evidence_and_Enter_its_record()
    {
        using var terminal = new Terminal(before: t => t.Record(null, "SL-T1=103.4"));

        terminal.Press("1");
        Assert.Contains("within 1 K of boiling", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("evidence", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⏎");
        Assert.Contains("Record 3: entry", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⎋⎋");

        Assert.IsType<NowPage>(terminal.State.Top);
    }

    [Fact]
    public void On_a_bad_night_everything_that_can_hurt_is_named_and_what_is_due_is_in_sight()
    {
        using var terminal = new Terminal(before: t =>
        {
            for (var i = 0; i < 9; i++)
            {
                t.Carry("safety-equipment", "slaker", FormattableString.Invariant($"thing {i} does not work when tested and is being repaired by the day crew"), null, ("instead", "the one at the stair"));
            }

            t.Carry("isolation", "lime-screw", "seal change", null, ("permit", "4417"), ("points", "2"));
            t.Record(null, "SL-T1=103.4");
        });
        terminal.Size(80, 24);

        Assert.Contains("LOCKED Lime screw; OUT Slaker", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("more lines below, Page Down shows them", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("1 urgent 08:02", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("do not sample", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("due Line round closes in 10 min", terminal.Words, StringComparison.Ordinal);
        var read = new List<string>();
        for (var i = 0; i < 9; i++)
        {
            read.Add(terminal.Words);
            terminal.Press("⇟");
        }

        Assert.All(Enumerable.Range(0, 9), i => Assert.Contains(read, words => words.Contains(FormattableString.Invariant($"thing {i} does not"), StringComparison.Ordinal)));
        Assert.Contains(">1 urgent", terminal.Press("↓").Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_digit_beyond_what_stands_out_says_so()
    {
        using var terminal = new Terminal();

        terminal.Press("9");

        Assert.Contains("1-9: nothing stands out", terminal.Screen, StringComparison.Ordinal);
        Assert.IsType<NowPage>(terminal.State.Top);
    }

    [Fact]
    public void What_can_hurt_stands_in_full_however_small_the_screen()
    {
        const string Text = "hose off and tagged, do not use this eyewash, the one at the classifier stair works and was tested at the start of the shift";
        using var terminal = new Terminal(before: t => t.Carry("safety-equipment", "slaker", Text));

        var words = terminal.Size(80, 24).Words;

        Assert.Contains(Text, words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(80)]
    [InlineData(40)]
    public void Who_holds_the_line_is_never_cut(int width)
    {
        using var terminal = new Terminal(before: t => t.HeldBy("op1"));
        terminal.Size(width, 24).Tick(30 * 60);

        Assert.Contains("Operator one holds the line since 3 Mar 08:02, 31 hours, past the shift's end, taken over unattended", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void On_a_small_screen_what_can_hurt_leaves_out_who_said_so_and_a_large_one_tells_it()
    {
        using var terminal = new Terminal(before: t => t.At(-30).Carry("permit", "lime-screw", "inspection of the rake", Testing.Some.Morning.AddHours(5), ("number", "4417"), ("inside", "1")));

        Assert.Contains("Lime screw: inspection of the rake; until 14:00; number 4417. Counted 1 at 08:30. Not recorded: attendant, gas test. Count again", terminal.Size(80, 24).Words, StringComparison.Ordinal);
        Assert.Contains("Counted 1 at 08:30, told by Operator one. Not recorded: attendant, gas test. Count again", terminal.Size(120, 40).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void An_upset_is_in_sight_however_much_can_hurt()
    {
        using var terminal = new Terminal(before: t =>
        {
            for (var i = 0; i < 9; i++)
            {
                t.Carry("safety-equipment", "slaker", FormattableString.Invariant($"thing {i} does not work when tested and is being repaired by the day crew"), null, ("instead", "the one at the stair"));
            }

            Assert.Empty(Checks.Writing.BeginUpset(t.Desk, t.Desk.Now, "lime screw tripped", "op1").Mistakes);
        });

        Assert.Contains("UPSET since 08:02, Operator one: lime screw tripped", terminal.Size(80, 24).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Scrolled_out_of_sight_what_can_hurt_is_named_above()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("safety-equipment", "slaker", "eyewash out", null, ("instead", "the one at the stair"));
            for (var i = 0; i < 20; i++)
            {
                t.Carry("action", "slaker", FormattableString.Invariant($"thing {i}"));
            }
        });

        Assert.DoesNotContain("\n OUT Slaker, eyewash out\n", terminal.Size(80, 24).Screen, StringComparison.Ordinal);
        Assert.Contains("\n OUT Slaker, eyewash out\n", terminal.Press("⇟").Screen, StringComparison.Ordinal);
        Assert.Contains("thing 19", terminal.Press("⇟⇟").Screen, StringComparison.Ordinal);
        Assert.DoesNotContain("\n OUT Slaker, eyewash out\n", terminal.Press("⇞⇞⇞").Screen, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("l⎋", 0)]
    [InlineData("cx⎋⎋", 0)]
    [InlineData("", 1)]
    public void Now_shows_its_top_to_whoever_comes_back_to_it_or_comes_by(string keys, double minutes)
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Record(null, "SL-T1=103.4");
            for (var i = 0; i < 30; i++)
            {
                t.Carry("action", "slaker", FormattableString.Invariant($"thing {i}"));
            }
        });
        terminal.Size(80, 24).Press("⇟⇟");
        Assert.Contains("more lines above", terminal.Screen, StringComparison.Ordinal);
        terminal.Tick(0.5);
        Assert.Contains("more lines above", terminal.Screen, StringComparison.Ordinal);

        terminal.Press(keys);
        terminal.Tick(minutes);

        Assert.DoesNotContain("more lines above", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("1 urgent", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_that_does_not_fit_stands_before_what_follows_from_it()
    {
        using var terminal = new Terminal(before: t =>
        {
            var entry = Checks.RecordEntry.Judge(t.Desk, Testing.Some.Entry("WL-A=29.37", "WL-B=34.33", "WL-C=38.0")).Value!;
            Assert.NotEmpty(entry.Findings);
            t.Desk.Write(entry with { Findings = [.. entry.Findings, new Journal.Finding(Journal.Level.Watch, "examine.named", "WL-B", "End point B does not fit.", [])] }, t.Desk.Now, "op1");
        });

        Assert.Equal("examine.named", terminal.State.Facts.Now.StandsOut.First(f => f.Finding.Level == Journal.Level.Watch).Finding.Code);
    }

    [Fact]
    public void On_every_other_page_what_can_hurt_is_named()
    {
        using var terminal = new Terminal(before: t => t.Carry("bypass", "slaker", "low-flow lime trip off", Testing.Some.Morning.AddHours(5), ("instead", "flow by hand"), ("allowed-by", "eng1")));

        Assert.Contains("DEFEATED Slaker", terminal.Press("l").Screen, StringComparison.Ordinal);
        Assert.Contains("DEFEATED Slaker", terminal.Press("⎋").Open("Line round").Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_is_typing_is_asked_and_found_by_part_of_a_name()
    {
        using var terminal = new Terminal(by: null);

        Assert.Contains("Who is typing?", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("engin⏎");

        Assert.Equal("eng1", terminal.State.By);
        Assert.Contains("Engineer one", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_person_who_is_not_of_this_site_is_refused_and_asked()
    {
        using var terminal = new Terminal(by: "op9");

        Assert.Contains("'op9' is not a person of this site", terminal.Screen, StringComparison.Ordinal);
        Assert.IsType<WhoPage>(terminal.State.Top);
    }

    [Fact]
    public void What_another_terminal_writes_is_seen_within_a_tick()
    {
        using var terminal = new Terminal();
        Assert.DoesNotContain("pump sounds rough", terminal.Screen, StringComparison.Ordinal);

        var other = Testing.Some.Desk(terminal.Clock, terminal.Journal, terminal.Desk.Files);
        Checks.RecordEntry.Run(other, Testing.Some.Entry("SL-F1=150"));
        terminal.Tick(0.02);

        Assert.Contains("150 m3/h", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void How_far_the_mills_server_is_stands_on_Now_as_soon_as_it_changes()
    {
        using var terminal = new Terminal();
        Assert.DoesNotContain(" server ", terminal.Screen, StringComparison.Ordinal);

        terminal.Desk.Server = head => new Checks.ServerView($"holds all but 1 of {head.Seq}", Watch: true);
        terminal.Conversation.Take(new Ticked());

        Assert.Contains(" server    holds all but 1 of ", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_server_that_is_away_for_long_stays_in_sight_however_full_the_page_is()
    {
        using var terminal = new Terminal(before: t =>
        {
            for (var i = 0; i < 9; i++)
            {
                t.Carry("safety-equipment", "slaker", FormattableString.Invariant($"thing {i} does not work when tested and is being repaired by the day crew"), null, ("instead", "the one at the stair"));
            }
        });
        terminal.Size(80, 24);

        foreach (var watch in (bool[])[false, true])
        {
            terminal.Desk.Server = head => new Checks.ServerView($"holds all up to record {head.Seq - 1}; 1 record waits here", watch);
            terminal.Conversation.Take(new Ticked());

            Assert.Equal(watch, terminal.Screen.Contains(" server    holds all up to record ", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void What_is_urgent_now_stands_directly_after_what_can_hurt()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("safety-equipment", "slaker", "no flow when tested", null, ("instead", "the one at the classifier stair"));
            t.Record(null, "SL-T1=103.4");
        });

        var lines = terminal.Screen.Split('\n').ToList();
        var hurts = lines.FindIndex(l => l.StartsWith(" OUT", StringComparison.Ordinal));
        Assert.StartsWith(" 1 urgent", lines.Skip(hurts + 1).First(l => l[1] != ' '), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(80, 16)]
    public void Where_what_can_hurt_fills_the_screen_what_is_urgent_stands_before_it_and_all_of_it_is_named(int width, int height)
    {
        using var terminal = new Terminal(before: t =>
        {
            for (var item = 0; item < 6; item++)
            {
                t.Carry("isolation", "slaker", $"seal change number {item}, with a text that takes more than one line of a small screen to say", null);
            }

            t.Record(null, "SL-T1=103.4");
        });

        terminal.Size(width, height);
        var urgent = terminal.Screen.IndexOf("1 urgent", StringComparison.Ordinal);
        Assert.InRange(urgent, 0, terminal.Screen.IndexOf("seal change number 0", StringComparison.Ordinal));
        Assert.Contains("LOCKED Slaker", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("do not sample", terminal.Words, StringComparison.Ordinal);
    }
}
