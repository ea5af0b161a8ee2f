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
