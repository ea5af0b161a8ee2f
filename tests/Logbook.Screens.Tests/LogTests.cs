namespace Logbook.Screens.Tests;

public sealed class LogTests
{
    [Fact]
    public void The_newest_record_stands_first()
    {
        using var terminal = new Terminal(before: t => Checks.Writing.Remark(t.Desk, "belt squeals", "lime-screw", null, "op1"));

        terminal.Press("l");

        var words = ((LogPage)terminal.State.Top).Shown.Select(l => l.Kind);
        Assert.Equal("remark entry site", string.Join(' ', words));
        Assert.Contains("belt squeals", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Enter_opens_the_whole_record()
    {
        using var terminal = new Terminal();

        terminal.Press("l⏎");

        Assert.Contains("Record 2: entry", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("SL-F1 Green liquor flow to the slaker: 301 m3/h, read 08:02; typed '301'", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⎋⎋");
        Assert.IsType<NowPage>(terminal.State.Top);
    }

    [Fact]
    public void A_filter_shows_records_that_have_all_its_words()
    {
        using var terminal = new Terminal(before: t =>
        {
            Checks.Writing.Remark(t.Desk, "belt squeals", "lime-screw", null, "op1");
            Checks.Writing.Remark(t.Desk, "belt tightened", "lime-screw", null, "eng1");
        });

        terminal.Press("lfBELT eng1⏎");
        Assert.Equal("Lime screw: belt tightened", Assert.Single(((LogPage)terminal.State.Top).Shown).Words);
        terminal.Press("f⌦⏎");

        Assert.Equal(4, ((LogPage)terminal.State.Top).Shown.Count);
    }

    [Fact]
    public void A_filter_reads_as_far_back_as_it_must()
    {
        using var terminal = new Terminal(before: t =>
        {
            Checks.Writing.Remark(t.Desk, "the oldest word", null, null, "op1");
            for (var i = 0; i < 700; i++)
            {
                Checks.Writing.Remark(t.Desk, $"filling {i}", null, null, "op1");
            }
        });

        terminal.Press("l");
        Assert.Equal(200, ((LogPage)terminal.State.Top).Read.Count);
        terminal.Press("foldest⏎");

        Assert.Contains("the oldest word", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Older_records_come_as_the_mark_goes_down()
    {
        using var terminal = new Terminal(before: t =>
        {
            for (var i = 0; i < 300; i++)
            {
                Checks.Writing.Remark(t.Desk, $"filling {i}", null, null, "op1");
            }
        });

        terminal.Press("l" + new string('⇟', 40));

        Assert.Equal(302, ((LogPage)terminal.State.Top).Read.Count);
        Assert.Contains("Site files put in force", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_has_the_number_of_its_record_and_its_columns_are_named()
    {
        using var terminal = new Terminal();

        terminal.Press("l");

        Assert.Contains("Log, newest record first", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("read at record by", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("> 08:02 #2 op1", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_begins_with_what_was_read_and_counts_what_is_said_of_it_below()
    {
        using var terminal = new Terminal(before: t => t.Record(null, "SL-T1=103.4", "LM-F1=22.4"));

        var lines = terminal.Press("l⏎").Screen.Split('\n').ToList();

        Assert.Contains("stands out 1 urgent", terminal.Words, StringComparison.Ordinal);
        Assert.True(lines.FindIndex(l => l.StartsWith(" LM-F1", StringComparison.Ordinal)) < lines.FindIndex(l => l.StartsWith(" urgent", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(24, 6)]
    [InlineData(30, 40)]
    public void The_log_is_drawn_on_a_screen_narrower_than_its_columns(int width, int height)
    {
        using var terminal = new Terminal(before: t => t.Record(null, "SL-T1=103.4", "LM-F1=22.4"));

        var lines = terminal.Size(width, height).Press("l").Screen.Split('\n');

        Assert.Equal(height, lines.Length);
        Assert.All(lines, l => Assert.True(l.Length <= width, l));
    }

    [Fact]
    public void The_mark_stays_on_its_record_when_new_ones_come()
    {
        using var terminal = new Terminal();
        terminal.Press("l↓");
        var marked = ((LogPage)terminal.State.Top).Shown[1].Seq;

        Checks.Writing.Remark(terminal.Desk, "belt squeals", null, null, "op1");
        terminal.Tick(0.02);

        var page = (LogPage)terminal.State.Top;
        Assert.Equal(marked, page.Shown[page.Selected].Seq);
        Assert.Contains("belt squeals", terminal.Screen, StringComparison.Ordinal);
    }
}
