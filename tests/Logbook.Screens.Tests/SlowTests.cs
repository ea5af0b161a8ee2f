namespace Logbook.Screens.Tests;

/// <summary>What takes long never holds the keys, and nothing comes up that nobody waits for any more.</summary>
public sealed class SlowTests
{
    [Fact]
    public void Esc_is_answered_while_an_audit_is_read_and_what_comes_of_it_is_dropped()
    {
        using var terminal = new Terminal();

        terminal.PressAtOnce('a');
        Assert.Contains("reading ...", terminal.Screen, StringComparison.Ordinal);
        terminal.PressAtOnce('⎋');
        Assert.IsType<NowPage>(terminal.State.Top);
        terminal.Finish();

        Assert.IsType<NowPage>(terminal.State.Top);
    }

    [Fact]
    public void Of_two_weeks_asked_for_one_after_the_other_the_last_one_is_shown()
    {
        using var terminal = new Terminal();

        terminal.PressAtOnce('a').PressAtOnce(',').PressAtOnce(',').Finish();

        var page = Assert.IsType<AuditPage>(terminal.State.Top);
        Assert.NotNull(page.Flags);
        Assert.Equal(terminal.Desk.Now.AddDays(-14), page.To);
    }

    [Fact]
    public void The_first_of_two_weeks_is_not_shown_as_the_second()
    {
        using var terminal = new Terminal(before: AuditTests.Corrected);
        terminal.Press("a");
        var asked = new ReadAudit(terminal.Desk.Now.AddDays(-7), terminal.Desk.Now);
        var flags = ((AuditPage)terminal.State.Top).Flags!;
        Assert.NotEmpty(flags);
        terminal.PressAtOnce(',');
        var setting = new Setting(terminal.Desk.Now, r => Checks.RecordEntry.Judge(terminal.Desk, r));

        var after = Step.Of(terminal.State, new AuditRead(asked, flags), setting).Session;

        Assert.Null(((AuditPage)after.Top).Flags);
        terminal.Finish();
    }

    [Fact]
    public void What_belongs_to_a_record_does_not_come_up_over_a_round_that_was_opened_meanwhile()
    {
        using var terminal = new Terminal();

        terminal.Press("l").PressAtOnce(']');
        Assert.Contains("looking for what belongs to", terminal.Screen, StringComparison.Ordinal);
        terminal.PressAtOnce('⎋').PressAtOnce('r').PressAtOnce('⏎').Finish();

        Assert.IsType<RoundPage>(terminal.State.Top);
    }
}
