using Logbook.Checks;

namespace Logbook.Handover.Tests;

/// <summary>The week note tells what the audit of the same week lists, and which misses are of an upset.</summary>
public sealed class WeekAgreesTests
{
    [Fact]
    public void Limits_that_were_never_left_are_those_of_the_audit_and_none_of_a_safety_point()
    {
        using var line = new SmallLine("2026-11-20T07:00-05:00");
        for (var hour = 0; hour < 110; hour++)
        {
            line.Clock(SmallLine.At("2026-11-20T08:00-05:00").AddHours(hour)).Record("hourly", "SL-T1=101.0", "SL-L1=16.0", "WT-L=50.0");
        }

        var week = WeekNote.Of(line.Desk, line.Desk.Now).Sections.Single(s => s.Id == "limits").Lines.Select(l => l.Text).ToList();
        var audit = Audit.Between(line.Desk, line.Desk.Now.AddDays(-7), line.Desk.Now.AddMinutes(1), "limit-never", "limit-always", "always-not-taken");

        Assert.Equal("WT-L", Assert.Single(audit).Point);
        Assert.Contains(audit[0].Text, Assert.Single(week), StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_crew_missed_in_a_declared_upset_is_said_to_be_of_that()
    {
        using var line = new SmallLine("2026-11-24T11:25-05:00");
        line.Clock("2026-11-24T12:52-05:00");
        Assert.Empty(Writing.BeginUpset(line.Desk, SmallLine.At("2026-11-24T12:50-05:00"), "foam", "op1").Mistakes);
        line.Clock("2026-11-24T14:12-05:00");
        Assert.Empty(Writing.EndUpset(line.Desk, SmallLine.At("2026-11-24T14:10-05:00"), null, "op1").Mistakes);
        line.Clock("2026-11-24T18:50-05:00");

        var round = WeekNote.Of(line.Desk, line.Desk.Now).Sections.Single(s => s.Id == "checks").Lines.Single(l => l.Text.StartsWith("Line round", StringComparison.Ordinal)).Text;

        Assert.EndsWith(", 2 of them safety points in the upset of 24 Nov", round, StringComparison.Ordinal);
    }
}
