using Logbook.Checks;
using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Screens.Tests;

/// <summary>A hazard section that was declared, and that a record has changed since, is not signed as it was declared.</summary>
public sealed class DeclaredAnewTests
{
    private const string Pin = Terminal.Pin;

    [Fact]
    public void People_who_went_in_since_inside_was_declared_are_said_before_the_PIN_and_inside_is_asked_anew()
    {
        var permit = 0L;
        using var terminal = new Terminal(before: t => { t.HeldBy("op1"); permit = Permit(t); });

        terminal.Press("h11111111⏎if the alarm sounds then all out⏎⏎");
        Inside(terminal, permit);
        terminal.Tick(1).Press("⏎");
        Assert.IsType<SignPage>(terminal.State.Top);
        Assert.Contains("STOP a record came since you declared inside", terminal.Words, StringComparison.Ordinal);
        terminal.Press(Pin + "⏎");

        Assert.Null(terminal.Desk.State.Line.Prepared);
        Assert.Equal(0, Assert.IsType<GivePage>(terminal.State.Top).Selected);
        Assert.Contains("ASK ANEW", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("Counted 2", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");
        Assert.Contains("still to declare: inside (a record came since you declared it)", terminal.Words, StringComparison.Ordinal);
        terminal.Press("1⏎⏎⏎" + Pin + "⏎");
        Assert.Equal("if the alarm sounds then all out", string.Join("|", terminal.Desk.State.Line.Prepared!.Lines));
    }

    [Fact]
    public void A_record_that_comes_while_the_PIN_is_typed_is_not_signed_over()
    {
        var permit = 0L;
        using var terminal = new Terminal(before: t => { t.HeldBy("op1"); permit = Permit(t); });

        terminal.Press("h11111111⏎if the alarm sounds then all out⏎⏎⏎" + Pin);
        Inside(terminal, permit);
        terminal.Press("⏎");

        Assert.Null(terminal.Desk.State.Line.Prepared);
        Assert.Contains("not signed: a record came since that changes inside", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");
        Assert.IsType<GivePage>(terminal.State.Top);
        Assert.Contains("declare it anew", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_other_sections_keep_their_declaration_and_not_checked_is_not_asked_again()
    {
        var permit = 0L;
        using var terminal = new Terminal(before: t => { t.HeldBy("op1"); permit = Permit(t); });

        terminal.Press("h21111111⏎if the alarm sounds then all out⏎⏎");
        Inside(terminal, permit);
        terminal.Tick(1).Press("⏎" + Pin + "⏎");

        Assert.NotNull(terminal.Desk.State.Line.Prepared);
    }

    [Fact]
    public void Time_alone_and_a_look_that_found_it_the_same_ask_nothing_anew()
    {
        var permit = 0L;
        using var terminal = new Terminal(before: t => { t.HeldBy("op1"); permit = Permit(t); });

        terminal.Press("h11111111⏎if the alarm sounds then all out⏎⏎");
        Assert.NotNull(Writing.ConfirmCarried(terminal.Desk, new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal), null), "op1").Record);
        terminal.Tick(150).Press("⏎" + Pin + "⏎");

        Assert.NotNull(terminal.Desk.State.Line.Prepared);
    }

    private static long Permit(Terminal terminal) =>
        terminal.Carry("permit", "slaker", "agitator blade", Some.Morning.AddHours(5), ("number", "4421"), ("entry", "yes"), ("attendant", "at the hatch"), ("inside", "0"));

    private static void Inside(Terminal terminal, long permit) =>
        Assert.NotNull(Writing.ConfirmCarried(terminal.Desk, new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = "2" }, null), "op1").Record);
}
