using CsCheck;

namespace Logbook.Handover.Tests;

public class HandoverNoteTests
{
    private static readonly string[] Forbidden = ["all normal", "nobody inside", "no one inside", "isolated", "all clear", "all ok", "is safe"];

    [Fact]
    public void The_sections_stand_in_the_order_in_which_they_must_be_read()
    {
        using var line = TroubledNight.Write();

        Assert.Equal(
            ["can-hurt", "not-normal", "moving", "not-done", "stocks", "still-open", "coming", "orders", "remarks"],
            HandoverNote.Of(line.Desk, line.Desk.Now).Sections.Select(s => s.Id), StringComparer.Ordinal);
    }

    [Fact]
    public void An_empty_shift_says_that_nothing_is_recorded_and_never_that_there_is_nothing()
    {
        using var line = new SmallLine("2026-11-24T19:00-05:00");

        var note = HandoverNote.Of(line.Desk, line.Desk.Now);

        Assert.Equal(["inside, locked, defeated, out, acid, gas, injury, release: none recorded; not declared"], Texts(note, "can-hurt"));
        Assert.All(["not-normal", "moving", "stocks", "still-open", "orders", "remarks"], id => Assert.Equal(["nothing recorded"], Texts(note, id)));
        Assert.Empty(note.TakeLonger);
    }

    [Fact]
    public void Every_planted_fact_is_on_the_note()
    {
        using var line = TroubledNight.Write();

        var note = HandoverNote.Of(line.Desk, line.Desk.Now);

        Holds(note, "can-hurt", "Counted 1 by the attendant at 20:04", "treat as inside", "number 4417");
        Holds(note, "can-hurt", "Lime mud pump, DO NOT START", "two locks, card 118", "lock board");
        Holds(note, "can-hurt", "low-flow lime trip bridged", "until 14:00", "instead liquor flow by hand");
        Holds(note, "can-hurt", "White liquor filter: in acid since 23:04");
        Holds(note, "can-hurt", "Eyewash at the slaker: out");
        Holds(note, "not-normal", "URGENT: Slaker temperature 103.4 degC", "At 02:04", "from 03:04 without this finding", "(#13)");
        Holds(note, "can-hurt", "(#17)");
        Holds(note, "not-normal", "hose instead of the flushing line", "PAST", "5 shifts, 2 days");
        Holds(note, "not-normal", "first 112.1 degC, put right to 102.1 degC", "(#15)");
        Holds(note, "moving", "White liquor tank level 48.0 at 19:04, 65.5 at 02:04, 75.5 at 06:04: rising 2.5 %", "about 09:55"); // (85 - 75.5) / 2.47 an hour after 06:04
        Holds(note, "not-done", "Line round 23:00 to 01:00 (3), 05:00: no reading in the window, 3 checks each");
        Holds(note, "not-done", "Line round 02:00, SL-L1: instrument faulty");
        Holds(note, "still-open", "tighten the guard bolt");
        Holds(note, "coming", "permit ends, lime mud tank");
        Holds(note, "coming", "bypass ends, Slaker");
        Holds(note, "remarks", "Operator one: Slaker: bowl may climb");
        Assert.Contains("trip defeated", note.TakeLonger, StringComparer.Ordinal);
        Assert.Contains("person in lime mud tank", note.TakeLonger, StringComparer.Ordinal);
    }

    [Fact]
    public void A_hazard_seen_by_a_reading_is_not_contradicted_by_the_silence_of_the_registers()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Record("field", "SL-EYE=2");

        Assert.Equal("inside, locked, acid, gas, injury, release: none recorded; not declared", Texts(HandoverNote.Of(line.Desk, line.Desk.Now), "can-hurt")[^1]);
    }

    [Fact]
    public void An_eyewash_that_is_open_as_out_and_was_seen_out_is_one_line_with_both()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Carry("safety-equipment", "slaker", "eyewash frozen", null, ("instead", "the one at the classifier stair"));
        line.Carry("safety-equipment", "classifier", "shower drips");
        line.Record("field", "SL-EYE=2");

        var hurts = Texts(HandoverNote.Of(line.Desk, line.Desk.Now), "can-hurt");

        Assert.Contains("eyewash frozen", hurts[0], StringComparison.Ordinal);
        Assert.Contains("no caustic work there without another eyewash in reach", hurts[0], StringComparison.Ordinal);
        Assert.Contains("Read 20:00 (#4)", hurts[0], StringComparison.Ordinal);
        Assert.Single(hurts, t => t.Contains("ewash", StringComparison.Ordinal));
        Assert.Contains("shower drips", hurts[1], StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_seen_bad_at_another_place_keeps_its_own_line()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Carry("safety-equipment", "classifier", "eyewash frozen");
        line.Record("field", "SL-EYE=2");

        Assert.Equal(2, Texts(HandoverNote.Of(line.Desk, line.Desk.Now), "can-hurt").Count(t => t.Contains("ewash", StringComparison.Ordinal)));
    }

    [Fact]
    public void What_comes_begins_now_and_what_is_due_later_is_not_called_not_done()
    {
        using var line = new SmallLine("2026-11-24T19:00-05:00");
        line.Clock("2026-11-24T22:30-05:00");

        var note = HandoverNote.Of(line.Desk, line.Desk.Now);

        Assert.Equal(
            "Line round 23:00 and 19 more to 25 Nov 18:00; Field walk 00:00 and 4 more to 25 Nov 16:00; Samples of the shift 06:30 and 1 more to 25 Nov 18:30",
            Assert.Single(Texts(note, "coming")));
        Assert.DoesNotContain(Texts(note, "not-done"), t => t.Contains("Samples of the shift", StringComparison.Ordinal));
    }

    [Fact]
    public void An_urgent_excursion_is_one_line_with_its_worst_and_the_value_now()
    {
        using var line = new SmallLine("2026-11-24T19:00-05:00");
        foreach (var (minute, value) in new[] { (2, "103.3"), (60, "103.9"), (121, "101.0"), (181, "103.4"), (242, "101.2") })
        {
            line.Clock(SmallLine.At("2026-11-24T19:00-05:00").AddMinutes(minute)).Record("hourly", "SL-T1=" + value);
        }

        var lines = Texts(HandoverNote.Of(line.Desk, line.Desk.Now), "not-normal");

        Assert.Equal(2, lines.Count);
        Assert.Contains("103.4 degC", lines[0], StringComparison.Ordinal); // of the last two hours: first
        Assert.Contains("At 22:01; from 23:02 without this finding, 101.2 degC at 23:02", lines[0], StringComparison.Ordinal);
        Assert.Contains("103.9 degC", lines[1], StringComparison.Ordinal);
        Assert.Contains("Worst at 20:00, 2 times from 19:02 to 20:00; from 21:01 without this finding, now 101.2 degC at 23:02", lines[1], StringComparison.Ordinal);
        Assert.DoesNotContain("follow the site", string.Join(' ', lines), StringComparison.Ordinal);
    }

    [Fact]
    public void What_still_stands_says_the_value_now_and_not_the_worst_alone()
    {
        using var line = new SmallLine("2026-11-24T19:00-05:00");
        line.Clock("2026-11-24T19:02-05:00").Record("hourly", "SL-T1=103.9");
        line.Clock("2026-11-24T20:00-05:00").Record("hourly", "SL-T1=103.4");

        Holds(HandoverNote.Of(line.Desk, line.Desk.Now), "not-normal", "URGENT: Slaker temperature 103.9 degC", "Worst at 19:02, 2 times from 19:02 to 20:00, 103.4 degC at 20:00; no later reading.");
    }

    [Fact]
    public void What_was_only_to_watch_is_one_line_with_how_often_it_came_back()
    {
        using var line = new SmallLine("2026-11-24T19:00-05:00");
        foreach (var (minute, value) in new[] { (2, "102.8"), (60, "101.0"), (121, "103.0"), (181, "101.0") })
        {
            line.Clock(SmallLine.At("2026-11-24T19:00-05:00").AddMinutes(minute)).Record("hourly", "SL-T1=" + value);
        }

        Assert.Contains("2 times in 2 excursions from 19:02 to 21:01", Assert.Single(Texts(HandoverNote.Of(line.Desk, line.Desk.Now), "not-normal")), StringComparison.Ordinal);
    }

    [Fact]
    public void Equipment_that_does_not_run_and_words_of_other_findings_are_told_as_they_last_were()
    {
        using var line = new SmallLine("2026-11-24T19:00-05:00");
        line.State("mud-pump", "standby", "spare runs");
        line.Record("hourly", "WT-L=50");
        line.Clock("2026-11-24T20:00-05:00").Record("hourly", "WT-L=90");

        var note = HandoverNote.Of(line.Desk, line.Desk.Now);

        Holds(note, "not-normal", "Lime mud pump since 19:00, spare runs.");
        Holds(note, "not-normal", "WATCH: White liquor tank level 90.0 %", "At 20:00; no later reading.");
    }

    [Fact]
    public void A_finding_from_before_the_shift_stands_until_a_reading_clears_it()
    {
        using var line = new SmallLine("2026-11-24T18:00-05:00");
        line.Record("hourly", "WT-L=90");
        line.Clock("2026-11-24T19:30-05:00");
        var standing = HandoverNote.Of(line.Desk, line.Desk.Now);
        line.Clock("2026-11-24T20:00-05:00").Record("hourly", "WT-L=80");

        Holds(standing, "not-normal", "White liquor tank level 90.0 %", "At 18:00; no later reading.", "(#2)");
        Assert.Equal(["nothing recorded"], Texts(HandoverNote.Of(line.Desk, line.Desk.Now), "not-normal"));
    }

    [Fact]
    public void The_note_of_a_past_shift_shows_what_was_open_at_its_end()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        var item = line.Carry("bypass", "slaker", "trip bridged", SmallLine.At("2026-11-25T14:00-05:00"), ("instead", "watch the flow"), ("allowed-by", "eng1"));
        line.Clock("2026-11-25T07:30-05:00").Close(item, "trip restored");
        line.Clock("2026-11-25T12:00-05:00");

        Assert.Contains("trip bridged", Texts(HandoverNote.Of(line.Desk, SmallLine.At("2026-11-25T06:00-05:00")), "can-hurt")[0], StringComparison.Ordinal);
        Assert.DoesNotContain(Texts(HandoverNote.Of(line.Desk, line.Desk.Now), "can-hurt"), t => t.Contains("trip bridged", StringComparison.Ordinal));
    }

    [Fact]
    public void At_most_three_cautions_are_chosen_what_is_open_first_beside_the_standing_one()
    {
        using var line = TroubledNight.Write();
        line.Record("hourly", "SL-T1=103.5");

        var cautions = HandoverNote.Of(line.Desk, line.Desk.Now).Cautions;

        Assert.Equal([("Entry", false), ("Acid", true), ("Lock-out", false), ("Hot caustic", false)], cautions.Select(c => (c.Hazard, c.Draft)));
    }

    [Fact]
    public void A_change_of_the_clock_in_the_next_shift_is_told()
    {
        using var line = new SmallLine("2026-10-31T12:00-04:00");

        Holds(HandoverNote.Of(line.Desk, line.Desk.Now), "coming", "lasts 13 h");
    }

    [Fact]
    public void No_hazard_is_cut_or_counted_however_many_are_open_and_no_forbidden_word_prints() => Items.Sample(items =>
    {
        using var line = new SmallLine("2026-11-22T08:00-05:00");
        var ids = items.Select(i => line.Carry(i.Kind, "slaker", i.Text, SmallLine.At($"2026-11-2{i.Day}T09:00-05:00"), Fields(i.Kind, i.Inside))).ToList();

        var note = HandoverNote.Of(line.Clock("2026-11-24T12:00-05:00").Desk, line.Desk.Now);

        var printed = Texts(note, "can-hurt");
        Assert.All(items.Zip(ids).Where(x => x.First.Kind != "action"), x =>
            Assert.Contains(printed, t => t.Contains(x.First.Text, StringComparison.Ordinal) && t.EndsWith($"(#{x.Second})", StringComparison.Ordinal)));
        var words = string.Join('\n', note.Sections.SelectMany(s => s.Lines).Select(l => l.Text).Concat(note.TakeLonger));
        Assert.All(Forbidden, word => Assert.DoesNotContain(word, words, StringComparison.OrdinalIgnoreCase));
    }, iter: 30);

    // People's words are digits here, so that whatever else is printed is the program's own.
    private static readonly Gen<(string Kind, int Day, bool Inside, string Text)[]> Items = Gen.Select(
        Gen.OneOf("isolation", "permit", "bypass", "safety-equipment", "action"), Gen.Int[3, 6], Gen.Bool, Gen.String[Gen.Char['0', '9'], 1, 200]).Array[0, 30];

    private static (string, string)[] Fields(string kind, bool inside) => kind switch
    {
        "permit" => inside ? [("number", "7"), ("inside", "2")] : [("number", "7")],
        "bypass" => [("instead", "by hand"), ("allowed-by", "eng1")],
        "safety-equipment" => [("instead", "by hand")],
        _ => [],
    };

    private static IReadOnlyList<string> Texts(HandoverNote note, string section) => [.. note.Sections.Single(s => s.Id == section).Lines.Select(l => l.Text)];

    private static void Holds(HandoverNote note, string section, params string[] words) =>
        Assert.Contains(Texts(note, section), text => words.All(w => text.Contains(w, StringComparison.Ordinal)));
}
