using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Tests;

/// <summary>Each row of README's table of questions is asked of the demo, and the answer compared with what was planted in it.</summary>
public sealed partial class TheQuestionsOfAShift(DemoLog demo) : IClassFixture<DemoLog>
{
    private static readonly IReadOnlyDictionary<int, string> Table = ReadTable();

    [Fact]
    public void Every_question_of_the_table_has_its_test_and_the_others_are_named()
    {
        var asked = typeof(TheQuestionsOfAShift).GetMethods().SelectMany(m => m.GetCustomAttributes(typeof(AsksAttribute), false)).Cast<AsksAttribute>().SelectMany(a => a.Questions);

        Assert.Equal(Table.Keys.Order(), asked.Order());
    }

    [Theory, MemberData(nameof(Questions))]
    public void Every_command_of_the_table_is_one_of_the_program(int question)
    {
        var words = Table[question].Split(' ');

        Assert.Equal(0, demo.Ask([.. words.TakeWhile(w => w.All(c => char.IsAsciiLetterLower(c))), "--help"]).Code);
    }

    public static TheoryData<int> Questions => [.. Table.Keys];

    [Fact, Asks(1, 13)]
    public void What_changed_since_i_was_here_names_the_acid_wash_and_the_new_order()
    {
        var away = demo.Site.Crews.Names.Select(demo.Crew).First(code => demo.Rows("since", "since", code).Any(r => Seq(r) == demo.Planted("order-unread").Seq));
        var changes = demo.Rows("since", "since", away);

        Assert.Contains(changes, r => Text(r, "on") == "gl-filter" && Seq(r) == demo.Planted("acid-wash").Seq);
        Assert.Contains(changes, r => Text(r, "on") == "mud-tank" && Seq(r) == demo.Planted("person-inside").Seq);
    }

    [Fact, Asks(2, 9)]
    public void The_draft_tells_what_is_not_normal_and_what_stands_out()
    {
        // The note's lines are folded; what they say is not.
        var note = string.Join(' ', demo.Ask("handover", "draft").Out.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

        Assert.Contains("out of service, no flow when tested", note, StringComparison.Ordinal);
        Assert.Contains("temporary hose for the seal water", note, StringComparison.Ordinal);
        Assert.Contains("WL-CE", note, StringComparison.Ordinal);
        Assert.Contains("SL-MARGIN", note, StringComparison.Ordinal);
    }

    [Fact, Asks(3, 4, 5, 14)]
    public void Now_tells_in_full_what_can_hurt()
    {
        var hazards = demo.Rows("now", "now").Where(r => Text(r, "what") == "hazard").ToList();

        Assert.Contains(hazards, r => Seq(r) == demo.Planted("trip-defeated").Seq && Text(r, "text").Contains("instead", StringComparison.Ordinal) && Text(r, "text").Contains("Allowed, it is said, by", StringComparison.Ordinal));
        Assert.Contains(hazards, r => Text(r, "text").StartsWith("locked:", StringComparison.Ordinal) && Text(r, "text").Contains("Locks recorded", StringComparison.Ordinal));
        Assert.Contains(hazards, r => Seq(r) == demo.Planted("person-inside").Seq && Text(r, "text").Contains("Counted 1", StringComparison.Ordinal));
        Assert.Contains(hazards, r => Seq(r) == demo.Planted("eyewash-out").Seq);
    }

    [Fact, Asks(6, 7, 10)]
    public void Carried_items_tell_dates_steps_and_owners()
    {
        var items = demo.Rows("carry", "carry", "list");

        var hose = Assert.Single(items, r => r.GetProperty("id").GetInt64() == demo.Planted("overdue-hose").Seq);
        Assert.True(hose.GetProperty("until").GetDateTimeOffset() < demo.Now);
        Assert.Contains(items, r => r.TryGetProperty("fields", out var fields) && fields.EnumerateArray().Any(f => f.GetString() == "step=rake inspected, hatch still open"));
        Assert.Contains(items, r => Text(r, "kind") == "action" && Text(r, "on") == "classifier");
    }

    [Fact, Asks(8)]
    public void The_note_of_the_last_shift_has_both_sides_own_words_and_what_to_do_if()
    {
        var note = demo.Ask("handover", "show").Out;
        var own = note[note.IndexOf("OWN WORDS", StringComparison.Ordinal)..];

        Assert.Contains("if the ", own, StringComparison.Ordinal);
        Assert.Contains("reservation", own, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("acid not checked", own, StringComparison.Ordinal);
    }

    [Fact, Asks(11)]
    public void What_is_due_in_the_next_twelve_hours_is_every_round_of_the_schedule()
    {
        var due = demo.Rows("due", "due", "--all", "--from", Iso(demo.Now), "--to", Iso(demo.Now.AddHours(12)));

        // The line round falls due each hour of the clock.
        Assert.Equal(12, due.Where(r => Text(r, "round") == "hourly").Select(r => Text(r, "due_at")).Distinct(StringComparer.Ordinal).Count());
        Assert.Contains(due, r => Text(r, "round") == "field" && Text(r, "point") == "SL-EYE");
    }

    [Fact, Asks(12, 16)]
    public void The_missed_round_is_told_with_its_shift()
    {
        var missed = demo.Rows("audit", "audit", "--flag", "missed", "--flag", "late", "--flag", "not-taken");
        var at = demo.Planted("missed-round").At;

        Assert.Contains(missed, r => Text(r, "flag") == "missed" && r.GetProperty("at").GetDateTimeOffset() == at && Text(r, "shift") == Calendar.ShiftAt(demo.Site, at).Id);
    }

    [Fact, Asks(15)]
    public void Whom_to_call_is_every_person_with_the_role()
    {
        Assert.Equal(
            demo.Site.People.Select(p => (p.Code, p.Role.ToString().ToLowerInvariant())),
            demo.Rows("people", "people", "list").Select(r => (Text(r, "code"), Text(r, "role"))));
    }

    [Fact, Asks(17)]
    public void The_emergency_relief_and_the_reservation_are_the_unusual_handovers_of_the_week()
    {
        var handovers = demo.Rows("audit", "audit", "--flag", "refused", "--flag", "unattended", "--flag", "emergency", "--flag", "reservation");

        Assert.Equal(
            [("emergency", demo.Planted("emergency-relief").Seq), ("reservation", demo.Planted("reservation").Seq)],
            handovers.Select(r => (Text(r, "flag"), Seq(r))));
    }

    [Fact, Asks(18, 19)]
    public void The_hose_is_carried_too_long_and_past_its_date()
    {
        Assert.Contains(demo.Rows("audit", "audit", "--flag", "carried-too-long"), r => Seq(r) == demo.Planted("overdue-hose").Seq);
        Assert.Equal([demo.Planted("overdue-hose").Seq], demo.Rows("audit", "audit", "--flag", "past-date").Select(Seq));
    }

    [Fact, Asks(20)]
    public void The_corrected_titration_is_the_one_correction()
    {
        var corrected = demo.Rows("audit", "audit", "--flag", "late", "--flag", "corrected", "--flag", "entered-later").Where(r => Text(r, "flag") == "corrected");

        Assert.Contains($"#{demo.Planted("titration-corrected").Seq}", Text(Assert.Single(corrected), "text"), StringComparison.Ordinal);
    }

    [Fact, Asks(21)]
    public void The_copied_walk_alone_looks_copied()
    {
        var alike = demo.Rows("audit", "audit", "--flag", "same-as-earlier", "--flag", "varies-less");

        Assert.Equal([demo.Planted("copied-walk").Seq], alike.Select(Seq));
        Assert.Contains("Not a finding about anyone.", alike[0].GetProperty("evidence").EnumerateArray().Select(e => e.GetString()), StringComparer.Ordinal);
    }

    [Fact, Asks(22)]
    public void The_order_is_unread_by_those_who_were_not_on_shift_since()
    {
        var order = demo.Planted("order-unread");
        var crews = Calendar.Shifts(demo.Site, order.At, demo.Now).Select(s => s.Crew).ToList();
        var unread = demo.Rows("order", "order", "list", "--unseen").Where(r => r.GetProperty("id").GetInt64() == order.Seq).Select(r => Text(r, "person")).ToList();

        Assert.All(demo.Site.People.Where(p => p.Crew is { } crew && !crews.Contains(crew, StringComparer.Ordinal)), p => Assert.Contains(p.Code, unread, StringComparer.Ordinal));
        Assert.DoesNotContain(demo.OnShift, unread, StringComparer.Ordinal);
    }

    [Fact, Asks(23)]
    public void The_sticking_valve_is_counted()
    {
        Assert.Contains(demo.Rows("audit", "audit", "--flag", "recurrent"), r => Text(r, "text").Contains("3rd time in 14 days", StringComparison.Ordinal)
            && r.GetProperty("at").GetDateTimeOffset() == demo.Planted("fault-again").At);
    }

    [Fact, Asks(24)]
    public void Shifts_in_a_row_are_those_of_the_pattern()
    {
        var mine = Assert.Single(demo.Rows("count", "roster", "count"), r => Text(r, "person") == demo.OnShift);
        var crew = demo.Site.FindPerson(demo.OnShift)!.Crew;
        var row = Calendar.Shifts(demo.Site, demo.Now.AddDays(-3), demo.Now).Count(s => s.Crew == crew);

        // What was signed counts, beside what the pattern says: whoever took the line in the planted emergency has one shift more.
        Assert.InRange(mine.GetProperty("in_a_row").GetInt32(), row, row + 1);
    }

    [Fact, Asks(25)]
    public void The_journal_is_whole()
    {
        Assert.True(demo.Ask("verify", "--json").Json.GetProperty("ok").GetBoolean());
    }

    [Fact, Asks(26)]
    public void The_minutes_around_the_near_boil_over_are_told_in_order()
    {
        var peak = demo.Planted("near-boil-over");
        var log = demo.Rows("log", "log", "--from", Iso(peak.At.AddMinutes(-5)), "--to", Iso(peak.At.AddMinutes(30)));

        Assert.Contains(log, r => Seq(r) == peak.Seq && Text(r, "worst") == "urgent");
        Assert.Equal(log.Select(Seq).Order(), log.Select(Seq));
    }

    [Fact, Asks(27)]
    public void What_else_moved_with_the_copied_titration_is_listed_by_how_far_it_moved()
    {
        var answer = demo.Ask("trend", "WL-CE", "--beside", "--json").Json;
        var moves = answer.GetProperty("beside").EnumerateArray().Select(r => Math.Abs(r.GetProperty("spreads").GetDouble())).ToList();

        Assert.All(moves, m => Assert.True(m >= 3));
        Assert.Equal(moves.OrderDescending(), moves);
        Assert.True(answer.GetProperty("since").GetDateTimeOffset() < demo.Now);
    }

    [Fact, Asks(37)]
    public void The_readings_of_one_question_carry_what_keeps_them_apart()
    {
        var from = demo.Now.AddDays(-1);
        var rows = demo.Ask("export", "--format", "csv", "--point", "WL-B", "--from", from.ToString("O", CultureInfo.InvariantCulture)).Out
            .Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(',')).ToList();

        Assert.Equal("point,value,unit,at,why,seq,round,by,status,doubts", string.Join(',', rows[0]));
        Assert.All(rows.Skip(1), r => Assert.True(r[0] == "WL-B" && DateTimeOffset.Parse(r[3], CultureInfo.InvariantCulture) >= from));
        Assert.Contains(rows, r => r[5] == demo.Planted("titration-error").Seq?.ToString(CultureInfo.InvariantCulture));
    }

    [Fact, Asks(28, 30)]
    public void The_slaker_came_within_a_kelvin_of_boiling_once()
    {
        var limits = demo.Rows("limits", "limits", "--point", "SL-MARGIN");

        Assert.Equal(1, Assert.Single(limits, r => Text(r, "limit").StartsWith("urgent-low", StringComparison.Ordinal)).GetProperty("times").GetInt32());
    }

    [Fact, Asks(29)]
    public void The_stuck_transmitter_stands_out_now()
    {
        Assert.Contains(demo.Rows("now", "now"), r => Text(r, "what") == "finding" && Text(r, "point") == demo.Planted("stuck-transmitter").Point && Text(r, "text").Contains("stuck", StringComparison.Ordinal));
    }

    [Fact, Asks(31, 32, 33)]
    public void A_points_values_of_the_week_are_listed()
    {
        var week = new[] { "--from", Iso(demo.Now.AddDays(-7)) };

        // The mud filter's precoat is renewed each twelve hours, so its hours never come to more.
        Assert.All(demo.Rows("list", ["list", "MF-HP", .. week]), r => Assert.InRange(r.GetProperty("value").GetDouble(), 0, 13));
        Assert.True(demo.Rows("list", ["list", "WW-L", .. week]).Count > 150);
        Assert.All(demo.Rows("list", ["list", "SL-CAO", .. week]), r => Assert.InRange(r.GetProperty("value").GetDouble(), 0, 100));
    }

    [Fact, Asks(34, 35)]
    public void Limits_and_checks_that_tell_nothing_are_named_and_the_slakers_is_none_of_them()
    {
        var idle = demo.Rows("audit", "audit", "--flag", "limit-never", "--flag", "limit-always", "--flag", "always-not-taken", "--from", Iso(demo.Now.AddDays(-14)));

        var never = idle.Where(r => Text(r, "flag") == "limit-never").ToList();
        Assert.NotEmpty(never);
        Assert.Equal(never.Count, never.Select(r => Text(r, "point")).Distinct(StringComparer.Ordinal).Count()); // one line a point
        Assert.All(never, r => Assert.Equal(Text(r, "text").Split("readings: ")[1].Split(", ").Length, int.Parse(Text(r, "text").Split(": ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture)));
        Assert.DoesNotContain(idle, r => Text(r, "flag") == "limit-never" && Text(r, "point") == "SL-MARGIN" && Text(r, "text").Contains("urgent-low", StringComparison.Ordinal));
        Assert.DoesNotContain(idle, r => Text(r, "flag") == "always-not-taken");
    }

    [Fact, Asks(36)]
    public void The_state_when_it_began_is_that_of_the_time()
    {
        var before = demo.Planted("trip-defeated").At.AddMinutes(-1);

        Assert.DoesNotContain(demo.Rows("now", "now", "--as-of", Iso(before)), r => Text(r, "text").StartsWith("defeated:", StringComparison.Ordinal));
        Assert.Contains(demo.Rows("now", "now", "--as-of", Iso(before.AddMinutes(2))), r => Text(r, "text").StartsWith("defeated:", StringComparison.Ordinal));
    }

    private static string Text(JsonElement row, string key) => row.TryGetProperty(key, out var value) ? value.GetString() ?? "" : "";

    private static long? Seq(JsonElement row) => row.TryGetProperty("seq", out var seq) ? seq.GetInt64() : null;

    private static string Iso(DateTimeOffset at) => at.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);

    /// <summary>Number to command, as README's table has them.</summary>
    private static IReadOnlyDictionary<int, string> ReadTable() =>
        Row().Matches(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "README.md")))
            .ToDictionary(m => int.Parse(m.Groups["number"].Value, CultureInfo.InvariantCulture), m => m.Groups["command"].Value);

    [GeneratedRegex(@"^\| (?<number>\d+) \| [^|]+ \| `(?<command>[^`]+)`", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Row();
}

/// <summary>Which questions of the table a test asks.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class AsksAttribute(params int[] questions) : Attribute
{
    public IReadOnlyList<int> Questions => questions;
}
