using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens.Tests;

/// <summary>What a holder and a newcomer may do beside the usual handover, key by key.</summary>
public sealed class HoldingKeysTests
{
    private const string Pin = Terminal.Pin;

    [Fact]
    public void The_same_person_goes_on_once_what_can_hurt_was_read()
    {
        using var terminal = new Terminal(before: t => t.HeldBy("op1"));

        terminal.Press("herelief is ill⏎");
        Assert.Contains("not seen yet: hazards", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⎋o");
        for (var keys = 0; terminal.State.Top is ReadPage && keys < 20; keys++)
        {
            terminal.Press("⏎");
        }

        terminal.Press("erelief is ill⏎");

        Assert.Equal("relief is ill", Assert.Single(terminal.Journal.Read().Select(r => r.Body).OfType<HandoverContinued>()).Why);
        Assert.Equal("op1", terminal.Desk.State.Line.Holder!.Code);
    }

    [Fact]
    public void A_holder_who_must_go_leaves_the_line_to_nobody_and_the_screen_says_so()
    {
        using var terminal = new Terminal(before: t => t.HeldBy("op1"));

        terminal.Press("hz1⏎");

        Assert.Null(terminal.Desk.State.Line.Holder);
        Assert.Contains("NOBODY HOLDS THE LINE", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("iop3⏎hcsup1⏎coming at once⏎");
        Assert.Equal("sup1", terminal.Desk.State.Line.Called!.Code);
    }

    [Fact]
    public void Not_yet_is_said_to_the_one_who_comes_and_the_line_does_not_move()
    {
        using var terminal = new Terminal(before: Prepared);

        terminal.Press("hb1⏎iop3⏎");
        Assert.Contains("not yet", terminal.Words, StringComparison.OrdinalIgnoreCase);
        terminal.Press("h");
        Assert.Contains("NOT YET, since 09:05", terminal.Words, StringComparison.Ordinal);
        for (var keys = 0; terminal.State.Top is ReadPage && keys < 60; keys++)
        {
            terminal.Press("⏎");
        }

        while (terminal.State.Top is QuestionPage)
        {
            terminal.Answer();
        }

        terminal.Press("flow first⏎⏎");

        Assert.IsType<LinesPage>(terminal.State.Top); // and no PIN is asked
        Assert.Equal("op1", terminal.Desk.State.Line.Holder!.Code);
        Assert.Contains("not yet", terminal.Words, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_short_relief_is_refused_before_its_words_while_the_holder_says_not_yet()
    {
        using var terminal = new Terminal(before: Prepared);

        terminal.Press("hb1⏎iop3⏎hf");

        Assert.IsType<ReadPage>(terminal.State.Top);
        Assert.Contains("f: not yet, ", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("; ! takes the line in an emergency", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Emergency_relief_opens_from_an_empty_PIN_too()
    {
        using var terminal = new Terminal(by: "op3", before: t => t.HeldBy("op1"));

        terminal.Press("hfflow by hand⏎");
        Assert.IsType<SignPage>(terminal.State.Top);

        Assert.IsType<EmergencyPage>(terminal.Press("!").State.Top);
    }

    [Fact]
    public void Who_prepares_again_has_the_lines_of_the_first_time_before_them()
    {
        using var terminal = new Terminal(by: "op1", before: Prepared);

        terminal.Press("h11111111⏎");
        Assert.Contains("if it turns, then call instrument duty", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎sticking valve⏎⏎" + Pin + "⏎");

        var again = terminal.Desk.Store.Read().Select(r => r.Body).OfType<HandoverPrepared>().Last();
        Assert.Equal(["if it turns, then call instrument duty"], again.IfThen, StringComparer.Ordinal);
        Assert.Equal(["watch the bowl", "sticking valve"], again.Words, StringComparer.Ordinal);
    }

    [Fact]
    public void A_short_relief_goes_back_with_the_same_key()
    {
        using var terminal = new Terminal(by: "op3", before: t => t.HeldBy("op1"));

        terminal.Press("hfflow by hand⏎" + Pin + "⏎iop1⏎hfall as before⏎" + Pin + "⏎");

        Assert.Equal(("op1", null), (terminal.Desk.State.Line.Holder!.Code, terminal.Desk.State.Line.Holder.For));
    }

    private static void Prepared(Terminal terminal)
    {
        terminal.HeldBy("op1");
        var declared = HazardSections.All.ToDictionary(s => s, _ => "checked", StringComparer.Ordinal);
        Assert.NotNull(Preparing.Prepare(terminal.Desk, new SignWith(terminal.Pins, _ => Pin), new PrepareRequest("op1", declared, ["if it turns, then call instrument duty"], ["watch the bowl"])).Record);
    }
}
