using Logbook.Journal;

namespace Logbook.Screens.Tests;

/// <summary>What follows from one reading stands under it; nothing urgent that stands by itself is folded.</summary>
public sealed class FoldingTests
{
    private const string Kept = "99.6⏎301⏎↓88⏎60⏎kthe weigher says so⏎";

    [Fact]
    public void A_mistyped_value_that_is_kept_is_one_row_and_names_what_is_urgent_because_of_it()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press(Kept + "⎋⎋⎋").Size(120, 60);

        Assert.True(terminal.Desk.State.Findings.Values.SelectMany(f => f).Count(f => f.Finding.Level == Level.Urgent) >= 2);
        Assert.Contains("1 urgent 09:05 Lime feed by the weigher 60.00 t/h", terminal.Words, StringComparison.Ordinal);
        Assert.Matches("and [0-9]+ that follow from it, urgent: CaO dose from the weigher", terminal.Words);
        Assert.DoesNotContain("2 urgent", terminal.Words, StringComparison.Ordinal);

        terminal.Press("1");

        Assert.Contains("CaO dose from the weigher 175", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("kept because: the weigher says so", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_later_entry_computes_from_the_kept_value_stands_under_it_too()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.6⏎301⏎60⏎kthe weigher says so⏎88⏎⎋⎋⎋").Size(120, 60);

        Assert.Matches("1 urgent 09:05 Lime feed by the weigher 60.00 t/h.* and [0-9]+ that follow from it, urgent: CaO dose from the weigher", terminal.Words);
        Assert.DoesNotContain("2 urgent", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void One_answer_stands_beside_it_and_beside_every_urgent_one_that_follows()
    {
        using var terminal = new Terminal();
        terminal.Open("Line round").Press(Kept + "⎋⎋⎋");

        terminal.Press("1y");
        Assert.Contains("written beside the finding and 1 urgent one that follows from it", terminal.Words, StringComparison.Ordinal);
        terminal.Press("a slip of the finger, put right⏎");

        Assert.All(terminal.Desk.State.Findings.Values.SelectMany(f => f).Where(f => f.Finding.Level == Level.Urgent), f => Assert.NotNull(f.Answer));
    }

    [Fact]
    public void What_a_possible_reading_makes_urgent_is_a_row_of_its_own()
    {
        using var terminal = new Terminal(before: t => t.Record("hourly", "SL-T1=99.6", "SL-F1=301", "LM-F1=26.0", "LM-CAO=88.0"));
        terminal.Size(120, 60);

        Assert.Contains("1 urgent", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("2 urgent", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("urgent: CaO dose", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Beside_the_row_every_urgent_finding_is_named()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Size(80, 24).Press(Kept);

        Assert.Contains("Lime feed by the weigher 60.00 t/h, 35.00 t/h above the urgent limit", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("CaO dose from the weigher 175", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_entry_says_when_the_round_is_left_is_folded_until_it_is_asked_for()
    {
        using var terminal = new Terminal(before: t => t.HeldBy("op1"));
        terminal.Open("Line round").Press("99.6⏎301⏎18.9⏎880⏎kthe sheet says so⏎⎋").Size(80, 40);

        Assert.Contains("that follow", terminal.Words, StringComparison.Ordinal);
        var folded = terminal.Words;
        terminal.Press("w");

        Assert.DoesNotContain("that follow", terminal.Words, StringComparison.Ordinal);
        Assert.True(terminal.Words.Length > folded.Length);
        Assert.Contains("w: everything is shown already", terminal.Press("w").Screen, StringComparison.Ordinal);
    }
}
