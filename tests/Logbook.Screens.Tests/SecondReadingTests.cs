using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens.Tests;

/// <summary>From what does not fit to the reading that would tell: one key.</summary>
public sealed class SecondReadingTests
{
    [Fact]
    public void One_key_goes_from_the_doubt_to_the_reading_that_would_tell_and_nothing_else()
    {
        using var terminal = new Terminal();
        var first = Doubted(terminal, "SL-F1");

        terminal.Press("s");

        Assert.Equal("SL-F1", Assert.Single(terminal.Round.Rows).Point.Tag);
        Assert.Contains($"LINE ROUND, second reading, the first {Say.Ref(first)}", terminal.Screen, StringComparison.Ordinal);
        Assert.DoesNotContain("301", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_titration_all_of_the_sample_is_taken_again()
    {
        using var terminal = new Terminal();
        Doubted(terminal, "WL-B");

        terminal.Press("s");

        Assert.Equal("WL-A WL-B WL-C", string.Join(' ', terminal.Round.Rows.Select(r => r.Point.Tag)));
    }

    [Fact]
    public void It_is_an_entry_of_its_own_that_names_the_first()
    {
        using var terminal = new Terminal();
        var first = Doubted(terminal, "SL-F1");

        terminal.Press("s304⏎⏎");

        var second = terminal.Entries[^1];
        Assert.Equal((first, "SL-F1=304"), (second.SecondOf, string.Join(' ', second.Readings.Select(r => $"{r.Point}={r.Typed}"))));
        Assert.Contains(first, RecordLinks.Of(second));

        // The same figure again, and nothing that compares it: the doubt stands, and is said.
        Assert.IsType<FindingsPage>(terminal.State.Top);
        Assert.Equal(first, Assert.Single(second.Findings, f => f.Again == true).Of);
        Assert.IsType<NowPage>(terminal.Press("⎋").State.Top);
    }

    [Fact]
    public void Left_in_the_middle_it_is_offered_again_as_what_it_was()
    {
        using var terminal = new Terminal();
        var first = Doubted(terminal, "WL-B");

        terminal.Press("s29.4⏎").Crash().Press("op1⏎⏎");

        Assert.Equal((first, 3, 1), (terminal.Round.SecondOf, terminal.Round.Rows.Count, terminal.Round.Rows.Count(r => r.Answered)));
        terminal.Press("34.3⏎39.6⏎⏎");
        Assert.Equal(first, terminal.Entries[^1].SecondOf);
    }

    [Fact]
    public void It_is_reached_from_the_record_in_the_log_too()
    {
        using var terminal = new Terminal();
        var first = Doubted(terminal, "SL-F1");

        terminal.Press("⎋l⏎s");

        Assert.Equal(first, terminal.Round.SecondOf);
    }

    [Fact]
    public void Where_none_would_tell_the_key_says_so()
    {
        using var terminal = new Terminal();
        Doubted(terminal, null);

        Assert.Contains("s: no second reading would tell", terminal.Press("s").Screen, StringComparison.Ordinal);
    }

    /// <summary>An entry in which something does not fit, its findings opened as at the save.</summary>
    private static long Doubted(Terminal terminal, string? settles)
    {
        var body = new Entry
        {
            Round = "hourly",
            Readings = [new Reading { Point = "SL-F1", Typed = "301", Value = 301, Unit = "m3/h", At = terminal.Desk.Now }],
            Findings = [new Finding(Level.Watch, "examine.named", settles ?? "SL-F1", "Green liquor flow does not fit.", []) { Settles = settles }],
        };
        var record = terminal.Desk.Write(body, terminal.Desk.Now, "op1");
        terminal.Tick(0.02).Press("1");
        return record.Seq;
    }
}
