using Logbook.Journal;

namespace Logbook.Handover.Tests;

/// <summary>The row of systems shows what can hurt there, by a mark that its legend has.</summary>
public sealed class HurtOnTheRowTests
{
    private static char Mark(SmallLine line, string area)
    {
        var mark = NowView.Of(line.Desk).Line.Single(a => a.Area == area).Mark;
        Assert.Contains(mark, LineMarks.All.Select(m => m.Mark));
        return mark;
    }

    [Fact]
    public void Acid_in_equipment_and_people_inside_are_no_quiet_systems()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Record(null, "WT-L=50");
        line.State("wl-filter", "acid");
        var permit = line.Carry("permit", "lime-mud-tank", "cleaning", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "1"));

        Assert.Equal('*', Mark(line, "white-liquor-filter"));
        Assert.Equal('*', Mark(line, "lime-mud-tank"));
        Assert.Equal('.', Mark(line, "white-liquor-tank"));
        Assert.Equal("can hurt", LineMarks.All.Single(m => m.Mark == '*').Words);

        line.State("wl-filter", "stopped");
        line.Close(permit, "all out");
        Assert.Equal('x', Mark(line, "white-liquor-filter"));
        Assert.Equal('-', Mark(line, "lime-mud-tank"));
    }

    [Fact]
    public void What_can_hurt_stands_before_a_watch_and_after_what_is_urgent()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("isolation", "slaker", "seal change");
        line.Record(null, "SL-T1=102.8");
        Assert.Equal('*', Mark(line, "slaker"));

        line.Record(null, "SL-T1=103.4");
        Assert.Equal('!', Mark(line, "slaker"));
    }
}
