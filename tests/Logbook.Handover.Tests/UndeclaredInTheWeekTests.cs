using Logbook.Journal;

namespace Logbook.Handover.Tests;

/// <summary>The week note says which shift declared nothing of what can hurt, and what the last one declared.</summary>
public sealed class UndeclaredInTheWeekTests
{
    private static List<NoteLine> CanHurt(FlowLine flow) => [.. WeekNote.Of(flow.Desk, flow.Desk.Now).Sections.Single(s => s.Id == "can-hurt").Lines];

    [Fact]
    public void A_shift_that_is_not_declared_is_named_with_its_date_and_the_others_are_not()
    {
        using var flow = new FlowLine("2026-11-24T07:00-05:00").HeldBy("op1");
        flow.Line.Clock("2026-11-24T18:50-05:00");
        flow.HandedTo("op2");
        flow.Line.Clock("2026-11-24T22:00-05:00");

        Assert.EndsWith("none recorded; not declared by shift N of Tue 24 Nov, still running", Assert.Single(CanHurt(flow), l => l.Label == "others").Text, StringComparison.Ordinal);

        flow.Line.Clock("2026-11-26T08:00-05:00");
        Assert.EndsWith(
            "none recorded; not declared by shift D of Thu 26 Nov, still running; shift N of Wed 25 Nov; shift D of Wed 25 Nov; and 1 other, see SHIFTS", Assert.Single(CanHurt(flow), l => l.Label == "others").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_last_shift_declared_stands_and_an_earlier_one_that_did_not_is_named()
    {
        using var flow = new FlowLine("2026-11-24T07:00-05:00").HeldBy("op1");
        flow.Line.Clock("2026-11-25T18:50-05:00");
        Assert.NotNull(flow.Prepare("op1").Record);

        var lines = CanHurt(flow);

        Assert.Contains("none recorded; checked, Operator one 18:50", Assert.Single(lines, l => l.Label == "declared").Text, StringComparison.Ordinal);
        Assert.Equal("shift N of Tue 24 Nov; shift D of Tue 24 Nov", Assert.Single(lines, l => l.Label == "undeclared").Text);
        Assert.DoesNotContain(lines, l => l.Label == "others");
    }
}
