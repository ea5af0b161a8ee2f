using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens.Tests;

/// <summary>What exactly is signed stands above the PIN, and what the other side wrote is read before it.</summary>
public sealed class SigningTests
{
    private const string Pin = Terminal.Pin;

    [Fact]
    public void The_holder_sees_what_is_signed_before_the_PIN()
    {
        using var terminal = new Terminal(before: t => t.HeldBy("op1"));

        terminal.Press("h12111111⏎if the flow falls then stop the lime⏎⏎watch the bowl⏎⏎");

        Assert.IsType<SignPage>(terminal.State.Top);
        Assert.Contains("NOT CHECKED: " + HazardSections.All[1], terminal.Words, StringComparison.Ordinal);
        Assert.Contains("if the flow falls then stop the lime", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("watch the bowl", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_receiver_reads_what_the_giver_wrote_and_the_answer_after_the_own_lines_and_before_the_PIN()
    {
        using var terminal = new Terminal(by: "op3", before: t =>
        {
            t.HeldBy("op1");
            var declared = HazardSections.All.ToDictionary(s => s, _ => "checked", StringComparer.Ordinal);
            Assert.NotNull(Preparing.Prepare(t.Desk, new SignWith(t.Pins, _ => Pin), new PrepareRequest("op1", declared, ["if it turns, then call instrument duty"], ["watch the bowl"])).Record);
        });

        terminal.Press("huis the eyewash back?⏎1not yet, tonight⏎");
        for (var keys = 0; terminal.State.Top is ReadPage && keys < 60; keys++)
        {
            terminal.Press("⏎");
        }

        while (terminal.State.Top is QuestionPage)
        {
            terminal.Answer();
        }

        Assert.DoesNotContain("instrument duty", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("watch the bowl", terminal.Words, StringComparison.Ordinal);
        terminal.Press("flow first⏎⏎");

        Assert.IsType<SignPage>(terminal.State.Top);
        Assert.Contains("flow first", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("if it turns, then call instrument duty", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("not yet, tonight", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("watch the bowl", terminal.Words, StringComparison.Ordinal);
        terminal.Press(Pin + "⏎");
        Assert.IsType<NowPage>(terminal.State.Top); // read before it, and not shown twice
        Assert.Contains("you hold the line (#", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_supervisor_sees_from_the_audit_what_waits_and_signs_for_it()
    {
        using var terminal = new Terminal(by: "sup1", before: t => { t.HeldBy("op1"); Assert.NotNull(Relieving.Emergency(t.Desk, "op3", t.Desk.Site.Reasons.Relief[0]).Record); });

        terminal.Press("ap");
        Assert.Contains("emergency handover, Operator three", terminal.Words, StringComparison.Ordinal);
        terminal.Press("p⏎");
        Assert.Contains("a few words are needed", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⎋↓pwalked it together⏎");
        Assert.IsType<SignPage>(terminal.State.Top);
        terminal.Press(Pin + "⏎");

        var signed = Assert.IsType<HandoverCountersigned>(terminal.Journal.Read().Last().Body);
        Assert.Equal("emergency", Assert.IsType<HandoverRelief>(terminal.Journal.Read(signed.Target).First().Body).Mode);
        Assert.IsType<WaitingPage>(terminal.State.Top);
    }

    [Fact]
    public void On_a_small_screen_the_PIN_field_stays_and_the_rest_scrolls()
    {
        using var terminal = new Terminal(before: t => t.HeldBy("op1"));

        terminal.Size(40, 12).Press("h12111111⏎if the flow falls then stop the lime⏎⏎watch the bowl⏎⏎");

        Assert.Contains("PIN of Operator one", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("below", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_handover_opened_in_the_log_is_said_in_words()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.HeldBy("op1");
            var declared = HazardSections.All.ToDictionary(s => s, _ => "checked", StringComparer.Ordinal);
            Assert.NotNull(Preparing.Prepare(t.Desk, new SignWith(t.Pins, _ => Pin), new PrepareRequest("op1", declared, ["if it turns, then call instrument duty"], ["watch the bowl"])).Record);
        });

        terminal.Press("l⏎");
        Assert.Contains("if, then if it turns, then call instrument duty", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("note as it stood", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("{\"", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⎋↓⏎");
        Assert.Contains("checks walk the line", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("{\"", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_PIN_typed_a_step_early_is_taken_for_no_words_and_nothing_of_it_is_kept()
    {
        using var terminal = new Terminal(before: t => t.HeldBy("op1"));

        terminal.Press("h11111111⏎" + Pin + "⏎");
        Assert.Contains("that looks like a PIN", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(Pin, terminal.Screen, StringComparison.Ordinal);
        terminal.Press("if it turns, then call⏎⏎" + Pin + "⏎");
        Assert.Contains("that looks like a PIN", terminal.Words, StringComparison.Ordinal);
        Assert.Empty(terminal.State.Giving.Words);
        terminal.Press("⏎" + Pin + "⏎");

        Assert.Equal("if it turns, then call", string.Join("|", terminal.Desk.State.Line.Prepared!.Lines));
    }

    [Fact]
    public void A_PIN_is_no_reservation_and_no_words_of_the_receiver()
    {
        using var terminal = new Terminal(by: "op3", before: t => t.HeldBy("op1"));

        terminal.Press("hv" + Pin + "⏎");
        Assert.Contains("that looks like a PIN", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(Pin, terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⎋onobody came⏎");
        for (var keys = 0; terminal.State.Top is ReadPage && keys < 60; keys++)
        {
            terminal.Press("⏎");
        }

        while (terminal.State.Top is QuestionPage)
        {
            terminal.Answer();
        }

        terminal.Press(Pin + "⏎");
        Assert.Contains("that looks like a PIN", terminal.Words, StringComparison.Ordinal);

        Assert.IsType<LinesPage>(terminal.State.Top);
        Assert.Equal((null, 0), (terminal.State.Taking.Reservation, terminal.State.Taking.First.Count));
    }
}
