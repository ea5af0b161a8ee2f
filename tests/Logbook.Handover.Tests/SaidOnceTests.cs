using Logbook.Checks;

namespace Logbook.Handover.Tests;

/// <summary>What a bad night's note says once: rounds that were walked early, orders that everybody knows, a card that the text names; and what a round read against an open item.</summary>
public sealed class SaidOnceTests
{
    private static List<NoteLine> Section(SmallLine line, string id) => [.. HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == id).Lines];

    [Fact]
    public void A_round_that_was_walked_before_it_was_due_does_not_come_any_more()
    {
        using var line = new SmallLine("2026-11-24T23:40-05:00");
        Assert.Contains("Field walk 00:00", Assert.Single(Section(line, "coming"), l => l.Label == "rounds").Text, StringComparison.Ordinal);

        line.Record("field", "SL-EYE=1");
        Assert.Contains("Field walk 00:00", Assert.Single(Section(line, "coming"), l => l.Label == "rounds").Text, StringComparison.Ordinal);
        line.Record("field", "ST-H2S=-:instrument faulty");

        var rounds = Assert.Single(Section(line, "coming"), l => l.Label == "rounds").Text;
        Assert.Contains("Field walk 04:00", rounds, StringComparison.Ordinal);
        Assert.DoesNotContain("Field walk 00:00", rounds, StringComparison.Ordinal);
    }

    [Fact]
    public void An_older_order_stands_in_full_until_everybody_of_both_shifts_has_read_it()
    {
        using var line = new SmallLine("2026-11-24T12:00-05:00");
        var order = Writing.GiveOrder(line.Desk, "lime at most 17 t/h", null, "sup1").Record!.Seq;
        line.Clock("2026-11-24T20:00-05:00");
        var due = OnShift.DueBy(line.Desk.Site, Plant.Calendar.ShiftAt(line.Desk.Site, line.Desk.Now), []).Concat(OnShift.DueBy(line.Desk.Site, Plant.Calendar.ShiftAt(line.Desk.Site, line.Desk.Now.AddHours(12)), [])).ToList();
        Assert.True(due.Count > 1);

        foreach (var code in due)
        {
            Assert.Contains("lime at most 17 t/h", Assert.Single(Section(line, "orders")).Text, StringComparison.Ordinal);
            Assert.Empty(Writing.SeeOrder(line.Desk, order, code).Mistakes);
        }

        Assert.Equal($"1 older order, read by everybody of this shift and the next: lime at most 17 t/h (#{order})", Assert.Single(Section(line, "orders")).Text);
        Writing.GiveOrder(line.Desk, "goggles on the walkway", null, "sup1");
        Assert.Contains("goggles on the walkway", Section(line, "orders")[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Older_orders_that_all_have_read_stand_in_one_paragraph_each_cut_at_a_words_end()
    {
        using var line = new SmallLine("2026-11-24T12:00-05:00");
        var one = Writing.GiveOrder(line.Desk, "lime at most 17 t/h", null, "sup1").Record!.Seq;
        var other = Writing.GiveOrder(line.Desk, "goggles and a face shield on the walkway of the slaker, also for a short look", null, "sup1").Record!.Seq;
        line.Clock("2026-11-24T20:00-05:00");
        var due = OnShift.DueBy(line.Desk.Site, Plant.Calendar.ShiftAt(line.Desk.Site, line.Desk.Now), []).Concat(OnShift.DueBy(line.Desk.Site, Plant.Calendar.ShiftAt(line.Desk.Site, line.Desk.Now.AddHours(12)), []));
        Assert.All(due.Distinct(StringComparer.Ordinal), code => Assert.All([one, other], order => Assert.Empty(Writing.SeeOrder(line.Desk, order, code).Mistakes)));

        Assert.Equal(
            $"2 older orders, read by everybody of this shift and the next: lime at most 17 t/h (#{one}); goggles and a face shield on the walkway of the slaker, also... (#{other})",
            Assert.Single(Section(line, "orders")).Text);
    }

    [Theory]
    [InlineData("locked for entry, card 124", 1)]
    [InlineData("locked for entry, card 1245", 2)]
    public void A_field_that_the_text_names_stands_once(string text, int cards)
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Carry("isolation", "mud-pump", text, null, ("card", "124"));

        Assert.Equal(cards + 1, Section(line, "can-hurt")[0].Text.Split("card ").Length);
    }

    [Fact]
    public void A_trip_that_is_read_as_in_service_under_an_open_bypass_contradicts_it()
    {
        using var line = new SmallLine("2026-11-24T16:15-05:00");
        line.AdoptATrip();
        line.Carry("bypass", "mud-pump", "low-flow trip of the lime feed bridged", SmallLine.At("2026-11-25T02:45-05:00"), ("instead", "feed by hand"), ("allowed-by", "eng1"), ("point", "SL-L1"), ("every", "1h"));
        var read = line.Clock("2026-11-24T20:34-05:00").Record(null, "SL-TRIP=1");

        line.Record(null, "MP-GUARD=1"); // another thing on the equipment whose trip is bridged

        var bypass = Assert.Single(NowView.Of(line.Desk).Hazards);

        Assert.DoesNotContain("MP-GUARD", bypass.Text, StringComparison.Ordinal);
        Assert.Contains($"YET READ AS in service, SL-TRIP at 20:34 Operator one (#{read}): one of the two is not true; treat it as defeated until somebody has looked.", bypass.Text, StringComparison.Ordinal);
        Assert.Contains("YET READ AS in service", bypass.Brief, StringComparison.Ordinal);
        line.Clock("2026-11-24T23:00-05:00").Correct(read, "SL-TRIP=2", "it is bridged");
        Assert.DoesNotContain("YET READ", Assert.Single(NowView.Of(line.Desk).Hazards).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_round_saw_bad_in_this_shift_is_not_called_not_seen()
    {
        using var line = new SmallLine("2026-11-24T16:15-05:00");
        line.Carry("safety-equipment", "slaker", "eyewash out, no flow", null, ("instead", "the one at the filters"));
        line.Clock("2026-11-24T20:20-05:00");
        Assert.Contains("Not seen since the shift change", Assert.Single(NowView.Of(line.Desk).Hazards).Text, StringComparison.Ordinal);

        line.Record(null, "SL-EYE=2");

        var hazard = Assert.Single(NowView.Of(line.Desk).Hazards);
        Assert.Matches("Last look: out.*Read 20:20", hazard.Text);
        Assert.DoesNotContain("Not seen", hazard.Text + hazard.OnPage, StringComparison.Ordinal);
    }

    [Fact]
    public void An_eyewash_that_a_round_found_working_contradicts_that_it_is_out()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Carry("safety-equipment", "slaker", "eyewash out, no flow", null, ("instead", "the one at the filters"));
        line.Clock("2026-11-24T20:34-05:00").Record(null, "SL-EYE=1");

        Assert.Contains("YET READ AS works", Assert.Single(NowView.Of(line.Desk).Hazards).Text, StringComparison.Ordinal);
    }
}
