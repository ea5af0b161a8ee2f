using Logbook.Checks;
using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Handover.Tests;

public class NowViewTests
{
    [Fact]
    public void What_can_hurt_stands_in_its_order_each_with_its_record()
    {
        using var line = TroubledNight.Write();

        var hazards = NowView.Of(line.Desk).Hazards;

        Assert.Equal(["inside", "locked", "defeated", "acid", "seen"], hazards.Select(h => h.Word), StringComparer.Ordinal);
        Assert.Equal([8L, 7, 11, 12, 17], hazards.Select(h => h.Seq));
    }

    [Fact]
    public void A_count_of_people_inside_is_worth_nothing_after_an_hour()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Carry("permit", "lime-mud-tank", "cleaning", SmallLine.At("2026-11-24T18:00-05:00"), ("number", "4417"), ("inside", "1"));

        Assert.DoesNotContain("count unknown", NowView.Of(line.Clock("2026-11-24T09:00-05:00").Desk).Hazards[0].Text, StringComparison.Ordinal);
        Assert.Contains("count unknown, treat as inside", NowView.Of(line.Clock("2026-11-24T09:01-05:00").Desk).Hazards[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Gas_beyond_its_watch_limit_can_hurt()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Record("field", "ST-H2S=2.0");

        var hazard = Assert.Single(NowView.Of(line.Desk).Hazards);

        Assert.Equal("gas", hazard.Word);
        Assert.Contains("2.0 ppm", hazard.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_stands_out_is_sorted_worst_first()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Record("hourly", "WT-L=90");
        line.Record("hourly", "SL-T1=103.4");

        Assert.Equal([Level.Urgent, Level.Watch], NowView.Of(line.Desk).StandsOut.Select(f => f.Finding.Level));
    }

    [Fact]
    public void Of_what_is_urgent_that_which_can_hurt_people_stands_first_however_old()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Record("hourly", "SL-T1=103.4");
        line.Clock("2026-11-24T09:00-05:00").Record("hourly", "WT-L=10");

        Assert.Equal(["SL-T1", "WT-L"], NowView.Of(line.Desk).StandsOut.Where(f => f.Finding.Level == Level.Urgent).Select(f => f.Finding.Point), StringComparer.Ordinal);
    }

    [Fact]
    public void Of_what_is_watched_gas_stands_first_and_what_the_site_has_a_caution_for_before_the_rest_however_old()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Record("field", "SL-EYE=1", "ST-H2S=2");
        line.Clock("2026-11-24T09:00-05:00").Record("hourly", "SL-T1=102.8");
        line.Clock("2026-11-24T10:00-05:00").Record(null, "WT-L=86");

        Assert.Equal(["ST-H2S", "SL-T1", "WT-L"], NowView.Of(line.Desk).StandsOut.Where(f => f.Finding.Level == Level.Watch).Select(f => f.Finding.Point), StringComparer.Ordinal);
    }

    [Fact]
    public void An_upset_says_who_declared_it_and_when_if_that_was_afterwards()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        Assert.Empty(Writing.BeginUpset(line.Clock("2026-11-24T11:22-05:00").Desk, SmallLine.At("2026-11-24T09:00-05:00"), "power dip", "op2").Mistakes);

        Assert.Equal("since 09:00, declared only at 11:22, Operator two: power dip", NowView.Of(line.Desk).UpsetInWords);
    }

    [Fact]
    public void The_row_of_systems_marks_each_in_the_liquors_order()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Record("hourly", "SL-T1=103.4", "WT-L=50");
        line.State("wl-filter", "stopped");

        var view = NowView.Of(line.Desk);

        Assert.Equal(15, view.Line.Count);
        Assert.Equal("raw-green-liquor", view.Line[0].Area);
        Assert.Equal('!', Mark(view, "slaker"));
        Assert.Equal('.', Mark(view, "white-liquor-tank"));
        Assert.Equal('x', Mark(view, "white-liquor-filter"));
        Assert.Equal('-', Mark(view, "classifier"));
        Assert.Equal('-', Mark(NowView.Of(line.Clock("2026-11-24T12:01-05:00").Desk), "white-liquor-tank"));
    }

    [Fact]
    public void What_a_tank_holds_and_how_long_that_lasts_is_stock_and_how_long_liquor_stays_in_it_is_not()
    {
        var lasts = new Formula("tank", [new("level", "%", "level", 0, 100)], [new("hours-to-empty", "h", "hours")], i => Formula.Give(("hours-to-empty", i["level"] / 10)));
        var stays = new Formula("residence-time", [new("level", "%", "level", 0, 100)], [new("time", "h", "hours")], i => Formula.Give(("time", i["level"] / 5)));
        var files = Some.Changed(
            ("[[calculation]]\nuse = \"margin\"", "[[calculation]]\nuse = \"tank\"\nname = \"white\"\ninputs.level = \"WT-L\"\noutputs.hours-to-empty = \"WT-H\"\n\n[[calculation]]\nuse = \"residence-time\"\nname = \"stay\"\ninputs.level = \"WT-L\"\noutputs.time = \"WT-RT\"\n\n[[calculation]]\nuse = \"margin\""),
            ("WL-CE,Caus", "WT-L,White liquor tank level,white-liquor-tank,%,read,1,0.1,0.5,0,100,,,,,,,,,,,\nWT-H,Hours that it lasts,white-liquor-tank,h,derived,1,,,,,,,,,,,,,,,\nWT-RT,Hours that it stays,white-liquor-tank,h,derived,1,,,,,,,,,,,,,,,\nWL-CE,Caus"));
        using var line = new SmallLine(SmallLine.At("2026-11-24T08:00-05:00"), files, [.. Some.Calculations, lasts.Loaded, stays.Loaded]);
        line.Record(null, "WT-L=50");

        Assert.Equal([("WT-L", false, "50.0 %"), ("WT-H", true, "5.0 h")], NowView.Of(line.Desk).Stocks.Select(s => (s.Point, s.Lasts, s.Value)));
    }

    [Fact]
    public void Open_rounds_come_first_with_what_is_done_then_missed_ones()
    {
        using var line = new SmallLine("2026-11-24T06:00-05:00");
        line.Clock("2026-11-24T09:02-05:00").Record("hourly", "SL-T1=101.0", "SL-L1=-:no time");

        var rounds = NowView.Of(line.Desk).Rounds.Where(r => r.Round == "hourly").ToList();

        Assert.Equal((CheckState.Due, 2, 3), (rounds[0].State, rounds[0].Done, rounds[0].Of));
        Assert.Equal([CheckState.Missed, CheckState.Missed], rounds.Skip(1).Select(r => r.State));
    }

    [Fact]
    public void Nobody_holds_a_line_that_nobody_took_and_whom_to_call_is_said()
    {
        using var line = new SmallLine("2026-11-24T21:00-05:00");

        var view = NowView.Of(line.Desk);

        Assert.False(view.Held);
        Assert.Equal("NOBODY HOLDS THE LINE; call Supervisor one (sup1)", view.InCharge);
        Assert.Equal(["crew C is due until 07:00; who answered the call? handover called CODE TEXT"], view.Unfinished);
    }

    [Fact]
    public void Tank_levels_are_the_stocks()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Record("hourly", "SL-T1=101.0", "WT-L=61.5");

        var stock = Assert.Single(NowView.Of(line.Desk).Stocks);

        Assert.Equal(("WT-L", "61.5 %"), (stock.Point, stock.Value));
    }

    private static char Mark(NowView view, string area) => view.Line.Single(l => l.Area == area).Mark;
}
