using Logbook.Journal;

namespace Logbook.Screens.Tests;

/// <summary>What the audit says of one person, at the screen: off without a policy, by PIN, and gone when nobody looks.</summary>
public sealed class OwnPageTests
{
    private const string Pin = Terminal.Pin;

    [Fact]
    public void Without_a_policy_the_key_says_so_and_does_nothing()
    {
        using var terminal = new Terminal();

        terminal.Press("ao");

        Assert.IsType<AuditPage>(terminal.State.Top);
        Assert.Contains("cites no policy", terminal.Screen, StringComparison.Ordinal);
        Assert.DoesNotContain("o own", terminal.Screen, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ao")]
    [InlineData("aO")]
    public void A_policy_younger_than_eight_weeks_is_said_before_any_question(string keys)
    {
        using var terminal = new Terminal(policy: true, days: 55);

        terminal.Press(keys);

        Assert.IsType<AuditPage>(terminal.State.Top);
        Assert.Contains("the policy is in force since", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("eight weeks of walks are whole on", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_person_sees_it_by_pin_and_answers_before_a_reader_does()
    {
        using var terminal = new Terminal(policy: true);

        terminal.Press("ao" + Pin + "⏎");
        Assert.IsType<OwnPage>(terminal.State.Top);
        Assert.Contains("no two signals in different shifts", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("66 are honest", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⎋⎋isup1⏎aOop1⏎asked by op1⏎" + Pin + "⏎");
        Assert.Contains("has not looked and answered", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⎋⎋iop1⏎ao" + Pin + "⏎yseen, nothing to add⏎" + Pin + "⏎");
        Assert.IsType<AuditPage>(terminal.State.Top);

        terminal.Press("⎋isup1⏎aOop1⏎asked by op1⏎" + Pin + "⏎");

        Assert.IsType<OwnPage>(terminal.State.Top);
        Assert.Contains("seen, nothing to add", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("y: only the person answers", terminal.Press("y").Screen, StringComparison.Ordinal);
        Assert.Equal(["own-answered", "own-looked"], terminal.Journal.Read().Select(r => r.Body).OfType<PersonChanged>().Select(p => p.Change), StringComparer.Ordinal);
    }

    [Fact]
    public void A_page_that_is_left_open_closes_by_itself()
    {
        using var terminal = new Terminal(policy: true);

        terminal.Press("ao" + Pin + "⏎").Tick(3);

        Assert.IsType<AuditPage>(terminal.State.Top);
    }
}
