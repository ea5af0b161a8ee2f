using Logbook.Checks;
using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Screens.Tests;

/// <summary>What is written from the log, and how far one gets from a record.</summary>
public sealed class LogDeedsTests
{
    [Fact]
    public void A_reading_is_put_right_from_the_log_and_both_values_stay()
    {
        using var terminal = new Terminal();

        terminal.Press("lc↓⏎298⏎⏎29⏎");
        Assert.Contains("29 is no reason", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(terminal.Journal.Read(), r => r.Body is Correction);
        terminal.Press("⌦read a line too high⏎");

        var correction = Assert.Single(terminal.Journal.Read().Select(r => r.Body).OfType<Correction>());
        Assert.Equal((2, "SL-F1", "298", "read a line too high"), (correction.Target, correction.Reading!.Point, correction.Reading.Typed, correction.Why));
        Assert.Contains("put right SL-F1 298 m3/h: read a line too high.", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("typed '301'; put right (#3) to 298 m3/h", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⎋");
        Assert.Contains("SL-F1 of 08:02: first 301 m3/h, put right to 298", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_readings_of_an_entry_are_put_right_in_one_record()
    {
        using var terminal = new Terminal();

        terminal.Press("lc⏎100.1⏎↑↑↑⏎298⏎⏎typed into each other's row⏎");

        var correction = Assert.Single(terminal.Journal.Read().Select(r => r.Body).OfType<Correction>());
        Assert.Equal(["100.1", "298"], [.. correction.Readings.Select(r => r.Typed!).Order(StringComparer.Ordinal)], StringComparer.Ordinal);
    }

    [Fact]
    public void A_value_that_was_typed_into_the_wrong_row_is_put_right_to_not_taken()
    {
        using var terminal = new Terminal();

        terminal.Press("lc↓⏎-⏎1⏎⏎it belongs to the next row⏎");

        var correction = Assert.Single(terminal.Journal.Read().Select(r => r.Body).OfType<Correction>());
        Assert.True(correction.Reading!.NotTaken);
        Assert.Equal((terminal.Desk.Site.Reasons.NotTaken[0], "it belongs to the next row"), (correction.Reading.Why, correction.Why));
        Assert.IsType<RecordPage>(terminal.State.Top);
        terminal.Press("⎋");
        Assert.Contains("SL-F1 of 08:02: first 301 m3/h, TAKEN BACK", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_and_the_findings_below_it_show_what_stands_after_a_correction()
    {
        using var terminal = new Terminal(before: t => t.Record(null, "SL-F1=230"));
        var entry = terminal.Journal.Read().Last().Seq;

        terminal.Press("1");
        Assert.IsType<FindingsPage>(terminal.State.Top);
        terminal.Press("⏎");
        Assert.Contains("in full below what was read", terminal.Words, StringComparison.Ordinal);
        terminal.Press("c298⏎misread⏎");

        Assert.Contains("nothing any more, as put right", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("WATCH", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⎋");
        Assert.IsType<FindingsPage>(terminal.State.Top);
        Assert.Contains($"What stands of the entry (#{entry}), put right (#{entry + 1})", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("nothing stands out any more", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_correction_that_is_refused_keeps_what_was_typed()
    {
        using var terminal = new Terminal();

        terminal.Press("l⏎c↓⏎x⏎⏎why⏎");

        Assert.IsType<AskPage>(terminal.State.Top);
        Assert.DoesNotContain(terminal.Journal.Read(), r => r.Body is Correction);
        Assert.Contains("'x'", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_remark_on_a_record_names_it_and_is_one_key_from_it()
    {
        using var terminal = new Terminal();

        terminal.Press("lmvalve was sticking⏎");
        Assert.Equal(2, Assert.Single(terminal.Journal.Read().Select(r => r.Body).OfType<Remark>()).Related);
        terminal.Tick(0.02).Press("]");

        Assert.Equal([2, 3], Assert.IsType<RelatedPage>(terminal.State.Top).Lines.Select(l => l.Seq));
        terminal.Press("↑⏎");
        Assert.Contains("Record 2: entry", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_that_nothing_belongs_to_says_so()
    {
        using var terminal = new Terminal();

        Assert.Contains("nothing else belongs to (#2)", terminal.Press("l]").Screen, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("kind=remark", 2)]
    [InlineData("kind=remark by=eng1", 1)]
    [InlineData("area=lime", 3)] // a round over several areas is of each of them
    [InlineData("area=slaker", 1)]
    [InlineData("shift=2026-03-03-D", 4)]
    [InlineData("shift=N", 0)]
    [InlineData("by=op1 squeals", 1)]
    public void A_filter_looks_in_the_place_that_a_word_names(string filter, int count)
    {
        using var terminal = new Terminal(before: t =>
        {
            Writing.Remark(t.Desk, "belt squeals", "lime-screw", null, "op1");
            Writing.Remark(t.Desk, "belt tightened by op1", "lime-screw", null, "eng1");
        });

        terminal.Press("lf" + filter + "⏎");

        Assert.Equal(count, ((LogPage)terminal.State.Top).Shown.Count);
    }

    [Fact]
    public void A_filter_by_an_area_that_there_is_not_names_those_that_there_are()
    {
        using var terminal = new Terminal();

        terminal.Press("lfarea=slakr⏎");

        Assert.Contains("no area is called 'slakr'; there are raw-green-liquor, ", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⌦area=lime⏎f");
        Assert.Contains("Now shown: area=lime", terminal.Words, StringComparison.Ordinal);
        Assert.Equal("", ((AskPage)terminal.State.Top).Text);
    }

    [Fact]
    public void A_record_that_was_put_right_says_so_in_its_line_and_what_was_answered_stands_in_its_area()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Record(null, "SL-T1=9.94");
            Assert.NotNull(Writing.Answer(t.Desk, "3.1", "a slip", "op1").Record);
            Assert.NotNull(Writing.Correct(t.Desk, 3, Testing.Some.Reading("SL-T1", "99.4"), "a slip", "op1").Record);
        });

        terminal.Press("lfarea=slaker⏎");

        var page = (LogPage)terminal.State.Top;
        Assert.Contains("; put right by Operator one 08:02 (#5); watch:", page.Shown.Single(l => l.Seq == 3).Words, StringComparison.Ordinal);
        Assert.Equal([5, 4, 3, 2], page.Shown.Select(l => l.Seq));
    }

    [Fact]
    public void The_mark_is_on_the_screen_wherever_it_is_in_a_long_log()
    {
        using var terminal = new Terminal(before: t =>
        {
            for (var i = 0; i < 300; i++)
            {
                Writing.Remark(t.Desk, FormattableString.Invariant($"filling {i};"), null, null, "op1");
            }
        });
        terminal.Press("l");

        foreach (var key in "↓⇟⇟↓⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟⇟↑⇞⇞↑")
        {
            terminal.Press(key.ToString());
            var marked = ((LogPage)terminal.State.Top).Marked!;
            Assert.Contains(terminal.Screen.Split('\n'), l => l.StartsWith(" >", StringComparison.Ordinal) && l.Contains(marked.Words[..10], StringComparison.Ordinal));
        }
    }

    [Fact]
    public void What_was_done_about_an_urgent_finding_is_answered_beside_it()
    {
        using var terminal = new Terminal(before: t => t.Record(null, "SL-T1=103.4"));

        terminal.Press("1ylime cut, told the supervisor⏎");

        Assert.Equal("lime cut, told the supervisor", Assert.Single(terminal.Journal.Read().Select(r => r.Body).OfType<FindingAnswered>()).Text);
    }
}
