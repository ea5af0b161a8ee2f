using Logbook.Testing;

namespace Logbook.Screens.Tests;

public sealed class AuditTests
{
    [Fact]
    public void Flags_stand_under_what_would_settle_them()
    {
        using var terminal = new Terminal(before: Corrected);

        terminal.Press("a");

        Assert.Contains("As recorded: what could hurt, what was missed, what was put right", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains(((AuditPage)terminal.State.Top).Shown, f => f.Flag == "corrected");
    }

    [Fact]
    public void What_a_supervisor_signed_for_is_a_fact()
    {
        using var terminal = new Terminal(before: t => t.HeldBy("op1"));
        Assert.Contains("A signature settles: a supervisor's, or that of who allowed it (1)", terminal.Press("a").Screen, StringComparison.Ordinal);

        Handover.Countersigning.Countersign(terminal.Desk, new Handover.SignWith(terminal.Pins, _ => Terminal.Pin), "sup1", null, "walked it with both");

        terminal.Press("⎋a");
        Assert.DoesNotContain("signature settles", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("As recorded: what could hurt, what was missed, what was put right (1)", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void As_many_wait_for_a_signature_in_the_audit_as_on_the_page_that_signs()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.HeldBy("op1");
            t.Carry("bypass", "slaker", "trip off", Some.Morning.AddHours(3), ("instead", "flow by hand"), ("allowed-by", "eng1"));
            t.Carry("bypass", "lime-screw", "overload trip off", Some.Morning.AddHours(3), ("instead", "current by hand"), ("allowed-by", "eng1"));
        });
        var waiting = terminal.Desk.State.Line.ToCountersign;
        Assert.Equal(3, waiting.Count);

        Assert.Contains("A signature settles: a supervisor's, or that of who allowed it (3)", terminal.Press("a").Screen, StringComparison.Ordinal);
        Assert.Equal(waiting.Select(t => (long?)t.Seq).Order(), ((AuditPage)terminal.State.Top).Shown.Where(f => f.Flag is "unattended" or "to-countersign").Select(f => f.Seq).Order());
    }

    [Fact]
    public void What_could_not_both_be_true_is_for_somebody_to_settle()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("permit", "slaker", "cleaning", Some.Morning.AddHours(9), ("number", "4417"), ("inside", "2"));
            Assert.NotNull(Checks.Writing.ChangeState(t.Desk, "slaker", "acid", null, "scale", "op1").Record);
        });

        terminal.Press("a");

        Assert.Contains("Whoever was at the equipment settles: which of the two was true? (1)", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Enter_opens_a_flag_and_its_record()
    {
        using var terminal = new Terminal(before: Corrected);

        terminal.Press("afcorrected⏎⏎");
        Assert.Contains("misread", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.Contains("Record 4: correction", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Weeks_are_walked_back_and_on()
    {
        using var terminal = new Terminal(before: Corrected);

        terminal.Press("a,");
        Assert.Contains("no flag in this week", terminal.Screen, StringComparison.Ordinal);
        terminal.Press(".");

        Assert.Null(((AuditPage)terminal.State.Top).To);
        Assert.Contains(".: this is the last week", terminal.Press(".").Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void The_screen_says_that_it_reads_before_it_does()
    {
        using var terminal = new Terminal(before: Corrected);

        terminal.Conversation.Take(new Pressed(Keystroke.Of('a')));

        Assert.True(terminal.Conversation.Waiting);
        Assert.Contains("reading ...", terminal.Screen, StringComparison.Ordinal);
    }

    internal static void Corrected(Terminal terminal)
    {
        var wrong = terminal.At(-20).Record(null, "SL-F1=310");
        Checks.Writing.Correct(terminal.Desk, wrong, Some.Reading("SL-F1", "301"), "misread", "op1");
    }
}
