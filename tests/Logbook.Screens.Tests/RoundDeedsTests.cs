using Logbook.Journal;

namespace Logbook.Screens.Tests;

/// <summary>What takes more than one row of a round.</summary>
public sealed class RoundDeedsTests
{
    [Fact]
    public void The_rest_of_an_area_is_not_taken_with_one_reason()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎N1⏎");

        Assert.Equal("LM-F1", terminal.Round.Row.Point.Tag);
        Assert.Equal("no time", terminal.Round.Rows[1].Why);
        Assert.False(terminal.Round.Rows[2].Answered);
    }

    [Fact]
    public void All_rows_of_the_area_land_in_the_journal_with_their_reason()
    {
        using var terminal = new Terminal();

        terminal.Open("White liquor titration").Press("N3⏎⏎");

        Assert.Equal("WL-A=- WL-B=- WL-C=-", terminal.Typed);
        Assert.All(terminal.Entries.SelectMany(e => e.Readings), r => Assert.Equal("equipment down", r.Why));
    }

    [Fact]
    public void An_upset_is_declared_from_a_time_and_ended_with_the_same_key()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("d0830⏎lime screw tripped⏎");
        Assert.IsType<RoundPage>(terminal.State.Top);
        Assert.Equal((new TimeSpan(8, 30, 0), "lime screw tripped"), (terminal.Desk.State.Upset!.Began.TimeOfDay, terminal.Desk.State.Upset.Why));
        terminal.Tick(0.02).Press("d⏎");

        Assert.Null(terminal.Desk.State.Upset);
    }

    [Fact]
    public void A_round_typed_from_a_sheet_counts_from_the_walk()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("p0845⏎0855⏎99.8⏎⎋");

        var entry = Assert.Single(terminal.Entries);
        Assert.Equal((new TimeSpan(8, 45, 0), new TimeSpan(8, 55, 0)), (entry.WalkStart!.Value.TimeOfDay, entry.WalkEnd!.Value.TimeOfDay));
        Assert.Equal(new TimeSpan(8, 55, 0), entry.Readings[0].At.TimeOfDay);
    }

    [Fact]
    public void Esc_on_the_times_of_a_sheet_leads_back_to_the_round()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("p0845⏎⎋");

        Assert.IsType<RoundPage>(terminal.State.Top);
        Assert.Null(terminal.Round.WalkEnd);
    }

    [Fact]
    public void What_the_whole_entry_says_is_shown_when_the_round_is_saved()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎301⏎22.4⏎88⏎⏎");

        Assert.IsType<FindingsPage>(terminal.State.Top);
        Assert.Contains("What stands out in the entry", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("above the watch limit", terminal.Words, StringComparison.Ordinal);
        Assert.IsType<NowPage>(terminal.Press("⎋").State.Top);
    }

    [Fact]
    public void What_was_urgent_and_saved_at_once_is_named_when_the_rest_of_its_walk_is_saved()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("103.4⏎");
        var urgent = terminal.Desk.State.Head.Seq;
        terminal.Press("301⏎22.4⏎88⏎⏎");

        Assert.Equal(2, terminal.Entries.Count);
        Assert.IsType<FindingsPage>(terminal.State.Top);
        Assert.Matches($@"; saved before it: urgent SL-MARGIN \(#{urgent}\)", terminal.Words);
    }

    [Fact]
    public void A_round_in_which_nothing_stands_out_goes_straight_back()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎301⏎18.9⏎88⏎⏎");

        Assert.IsType<NowPage>(terminal.State.Top);
        Assert.Single(terminal.Journal.Read(), r => r is { Body: Entry, Seq: > 2 });
    }
}
