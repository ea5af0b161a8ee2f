using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover.Tests;

/// <summary>The pages that are read before the line is taken: worst first, what is of one kind together, and nothing of what can hurt cut.</summary>
public sealed class PagesInShortTests
{
    private static IReadOnlyList<NoteLine> Lines(FlowLine flow, string page, string section) =>
        HandoverPages.Draw(flow.Desk, "op3", page).Page!.Sections.Single(s => s.Id == section).Lines;

    private static FlowLine Busy(out long locked)
    {
        var flow = new FlowLine("2026-11-24T08:00-05:00").HeldBy("op1");
        var line = flow.Line;
        line.Record(null, "WT-L=90.0");
        line.State("mud-pump", "stopped");
        line.Clock("2026-11-24T09:00-05:00").Carry("action", "classifier", "tighten the guard bolt");
        locked = line.Carry("isolation", "mud-pump", "seal change", null, ("permit", "4417"));
        line.Carry("safety-equipment", "slaker", "gas monitor shows a fault", null, ("instead", "the portable one"));
        line.Record(null, "SL-T1=104.0");
        line.Clock("2026-11-24T10:00-05:00").Record(null, "SL-T1=101.0");
        line.Record(null, "ST-H2S=6.0");
        line.Clock("2026-11-24T10:30-05:00");
        return flow;
    }

    [Fact]
    public void What_was_written_in_the_shift_stands_on_the_page_of_what_changed_the_newest_last()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Line.Clock("2026-11-25T07:10-05:00").Remark("bowl may climb", "slaker");
        flow.Line.Clock("2026-11-25T08:40-05:00").Remark("sump pump heard");

        Assert.Equal(["07:10", "08:40"], Lines(flow, "changed", "remarks").Select(l => l.Label), StringComparer.Ordinal);
        Assert.Contains("bowl may climb", Lines(flow, "changed", "remarks")[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_changed_stands_worst_first_and_what_is_of_one_kind_in_one_line()
    {
        using var flow = Busy(out var locked);

        var lines = Lines(flow, "changed", "since-here");

        Assert.Equal(["can hurt", "URGENT", "was urgent", "orders", "watch", "states", "opened"], lines.Select(l => l.Label), StringComparer.Ordinal);
        Assert.StartsWith($"isolation, Lime mud pump 09:00 (#{locked}); safety equipment, Slaker 09:00 (#", lines[0].Text, StringComparison.Ordinal);
        Assert.StartsWith("ST-H2S: H2S at the sump 6.0 ppm", lines[1].Text, StringComparison.Ordinal);
        Assert.StartsWith("SL-T1: Slaker temperature 104.0 degC, 0.8 K above the urgent limit 103.2 degC 09:00 (#", lines[2].Text, StringComparison.Ordinal);
        Assert.DoesNotContain("follow the site's", lines[2].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_no_later_reading_is_free_of_is_not_over()
    {
        using var flow = new FlowLine("2026-11-24T08:00-05:00").HeldBy("op1");
        for (var hour = 0; hour < 40; hour++)
        {
            var level = hour < 30 ? 50 + (hour * 7 % 11) : 55;
            flow.Line.Clock(SmallLine.At("2026-11-24T09:00-05:00").AddHours(hour)).Record(null, FormattableString.Invariant($"WT-L={level}.3"));
        }

        Assert.Contains("WT-L: White liquor tank level: 55.3 %", Lines(flow, "changed", "since-here").Single(l => l.Label == "watch").Text, StringComparison.Ordinal);
        Assert.DoesNotContain(Lines(flow, "changed", "since-here"), l => l.Label == "over");
    }

    [Fact]
    public void Every_change_is_named_by_its_record()
    {
        using var flow = Busy(out _);

        var words = string.Join('\n', Lines(flow, "changed", "since-here").Select(l => l.Text));

        Assert.All(Since.Of(flow.Desk, "op3").Changes, c => Assert.Contains($"#{c.Seq}", words, StringComparison.Ordinal));
    }

    [Fact]
    public void The_page_of_what_can_hurt_has_every_hazard_with_what_it_is_until_when_and_what_to_do_instead()
    {
        using var flow = Busy(out var locked);

        var lines = Lines(flow, "hazards", "can-hurt");

        Assert.All(NowView.Of(flow.Desk).Hazards, h => Assert.Contains(lines, l => l.Label == h.Word && l.Text.Contains($"(#{h.Seq})", StringComparison.Ordinal)));
        Assert.Contains(lines, l => l.Text == $"Lime mud pump, DO NOT START: seal change; permit 4417. Verify at the lock board. (#{locked})");
        Assert.Contains(lines, l => l.Text.StartsWith("Slaker: gas monitor shows a fault; instead the portable one. (#", StringComparison.Ordinal));
        flow.Line.Clock("2026-11-24T19:10-05:00");
        Assert.Contains(Lines(flow, "hazards", "can-hurt"), l => l.Text.Contains($"Not seen since the shift change. (#{locked})", StringComparison.Ordinal));
    }
}
